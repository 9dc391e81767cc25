package vehicle_test

import (
	"testing"

	"doorpocket/components/internal/published"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func onFuel(t *testing.T, id string, facts ...table.Fact) []string {
	t.Helper()
	return sample.Shown(t, id, sample.Van(t, "fuel", table.Fitted{Name: "fuel", System: "vehicle/fuel", Facts: facts}))
}

func TestRangeTable(t *testing.T) {
	volume := func(name, text string) table.Fact {
		return sample.Fact(t, name, "fuel-capacity", quantity.Volume, text)
	}
	energy := func(name, text string) table.Fact { return sample.Fact(t, name, "", quantity.Energy, text) }
	for _, c := range []struct {
		name  string
		facts []table.Fact
		want  []string
	}{
		{"fuel", []table.Fact{volume("tank", "90 L"), volume("fuel_100_km", "11.5 L")}, []string{
			"full | 700 km | 434 mi", // 704 km
			"three-quarters | 500 km | 310 mi",
			"half | 310 km | 192 mi",
			"quarter | 110 km | 68 mi",
		}},
		{"charge", []table.Fact{energy("drive_battery", "80 kWh"), energy("energy_100_km", "30 kWh")}, []string{
			"full | 240 km | 149 mi",
			"three-quarters | 170 km | 105 mi",
			"half | 100 km | 62 mi",
			"quarter | 40 km | 24 mi",
		}},
		{"next to nothing", []table.Fact{volume("tank", "4 L"), volume("fuel_100_km", "12 L")}, []string{
			"full | 30 km | 18 mi", "three-quarters | 20 km | 12 mi", "half | 10 km | 6 mi", // 5 km have no row
		}},
		{"no consumption", []table.Fact{volume("tank", "90 L")}, nil},
		{"no tank", []table.Fact{volume("fuel_100_km", "12 L")}, []string{"lacks fuel:tank: tank is not stated"}},
		{"no use", []table.Fact{volume("tank", "90 L"), volume("fuel_100_km", "0 L")}, []string{
			"lacks fuel:fuel_100_km: fuel_100_km is 0 L, which must be above zero: outside what the formula holds for",
		}},
	} {
		t.Run(c.name, func(t *testing.T) { sample.Same(t, onFuel(t, "vehicle/range", c.facts...), c.want) })
	}
}

func TestGallonsTable(t *testing.T) {
	tank := func(name, system, role, text string) table.Fitted {
		return table.Fitted{Name: name, System: system, Facts: []table.Fact{sample.Fact(t, "capacity", role, quantity.Volume, text)}}
	}
	sample.Same(t, sample.Shown(t, "vehicle/gallons", sample.Van(t, "fuel",
		tank("waste", "water/waste-tank", "waste-capacity", "0 L"), tank("fresh", "water/fresh-tank", "fresh-capacity", "100 L"),
		tank("fuel", "vehicle/fuel", "fuel-capacity", "90 L"))), []string{
		"fuel | 90 L | 19.7 gal (UK) | 23.7 gal (US)",
		"fresh | 100 L | 21.9 gal (UK) | 26.4 gal (US)",
		"lacks waste:capacity: capacity is 0 L, which must be above zero: outside what the formula holds for",
	})
}

// The cells hold what is published of both gallons.
func TestGallonsPublished(t *testing.T) {
	c := published.Get(t, published.Read(t, "vehicle"), "gallons")
	for _, row := range c.Rows {
		litres := published.Quantity[quantity.CubicMetres](t, row, "litres")
		for _, unit := range []string{"uk", "us"} {
			want := in(t, published.Quantity[quantity.CubicMetres](t, row, unit), "gal-"+unit)
			c.Same(t, row["litres"]+" "+unit, in(t, litres, "gal-"+unit), want)
		}
	}
}
