package spec

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// conditions reads [conditions] of fleet.toml: the operator's own words above
// the signatures on the sheets that hirers sign, under the name of the list.
// They are read by hirers, so they are no staff data.
func (l *loader) conditions(r *manifest.Reader) {
	t := r.Table("conditions")
	l.fleet.Conditions, l.stated = map[string]map[string]string{}, map[string]problem.Span{}
	if t == nil {
		return
	}
	for _, key := range t.Keys() {
		l.fleet.Conditions[key.Name] = l.ownWords(t, key.Name)
		l.stated[key.Name] = t.KeySpan(key.Name)
	}
}

// checkConditions reports conditions for a list that no hirer signs. Own lists
// are known only when all build sheets are read.
func (l *loader) checkConditions() {
	var valid []string
	for _, r := range l.extra.library.Routines {
		if r.Staff && r.Hirer {
			valid = append(valid, r.ID)
		}
	}
	for _, id := range slices.Sorted(maps.Keys(l.stated)) {
		if slices.Contains(valid, id) {
			continue
		}
		detail := "Conditions stand on the sheets of: " + strings.Join(valid, ", ") + "."
		if near := problem.Nearest(id, valid); near != "" {
			detail = fmt.Sprintf("Did you mean %q? ", near) + detail
		} else if routine := l.extra.library.Routine(id); routine != nil {
			detail = "No hirer signs a sheet of this list. " + detail
		}
		l.problems.Add(problem.New(problem.Error, l.stated[id], "unknown-sheet", fmt.Sprintf("Conditions for a sheet %q", id), detail))
	}
}
