package components

import (
	"fmt"
	"maps"
	"slices"

	"doorpocket/components/condition"
	"doorpocket/components/fact"
	"doorpocket/components/problem"
)

// checkReadings looks at what is written down when a van changes hands in the
// light of the whole library.
func (lib *Library) checkReadings(prefix string) problem.List {
	c := checker{lib: lib}
	var sheets []string
	for _, r := range lib.Routines {
		if r.Staff {
			sheets = append(sheets, r.ID)
		}
	}
	for _, r := range lib.Readings {
		for _, s := range r.Has {
			c.sign(s)
		}
		for _, id := range r.Sheets {
			c.known(r.At, "sheet", id, sheets)
		}
		c.each(r)
		for _, lang := range slices.Sorted(maps.Keys(lib.Values)) {
			words, ok := r.Words[lang]
			if !ok {
				c.report(problem.Span{File: prefix + "readings." + lang + ".toml"}, "missing-words", "No words for "+r.ID, "Add [%s] with a title.", r.ID)
				continue
			}
			c.doc(c.readOf(r), words.Tell, condition.Condition{}, false)
		}
	}
	return c.found
}

// readOf is the system whose facts the words of a reading may name.
func (c *checker) readOf(r *Reading) *System {
	if len(r.Has) == 1 && r.Has[0].System != "" {
		if s := c.lib.System(r.Has[0].System); s != nil {
			return s
		}
	}
	return &System{}
}

// each looks at the count of what is read more than once.
func (c *checker) each(r *Reading) {
	if r.Each == "" {
		return
	}
	if f := c.readOf(r).Fact(r.Each); f == nil || f.Type.Kind != fact.Count {
		c.report(r.At, "bad-reading", fmt.Sprintf("Nothing to count under the name %q", r.Each), "Name in has one system, and in each a fact of it of the type count.")
	}
}
