package spec

import (
	"fmt"
	"slices"

	"doorpocket/build/booklets"
	"doorpocket/components/problem"
)

// readBooklets reads booklets.toml.
func (l *loader) readBooklets() {
	name, data, ok := l.kept(booklets.File)
	if !ok {
		return
	}
	list, found := booklets.Parse(name, data)
	l.problems.Add(found...)
	l.fleet.Booklets = list
}

// checkBooklets warns of booklets of vans that the fleet never had.
func (l *loader) checkBooklets(vans []Summary) {
	for _, code := range l.fleet.Booklets.Vans() {
		is := func(v Summary) bool { return v.Code == code }
		left := func(v *LeftVan) bool { return v.Code == code }
		if slices.ContainsFunc(vans, is) || slices.ContainsFunc(l.fleet.Left, left) {
			continue
		}
		var codes []string
		for _, v := range vans {
			codes = append(codes, v.Code)
		}
		detail := "Take its line out."
		if near := problem.Nearest(code, codes); near != "" {
			detail = fmt.Sprintf("Did you mean %q? ", near) + "Else take its line out."
		}
		b, _ := l.fleet.Booklets.Of(code)
		l.problems.Add(problem.New(problem.Warning, b.At, "unknown-van", fmt.Sprintf("A booklet of a van %q, which the fleet has not", code), detail))
	}
}
