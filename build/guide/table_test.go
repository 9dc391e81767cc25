package guide_test

import (
	"slices"
	"testing"
	"testing/fstest"

	"doorpocket/build/guide"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
)

// built is the guide of a van with these fitted systems, and its problems.
func built(t *testing.T, fitted string) (*guide.Guide, problem.List) {
	t.Helper()
	lib, _ := components.Load(components.Embedded())
	fleet, found := spec.Load(fstest.MapFS{
		"fleet.toml":   {Data: []byte(sample.FleetTOML)},
		"vans/tt.toml": {Data: []byte("code = \"TT\"\nname = \"Test\"\nspec_date = 2026-10-02\n" + sample.Body + fitted)},
	}, "", lib)
	if len(fleet.Vans) != 1 {
		t.Fatal(found)
	}
	return guide.NewKit(&fleet.Operator, "en").Build(fleet.Vans[0])
}

// tableOf is a table of a van with these fitted systems.
func tableOf(t *testing.T, page, id, fitted string) *guide.Table {
	t.Helper()
	g, _ := built(t, fitted)
	for _, p := range g.Pages {
		if p.Fitted.Name != page {
			continue
		}
		if p.Tables[id] == nil {
			t.Fatalf("no table %s on the page of %s", id, page)
		}
		return p.Tables[id]
	}
	t.Fatalf("no page of %s", page)
	return nil
}

// names lists the first cells of a table of a van with these fitted systems.
func names(t *testing.T, page, id, fitted string) []string {
	t.Helper()
	var all []string
	for _, row := range tableOf(t, page, id, fitted).Rows {
		all = append(all, row[0].Text)
	}
	return all
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

const heaterAndTanks = `
[fitted.heater]
system = "heating/air-heater-with-boiler"
energy = "gas-and-mains"
boiler = "10 L"
gas_high = "335 g/h"
heat_gas = "4 kW"
water_gas = "1.6 kW"
mains_low = "900 W"
mains_high = "1.8 kW"

[fitted.fresh]
system = "water/fresh-tank"
capacity = "100 L"

[fitted.waste]
system = "water/waste-tank"
capacity = "90 L"

[fitted.gauge]
system = "water/level-gauge"
`

// On its own page a setting is enough of a name.
func TestOwnSettings(t *testing.T) {
	got := names(t, "heater", "heating/water-heat-up", heaterAndTanks)
	if want := []string{"Mains, low setting", "Gas", "Mains, high setting", "both together"}; !slices.Equal(got, want) {
		t.Errorf("got %q, expected %q", got, want)
	}
}

// A van has no columns for what it lacks, nor one that says on every row whose
// page it is; heads, units and numbers stay with their columns.
func TestNarrowTables(t *testing.T) {
	body := "insulation = \"grade-2\"\n" // still within [body]
	for _, c := range []struct {
		page, id string
		heads    []string
		units    []string
	}{
		{"heater", "heating/heat-balance", []string{"Outside", "Heat needed", "What is enough", "Gas alone, a day", "Mains alone, a day"}, []string{"°C", "W", "", "kg", "kWh"}},
		{"fresh", "water/days", []string{"People", "With care", "As usual", "A shower each, every day"}, []string{"", "d", "d", "d"}},
		{"gauge", "water/days", []string{"Tank", "People", "With care", "As usual", "A shower each, every day"}, []string{"", "", "d", "d", "d"}},
	} {
		got := tableOf(t, c.page, c.id, body+heaterAndTanks)
		if !slices.Equal(got.Heads, c.heads) || !slices.Equal(got.Units, c.units) || len(got.Numeric) != len(c.heads) {
			t.Errorf("%s: %q, %q, %v", c.id, got.Heads, got.Units, got.Numeric)
		}
		for _, row := range got.Rows {
			if len(row) != len(c.heads) {
				t.Fatalf("%s: %d cells under %d heads", c.id, len(row), len(c.heads))
			}
			if got.Numeric[0] && row[0].Number == "" {
				t.Errorf("%s: no number in a column of numbers: %q", c.id, row[0].Text)
			}
		}
	}
}

// An appliance of which nobody states what it takes is told, one with a part of
// its settings is not, nor what means nothing on this van.
func TestUnstatedUse(t *testing.T) {
	_, found := built(t, `
[fitted.extractor]
system = "kitchen/extractor"

[fitted.dry]
system = "toilet/dry-toilet"
solids = "wrapped-bag"
bottle = "6 L"
reach = "lift-seat"

[fitted.other]
system = "toilet/dry-toilet"
solids = "wrapped-bag"
bottle = "6 L"
reach = "lift-seat"
fan = true

[fitted.plate]
system = "kitchen/electric-hotplate"
surface = "metal-plate"
power_high = "1.5 kW"
`)
	var got []string
	for _, p := range found {
		if p.Code == "use-unstated" {
			got = append(got, p.Summary)
		}
	}
	want := []string{"[fitted.extractor] does not say what it takes: dc_power", "[fitted.other] does not say what it takes: power"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, expected %q", got, want)
	}
}
