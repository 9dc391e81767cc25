package guide_test

import (
	"slices"
	"testing"
	"testing/fstest"

	"doorpocket/build/guide"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
)

// names lists the first cells of a table of a van with these fitted systems.
func names(t *testing.T, page, id, fitted string) []string {
	t.Helper()
	lib, _ := components.Load(components.Embedded())
	fleet, found := spec.Load(fstest.MapFS{
		"fleet.toml":   {Data: []byte(sample.FleetTOML)},
		"vans/tt.toml": {Data: []byte("code = \"TT\"\nname = \"Test\"\nspec_date = 2026-10-02\n" + sample.Body + fitted)},
	}, "", lib)
	if len(fleet.Vans) != 1 {
		t.Fatal(found)
	}
	g, _ := guide.NewKit(&fleet.Operator, "en").Build(fleet.Vans[0])
	for _, p := range g.Pages {
		if p.Fitted.Name != page {
			continue
		}
		table := p.Tables[id]
		if table == nil {
			t.Fatalf("no table %s on the page of %s", id, page)
		}
		var all []string
		for _, row := range table.Rows {
			all = append(all, row[0].Text)
		}
		return all
	}
	t.Fatalf("no page of %s", page)
	return nil
}

const inlet = `
[fitted.inlet]
system = "electrics/hook-up-inlet"
label = "E1"
at = { side = "offside", along = "5 m", up = "0.8 m" }
cover = "sprung-flap"
lead_length = "25 m"
`

// A fact that is a thing by itself has its own name, also when it is alone; a
// setting is named only where its system shows several.
func TestNamesOfUses(t *testing.T) {
	got := names(t, "inlet", "electrics/hook-up-load", inlet+`
[fitted.sockets]
system = "electrics/mains-sockets"
label = "E2"
at = { side = "inside", along = "3 m", up = "1.5 m" }
sockets = 2
pattern = "three-flat-pins"
kettle = "1 kW"

[fitted.charger]
system = "electrics/charger"
label = "E3"
at = { side = "inside", along = "3 m", up = "0.5 m" }
mains_power = "300 W"
charge_current = "20 A"

[fitted.plate]
system = "kitchen/electric-hotplate"
label = "K1"
at = { side = "inside", along = "3 m", up = "1 m" }
surface = "metal-plate"
power_low = "400 W"
power_high = "1.5 kW"
`)
	want := []string{"Electric hotplate, highest setting", "Electric hotplate, lowest setting", "Kettle", "Battery charger"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, expected %q", got, want)
	}
}
