package components

import (
	"fmt"
	"maps"
	"slices"

	"doorpocket/components/fact"
	"doorpocket/components/problem"
)

// checkDue looks at what falls due in the light of the whole library.
func (lib *Library) checkDue(prefix string) problem.List {
	c := checker{lib: lib}
	for _, d := range lib.Duties {
		for _, s := range d.Has {
			c.sign(s)
		}
		if d.System != "" {
			c.known(d.At, "system", d.System, lib.SystemIDs())
			c.dutyFact(d)
		}
	}
	for _, lang := range slices.Sorted(maps.Keys(lib.Values)) {
		for _, d := range lib.Duties {
			if d.Words[lang] == (DutyWords{}) {
				c.report(problem.Span{File: prefix + "due." + lang + ".toml"}, "missing-words", "No words for "+d.Name, "Add [%s] with title and reason.", d.Name)
			}
		}
	}
	return c.found
}

func (c *checker) dutyFact(d *Duty) {
	system := c.lib.System(d.System)
	if system == nil {
		return
	}
	if f := system.Fact(d.Fact); f == nil || f.Type.Kind != fact.Date {
		c.report(d.At, "bad-duty", fmt.Sprintf("%s has no day called %q", d.System, d.Fact), "Name a fact of the type date.")
	}
}
