package publication

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"doorpocket/components/problem"
)

// Part is a part of a fleet that is published by itself. Parts published apart
// and copied into one folder are the same site as all of it published at once.
type Part struct {
	pattern string // for the names of specs without folder and ending
	k, n    int    // the k-th of n parts of about the same size
}

// ParsePart reads a pattern for the names of specs, such as "ridge-*", or k/n
// for the k-th of n parts.
func ParsePart(text string) (Part, error) {
	var p Part
	if n, err := fmt.Sscanf(text, "%d/%d", &p.k, &p.n); err == nil && n == 2 && text == fmt.Sprintf("%d/%d", p.k, p.n) {
		if p.n < 1 || p.k < 1 || p.k > p.n {
			return Part{}, fmt.Errorf("there is no part %s: write for example 1/4 for the first of four parts", text)
		}
		return p, nil
	}
	if _, err := path.Match(text, ""); err != nil || text == "" || strings.ContainsAny(text, "/") {
		return Part{}, fmt.Errorf("%q is no part of a fleet: write a pattern for names of specs such as ridge-*, or 1/4 for the first of four parts", text)
	}
	return Part{pattern: text}, nil
}

// some reports whether the part may be less than the whole.
func (p Part) some() bool { return p.pattern != "" || p.n > 1 }

// Has reports whether one of the specs belongs to the part.
func (p Part) Has(specs []string, file string) bool {
	switch {
	case p.pattern != "":
		ok, err := path.Match(p.pattern, nameOf(file))
		return err == nil && ok
	case p.n > 1:
		i, _ := slices.BinarySearch(specs, file)
		return i%p.n == p.k-1
	}
	return true
}

// Check reports an error where a pattern fits the name of none of the specs. One of
// n parts may be empty.
func (p Part) Check(specs []string) error {
	if p.pattern == "" || len(specs) == 0 || slices.ContainsFunc(specs, func(file string) bool { return p.Has(specs, file) }) {
		return nil
	}
	names := make([]string, len(specs))
	for i, file := range specs {
		names[i] = nameOf(file)
	}
	example := names[0]
	if near := problem.Nearest(p.pattern, names); near != "" {
		example = near
	}
	return fmt.Errorf("no spec has a name like %q: write it without folder and ending, for example %s", p.pattern, example)
}

// nameOf is the name of a spec or build sheet: that of its file without folder and
// ending.
func nameOf(file string) string { return strings.TrimSuffix(path.Base(file), path.Ext(file)) }
