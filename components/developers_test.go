package components_test

import (
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

// The list of packages for contributors has every one, or the folder above it.
func TestPackagesForContributors(t *testing.T) {
	text, err := os.ReadFile("../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, pattern := range []string{"*.go", "*/*.go", "../build/*/*.go", "../cmd/*/*.go", "../layouts/*.go", "../content/*.go"} {
		found, err := filepath.Glob(pattern)
		if err != nil || len(found) == 0 {
			t.Fatal(pattern, err)
		}
		for _, name := range found {
			folder := path.Join("components", path.Dir(filepath.ToSlash(name)))
			family := library(t).Family(path.Base(folder))
			if family == nil && !strings.Contains(string(text), "`"+folder+"`") {
				t.Errorf("DEVELOPERS.md does not say what %s is for", folder)
			}
		}
	}
}

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
