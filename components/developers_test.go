package components_test

import (
	"os"
	"regexp"
	"testing"
	"testing/fstest"
)

// The three listings that show how a system is written are one, keep to all
// rules, and show every kind of entry that they explain.
func TestExampleForContributors(t *testing.T) {
	text, err := os.ReadFile("../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	tree := fstest.MapFS{}
	for _, name := range []string{"system.toml", "lines.en.toml", "page.en.md"} {
		found := regexp.MustCompile("(?s)\n`" + regexp.QuoteMeta(name) + "`[^\n]*\n\n```(?:toml|markdown)\n(.*?)```").FindSubmatch(text)
		if found == nil {
			t.Fatalf("DEVELOPERS.md does not show %s", name)
		}
		tree["gas/example/"+name] = &fstest.MapFile{Data: found[1]}
	}
	lib, problems := library(t).With(tree, "systems/")
	for _, p := range problems {
		t.Errorf("%s: %s", p, p.Detail)
	}
	s := lib.System("gas/example")
	if s == nil || len(s.Facts) == 0 || len(s.Constants) == 0 || len(s.Cautions) == 0 || len(s.Steps) == 0 || len(s.Checks) == 0 || len(s.Words["en"].Page.Sections) == 0 {
		t.Fatalf("%+v", s)
	}
	c := wordCheck{T: t, lib: lib, system: s, words: s.Words["en"], seen: map[string]bool{}}
	c.heading()
	c.complete()
	for _, v := range vansWith(lib, s) {
		c.on(v)
	}
}
