package spec_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
)

// What joins a van by itself can be left out, by the van or by its build
// sheet, but for the pages on which lives may hang.
func TestWithoutWhatJoinsByItself(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	load := func(van, sheet string) (*spec.Fleet, string) {
		files := fstest.MapFS{
			"fleet.toml":    {Data: []byte(sample.FleetTOML)},
			"builds/b.toml": {Data: []byte(sheet + "\n" + sample.Body)},
			"vans/a.toml":   {Data: []byte("code = \"AA\"\nname = \"A\"\nspec_date = 2026-10-02\nbuild = \"b\"\n" + van)},
		}
		fleet, found := spec.Load(files, "", lib)
		var errors []string
		for _, p := range found {
			if p.Severity.String() == "error" {
				errors = append(errors, p.String())
			}
		}
		return fleet, strings.Join(errors, "\n")
	}
	for _, c := range []struct{ name, van, sheet, absent, want string }{
		{name: "nothing left out"},
		{name: "by the van", van: `without = ["storm"]`, absent: "safety/storm"},
		{name: "by the sheet", sheet: `without = ["storm"]`, absent: "safety/storm"},
		{name: "urgent", van: `without = ["fire"]`, want: `vans/a.toml:5:11: error: fire cannot be left out`},
		{name: "misspelt", van: `without = ["strom"]`, want: `Nothing is fitted under the name "strom"`},
	} {
		fleet, errors := load(c.van, c.sheet)
		if (c.want == "") != (errors == "") || !strings.Contains(errors, c.want) {
			t.Errorf("%s: %q, want %q", c.name, errors, c.want)
		}
		for _, id := range []string{"safety/storm", "safety/fire"} {
			if aboard := fleet.Vans[0].Aboard(id); aboard == (id == c.absent) {
				t.Errorf("%s: %s aboard is %v", c.name, id, aboard)
			}
		}
	}
}
