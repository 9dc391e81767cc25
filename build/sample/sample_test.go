package sample_test

import (
	"fmt"
	"strings"
	"testing"

	"doorpocket/build/guide"
	"doorpocket/build/render"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components/problem"
	"doorpocket/layouts"
)

// A van that has everything, with every option of every choice in turn, can be
// published without an error, and no page shows an unfilled hole.
func TestEverythingCanBePublished(t *testing.T) {
	lib := library(t)
	r, err := render.New(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	for option := range 6 {
		fleet, found := spec.Load(sample.Everything(lib, option), "", lib)
		if found.HasErrors() {
			fatal(t, fmt.Sprintf("option %d", option), found)
		}
		kit := guide.NewKit(&fleet.Operator, "en")
		g, found := kit.Build(fleet.Vans[0])
		if found.HasErrors() {
			fatal(t, fmt.Sprintf("option %d", option), found)
		}
		files, err := r.Van(g)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			for _, hole := range []string{"{$", "\x00", "\ufdd0", "%!", "<no value>", "system:", "symptom:", "routine:"} {
				if i := strings.Index(string(f.Data), hole); i >= 0 {
					t.Errorf("option %d: %s shows %q: ...%.80s", option, f.Path, hole, f.Data[i:])
				}
			}
		}
	}
}

func text(t *testing.T, found problem.List) string {
	t.Helper()
	var b strings.Builder
	if err := problem.Write(&b, found, problem.Style{}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}
