package components

import "doorpocket/components/problem"

// CheckSigns reports the cautions that name a sign which is not drawn. The
// drawings belong to the layouts, which the library does not know.
func (lib *Library) CheckSigns(drawn []string) problem.List {
	c := checker{lib: lib}
	for _, s := range lib.Systems() {
		for _, v := range s.Cautions {
			for _, id := range v.Signs {
				c.known(v.signs, "sign", id, drawn)
			}
		}
	}
	return c.found
}
