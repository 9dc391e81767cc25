package components_test

import (
	"slices"
	"testing"

	"doorpocket/components"
)

func TestFiguresInWords(t *testing.T) {
	page := "Fill in {$capacity}.\n\n## Cold {when=\"frost < 5 °C\"}\n\nWait ü 5 min, then 12 V is on.\n"
	found := components.FiguresInWords("pages/own.en.md", []byte(page))
	if len(found) != 1 || found[0].String() != `pages/own.en.md:5:8: warning: "5 min" stands in the words` {
		t.Error(found)
	}
}

// All figures of a line are told, each in its place.
func TestFiguresOfOneLine(t *testing.T) {
	found := components.FiguresInWords("own.md", []byte("5 min, then 5 min or {$wait} and 2 L."))
	var got []string
	for _, p := range found {
		got = append(got, p.String())
	}
	want := []string{
		`own.md:1:1: warning: "5 min" stands in the words`, `own.md:1:13: warning: "5 min" stands in the words`,
		`own.md:1:34: warning: "2 L" stands in the words`,
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
}
