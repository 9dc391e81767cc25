package components_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"doorpocket/components"
	"doorpocket/components/quantity"
)

// exact are the columns of numbers that are not rounded to a side: what a row is
// asked for, what a label or a plate says, and a value in two units.
var exact = []string{
	"electrics/fuses rating", "electrics/hook-up-load pitch", "electrics/lead-drop current",
	"heating/heat-balance outside",
	"toilet/days people", "toilet/dose tank", "toilet/dose label", "toilet/dose for",
	"vehicle/tyre-pressures bar", "vehicle/tyre-pressures psi", "vehicle/tyre-pressures kpa",
	"vehicle/tyres-height height", "vehicle/tyres-warm inside",
	"water/days people",
}

// Every number that is worked out is rounded to a side, and the table says so.
func TestTablesRoundToASide(t *testing.T) {
	lib := unchecked()
	van := vansWith(lib, lib.System(components.BodySystem))[0]
	var nearest []string
	for _, id := range slices.Sorted(maps.Keys(lib.Tables)) {
		known, rounds := lib.Tables[id], false
		for _, c := range known.Columns {
			if c.Unit.IsZero() {
				continue
			}
			if c.Rounding == quantity.Nearest {
				nearest = append(nearest, id+" "+c.ID)
			}
			rounds = rounds || c.Rounding != quantity.Nearest
		}
		for lang, words := range known.Words {
			says := false
			for _, d := range words.Assumptions {
				says = says || lang != "en" || strings.Contains(d.Text(van), "round")
			}
			if rounds && !says {
				t.Errorf("table %s does not say in %s how it rounds", id, lang)
			}
		}
	}
	if !slices.Equal(nearest, exact) {
		t.Errorf("not rounded to a side: %q, expected %q", nearest, exact)
	}
}
