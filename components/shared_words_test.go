package components_test

import (
	"strings"
	"testing"

	"doorpocket/components"
	"doorpocket/components/prose"
	"doorpocket/components/reading"
)

// The words that belong to no one system, those of families, routines, symptoms
// and tables, keep to the same rules.
func TestWordsOfLists(t *testing.T) {
	lib := library(t)
	van := vansWith(lib, lib.System(components.BodySystem))[0]
	check := func(id, text string) {
		t.Helper()
		checkSentences(text, func(what, text string) { t.Errorf("%s: %s: %s", id, what, text) })
	}
	for _, f := range lib.Families {
		check(f.ID, f.Words["en"].Title+"\n\n"+f.Words["en"].About)
	}
	for _, r := range lib.Routines {
		w := r.Words["en"]
		check(r.ID, w.Title+"\n\n"+w.About)
		searchable(t, r.ID, w.Search)
	}
	for _, s := range lib.Symptoms {
		w := s.Words["en"]
		check(s.ID, w.Title+"\n\n"+w.About)
		searchable(t, s.ID, w.Search)
		for _, d := range w.First {
			check(s.ID, d.Text(van))
		}
		if s.Danger && len(w.First) == 0 {
			t.Errorf("%s: dangerous, yet nothing is said to do first", s.ID)
		}
		if text := w.About + "\n\n" + texts(w.First, van); reading.Grade(text) > hardestGrade {
			t.Errorf("%s: hard to read", s.ID)
		}
	}
	for id, table := range lib.Tables {
		for _, d := range table.Words["en"].Assumptions {
			check(id, d.Text(van))
		}
	}
	for _, name := range []string{"routines.en.toml", "symptoms.en.toml", "families.en.toml"} {
		for line := range strings.SplitSeq(string(lib.Sources["components/"+name]), "\n") {
			if bare := bareFigure(line); bare != "" {
				t.Errorf("%s: a figure with a unit: %s", name, line)
			}
		}
	}
}

func texts(docs []prose.Doc, van *onVan) string {
	var all []string
	for _, d := range docs {
		all = append(all, d.Text(van))
	}
	return strings.Join(all, "\n\n")
}

func searchable(t *testing.T, id string, words []string) {
	t.Helper()
	said := map[string]bool{}
	for _, w := range words {
		folded := strings.ToLower(strings.TrimSpace(w))
		if folded == "" || said[folded] {
			t.Errorf("%s: the search word %q twice or empty", id, w)
		}
		said[folded] = true
	}
	if len(said) < fewestSearch {
		t.Errorf("%s: too few search words", id)
	}
}
