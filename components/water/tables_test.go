package water_test

import (
	"testing"

	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func tank(t *testing.T, name, size string, more ...table.Fact) table.Fitted {
	t.Helper()
	system, role := "water/fresh-tank", "fresh-capacity"
	if name == "waste" {
		system, role = "water/waste-tank", "waste-capacity"
	}
	return table.Fitted{Name: name, System: system, Facts: append([]table.Fact{sample.Fact(t, "capacity", role, quantity.Volume, size)}, more...)}
}

func boiler(t *testing.T, name, size string) table.Fitted {
	t.Helper()
	return table.Fitted{Name: name, System: "heating/water-boiler", Facts: []table.Fact{sample.Fact(t, "boiler", "boiler-volume", quantity.Volume, size)}}
}

func travel(t *testing.T, size string) table.Fact {
	t.Helper()
	return sample.Fact(t, "travel_volume", "", quantity.Volume, size)
}

func TestDaysTable(t *testing.T) {
	gauge := table.Fitted{Name: "gauge", System: "water/level-gauge"}
	fresh, waste := tank(t, "fresh", "100 L"), tank(t, "waste", "12 L")
	ofFresh := []string{
		"fresh:capacity | 1 | 10 d | 6.5 d | 3 d", // 100 L / 10, / 15 = 6.67, / 30 = 3.33
		"fresh:capacity | 2 | 5 d | 3 d | 1.5 d",
		"fresh:capacity | 3 | 3 d | 2 d | 1 d",
		"fresh:capacity | 4 | 2.5 d | 1.5 d | 0.5 d",
	}
	ofWaste := []string{
		"waste:capacity | 1 | 1 d | 0.5 d | ", // 12 L / 10 = 1.2, / 15 = 0.8, / 30 = 0.4
		"waste:capacity | 2 | 0.5 d |  | ",
		"waste:capacity | 3 |  |  | ",
		"waste:capacity | 4 |  |  | ",
	}
	sample.Same(t, sample.Shown(t, "water/days", sample.Van(t, "fresh", fresh, waste, gauge)), ofFresh)
	sample.Same(t, sample.Shown(t, "water/days", sample.Van(t, "waste", fresh, waste, gauge)), ofWaste)
	sample.Same(t, sample.Shown(t, "water/days", sample.Van(t, "gauge", fresh, waste, gauge)), append(ofFresh, ofWaste...))
	sample.Same(t, sample.Shown(t, "water/days", sample.Van(t, "gauge", gauge)), nil)
}

func TestDaysTableLacks(t *testing.T) {
	gauge := table.Fitted{Name: "gauge", System: "water/level-gauge"}
	got := sample.Shown(t, "water/days", sample.Van(t, "gauge", tank(t, "fresh", ""), tank(t, "waste", "0 L"), gauge))
	sample.Same(t, got, []string{
		"lacks fresh:capacity: capacity is not stated",
		"lacks waste:capacity: capacity is 0 L, which must be above zero: outside what the formula holds for",
	})
}

func TestLoadTable(t *testing.T) {
	fresh := tank(t, "fresh", "90 L", travel(t, "20 L"))
	sample.Same(t, sample.Shown(t, "water/load", sample.Van(t, "fresh", fresh, boiler(t, "heater", "10 L"), boiler(t, "second", "4.5 L"))), []string{
		"23% | 20 L | 20 kg | 35 kg", // with 14.5 L in the boilers
		"25% | 22.5 L | 23 kg | 37 kg",
		"50% | 45 L | 45 kg | 60 kg",
		"75% | 67.5 L | 68 kg | 82 kg",
		"100% | 90 L | 90 kg | 105 kg",
	})
	sample.Same(t, sample.Shown(t, "water/load", sample.Van(t, "fresh", tank(t, "fresh", "100 L", travel(t, "50 L")))), []string{
		"25% | 25 L | 25 kg | ",
		"50% | 50 L | 50 kg | ",
		"75% | 75 L | 75 kg | ",
		"100% | 100 L | 100 kg | ",
	})
	sample.Same(t, sample.Shown(t, "water/load", sample.Van(t, "heater", fresh, boiler(t, "heater", "10 L"))), nil)
}

func TestLoadTableLacks(t *testing.T) {
	quarters := []string{"25% | 25 L | 25 kg | ", "50% | 50 L | 50 kg | ", "75% | 75 L | 75 kg | ", "100% | 100 L | 100 kg | "}
	sample.Same(t, sample.Shown(t, "water/load", sample.Van(t, "fresh", tank(t, "fresh", "100 L", travel(t, "120 L")))),
		append(quarters, "lacks fresh:travel_volume: the tank may hold 120 L on the road, which is more than fits in"))
	sample.Same(t, sample.Shown(t, "water/load", sample.Van(t, "fresh", tank(t, "fresh", "100 L"), boiler(t, "heater", "10 L"), boiler(t, "second", ""))),
		append([]string{}, append(quarters, "lacks second:boiler: boiler is not stated")...)) // half of the water would be too light
	sample.Same(t, sample.Shown(t, "water/load", sample.Van(t, "fresh", tank(t, "fresh", "100 L", travel(t, "")))),
		append([]string{}, append(quarters, "lacks fresh:travel_volume: travel_volume is not stated")...))
	sample.Same(t, sample.Shown(t, "water/load", sample.Van(t, "fresh", tank(t, "fresh", ""))), []string{"lacks fresh:capacity: capacity is not stated"})
}

func TestScaldTable(t *testing.T) {
	times := []string{
		"49 °C | 480 s | 600 s",
		"51 °C | 120 s | 252 s",
		"55 °C | 17 s | 30 s",
		"60 °C | 3 s | 5 s",
		"65 °C |  | 1.5 s",
		"68 °C |  | 1 s",
	}
	taps := func(supply string) table.Fitted {
		return table.Fitted{Name: "taps", System: "water/taps", Facts: []table.Fact{sample.Choice("supply", supply)}}
	}
	shower := table.Fitted{Name: "shower", System: "toilet/shower"}
	heater := boiler(t, "heater", "10 L")
	for _, c := range []struct {
		self   string
		fitted []table.Fitted
		want   []string
	}{
		{"taps", []table.Fitted{taps("hot-and-cold")}, times},
		{"taps", []table.Fitted{taps("cold-only"), heater}, nil},
		{"heater", []table.Fitted{heater}, times},
		{"shower", []table.Fitted{shower, heater}, times},
		{"shower", []table.Fitted{shower}, nil},
		{"shower", []table.Fitted{shower, {Name: "air", System: "heating/diesel-heater"}}, nil},
	} {
		sample.Same(t, sample.Shown(t, "water/scald", sample.Van(t, c.self, c.fitted...)), c.want)
	}
}
