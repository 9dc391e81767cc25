package vehicle_test

import (
	"strings"
	"testing"

	"doorpocket/components/internal/published"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// onRoad is the table of a van of a class with the limits of the library.
func onRoad(t *testing.T, facts ...table.Fact) []string {
	t.Helper()
	f := table.Fitted{Name: "speed", System: "vehicle/speed-limits", Facts: facts}
	for name, text := range map[string]string{
		"gb_built_up": "30 mph", "gb_single_light": "60 mph", "gb_single_heavy": "50 mph",
		"gb_dual_light": "70 mph", "gb_dual_heavy": "60 mph", "gb_motorway": "70 mph",
	} {
		f.Constants = append(f.Constants, sample.Fact(t, name, "", quantity.Speed, text))
	}
	return sample.Shown(t, "vehicle/speeds", sample.Van(t, "speed", f))
}

func TestSpeedsTable(t *testing.T) {
	heavy := []string{"town | 30 mph | 48 km/h", "single | 50 mph | 80 km/h", "dual | 60 mph | 96 km/h", "motorway | 70 mph | 112 km/h"}
	for class, want := range map[string][]string{
		"light": {"town | 30 mph | 48 km/h", "single | 60 mph | 96 km/h", "dual | 70 mph | 112 km/h", "motorway | 70 mph | 112 km/h"},
		"heavy": heavy, "goods": heavy, "": heavy,
	} {
		sample.Same(t, onRoad(t, sample.Choice("gb_class", class)), want)
	}
	own := func(text string) []string {
		lines := onRoad(t, sample.Fact(t, "own_limit", "", quantity.Speed, text))
		return lines[len(lines)-1:]
	}
	sample.Same(t, own("110 km/h"), []string{"own | 68 mph | 110 km/h"}) // 68.4 mph
	sample.Same(t, own("0 km/h"), []string{"lacks speed:own_limit: own_limit is 0 km/h, which must be above zero: outside what the formula holds for"})
	sample.Same(t, sample.Shown(t, "vehicle/speeds", sample.Van(t, "speed", table.Fitted{Name: "speed"})), nil)
}

func TestSpeedsPublished(t *testing.T) {
	c := published.Get(t, published.Read(t, "vehicle"), "speed-limits")
	shown := strings.Join(append(onRoad(t, sample.Choice("gb_class", "light")), onRoad(t, sample.Choice("gb_class", "heavy"))...), "\n")
	for _, row := range c.Rows {
		if want := " | " + row["mph"] + " | " + row["kmh"]; !strings.Contains(shown, want) {
			t.Errorf("no row is%s (%s):\n%s", want, c.Source, shown)
		}
	}
}

func TestWeightLimitsTable(t *testing.T) {
	limit := func(name, text string) table.Fact { return sample.Fact(t, name, "mass-limit", quantity.Mass, text) }
	masses := table.Fitted{Name: "masses", System: "vehicle/masses", Facts: []table.Fact{limit("max", "3505 kg"), limit("front_axle", "1850.2 kg"), limit("rear_axle", "0 kg")}}
	bar := table.Fitted{Name: "bar", System: "vehicle/tow-bar", Facts: []table.Fact{limit("train", "5.5 t")}}
	sample.Same(t, sample.Shown(t, "vehicle/weight-limits", sample.Van(t, "masses", masses, bar)), []string{
		"whole | 3,505 kg | 3.51 t",
		"front | 1,851 kg | 1.86 t",
		"train | 5,500 kg | 5.50 t",
		"lacks masses:rear_axle: rear_axle is 0 kg, which must be above zero: outside what the formula holds for",
	})
	sample.Same(t, sample.Shown(t, "vehicle/weight-limits", sample.Van(t, "masses", table.Fitted{Name: "masses", System: "vehicle/masses", Facts: []table.Fact{limit("max", "3500 kg")}})), []string{
		"whole | 3,500 kg | 3.50 t",
	})
}
