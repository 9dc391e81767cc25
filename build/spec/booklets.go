package spec

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"

	"doorpocket/build/booklets"
	"doorpocket/components/problem"
)

// readBooklets reads booklets.toml.
func (l *loader) readBooklets() {
	data, err := fs.ReadFile(l.files, booklets.File)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return
	case err != nil:
		l.problems.Errorf(l.span(booklets.File), "unreadable-file", "File cannot be read", "The system says: %v. Check its permissions.", err)
		return
	}
	name := l.prefix + booklets.File
	l.fleet.Sources[name] = data
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
