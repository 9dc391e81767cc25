package desk_test

import (
	"strings"
	"testing"

	"doorpocket/build/desk"
	"doorpocket/components"
)

// Every system of the library can be listed and told, with each of its facts,
// each option of a choice, and every word filled in.
func TestSystemsAreTold(t *testing.T) {
	lib, found := components.Load(components.Embedded())
	if found.HasErrors() {
		t.Fatal(found)
	}
	all := desk.Systems(lib, "", "en")
	for _, s := range lib.Systems() {
		if !strings.Contains(all, "  "+s.ID+" ") {
			t.Errorf("%s is not listed", s.ID)
		}
		if family := desk.Systems(lib, s.Family, "en"); !strings.Contains(family, "  "+s.ID+" ") || !strings.Contains(all, family) {
			t.Errorf("%s is not listed in its family, or otherwise than in the whole", s.ID)
		}
		text := desk.System(lib, s, "en")
		for _, d := range s.Facts {
			if !strings.Contains(text, "\n  "+d.Name+": "+s.Words["en"].Facts[d.Name]+"\n") {
				t.Errorf("%s does not tell of %s", s.ID, d.Name)
			}
			for _, option := range d.Of {
				if !strings.Contains(text, `"`+option+`"`) {
					t.Errorf("%s does not tell of option %s of %s", s.ID, option, d.Name)
				}
			}
			if d.When != "" && !strings.Contains(text, "only where "+d.When) {
				t.Errorf("%s does not tell when %s makes sense", s.ID, d.Name)
			}
		}
		for _, hole := range []string{"{$", "%!", "\x00", "\u00a0\n", " \n"} {
			if strings.Contains(text+all, hole) {
				t.Errorf("%s is told with %q:\n%s", s.ID, hole, text)
			}
		}
	}
}
