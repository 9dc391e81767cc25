package components_test

import (
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
