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
	roles := b.kit.tables.library.Roles
	for _, f := range b.guide.Van.Fitted {
		missing := unstatedOf(b.guide.Van, f)
		for _, role := range slices.Sorted(maps.Keys(missing)) {
			if !roles[role].Takes {
				continue
			}
			names := missing[role]
			at := f.Span
			if f.Automatic {
				at = b.guide.Van.At
			}
			b.problems.Add(problem.New(problem.Warning, at, "use-unstated",
				fmt.Sprintf("[fitted.%s] does not say what it takes: %s", f.Name, strings.Join(names, ", ")),
				"No table can count it, so the tables of the van promise too much. Its plate or its papers give it."))
		}
	}
}

// unstatedOf lists for each role the facts of a fitted system that make sense on
// the van, for roles of which none is stated.
func unstatedOf(v *spec.Van, f *spec.Fitted) map[string][]string {
	missing := map[string][]string{}
	stated := map[string]bool{}
	for _, d := range f.System.Facts {
		if _, ok := f.Values[d.Name]; ok {
			stated[d.Role] = true
			continue
		}
		if when, err := condition.Parse(d.When); err == nil && v.Holds(f, when) {
			missing[d.Role] = append(missing[d.Role], d.Name)
		}
	}
	maps.DeleteFunc(missing, func(role string, _ []string) bool { return role == "" || stated[role] })
	return missing
}
