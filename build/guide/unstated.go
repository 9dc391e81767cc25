package guide

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"doorpocket/build/spec"
	"doorpocket/components/condition"
	"doorpocket/components/problem"
)

// unstated tells of appliances of which the van does not state what they take:
// they have no row in any table, and a typical day counts too little.
func (b *builder) unstated() {
	for _, f := range b.guide.Van.Fitted {
		missing := b.unstatedOf(f)
		for _, role := range slices.Sorted(maps.Keys(missing)) {
			at := f.Span
			if f.Automatic {
				at = b.guide.Van.At
			}
			b.problems.Add(problem.New(problem.Warning, at, "use-unstated",
				fmt.Sprintf("[fitted.%s] does not say what it takes: %s", f.Name, strings.Join(missing[role], ", ")),
				"No table can count it, so the tables of the van promise too much. Its plate or its papers give it."))
		}
	}
}

// unstatedOf lists by role the facts of what a fitted system takes that make
// sense on the van, for roles of which none is stated.
func (b *builder) unstatedOf(f *spec.Fitted) map[string][]string {
	var missing map[string][]string
	var stated []string
	for i := range f.System.Facts {
		d := &f.System.Facts[i]
		if d.Role == "" || !b.kit.tables.library.Roles[d.Role].Takes {
			continue
		}
		if _, ok := f.Values[d.Name]; ok {
			stated = append(stated, d.Role)
			continue
		}
		if when, err := condition.Parse(d.When); err == nil && b.guide.Van.Holds(f, when) {
			if missing == nil {
				missing = map[string][]string{}
			}
			missing[d.Role] = append(missing[d.Role], d.Name)
		}
	}
	for _, role := range stated {
		delete(missing, role)
	}
	return missing
}
