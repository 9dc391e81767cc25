package heating_test

import (
	"testing"

	"doorpocket/components/heating"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// heater is one with a boiler, unless its size is empty, and with the powers
// that are pairs of fact and text; a fact that begins with mains is an element.
func heater(t *testing.T, size string, powers ...string) table.Fitted {
	t.Helper()
	f := table.Fitted{Name: "heater", System: "heating/air-heater-with-boiler", Facts: []table.Fact{
		sample.Fact(t, "heat_gas", "heat-output", quantity.Power, "6 kW"),
	}}
	if size != "" {
		f.Facts = append(f.Facts, sample.Fact(t, "boiler", "boiler-volume", quantity.Volume, size))
	}
	for i := 0; i < len(powers); i += 2 {
		role := "water-heat"
		if powers[i][:5] == "mains" {
			role = "mains-power"
		}
		f.Facts = append(f.Facts, sample.Fact(t, powers[i], role, quantity.Power, powers[i+1]))
	}
	return f
}

func shown(t *testing.T, f table.Fitted) []string {
	t.Helper()
	kettle := table.Fitted{Name: "sockets", Facts: []table.Fact{sample.Fact(t, "kettle", "mains-power", quantity.Power, "2 kW")}}
	return sample.Shown(t, "heating/water-heat-up", sample.Van(t, "heater", kettle, f))
}

func TestWaterHeatUp(t *testing.T) {
	sample.Same(t, shown(t, heater(t, "10 L", "water_gas", "3.5 kW", "mains_low", "850 W", "mains_high", "1.8 kW")), []string{
		"heater:mains_low | 850 W | 37 min",    // 36.9
		"heater:mains_high | 1,800 W | 18 min", // 17.4
		"heater:water_gas | 3,500 W | 9 min",   // 8.97
		"together | 5,300 W | 6 min",           // 5.92
	})
	sample.Same(t, shown(t, heater(t, "10 L", "mains_low", "0.75 kW", "mains_high", "1.85 kW")), []string{
		"heater:mains_low | 750 W | 42 min",    // 41.9
		"heater:mains_high | 1,850 W | 17 min", // 16.97
	})
	sample.Same(t, shown(t, heater(t, "14 L", "water_diesel", "2 kW")), []string{"heater:water_diesel | 2,000 W | 22 min"}) // 21.98
}

func TestWaterHeatUpWithoutBoiler(t *testing.T) {
	sample.Same(t, shown(t, heater(t, "", "mains_high", "1.8 kW")), nil)
}

func TestWaterHeatUpLacks(t *testing.T) {
	sample.Same(t, shown(t, heater(t, "10 L")), []string{"lacks heater:boiler: nothing is stated that heats the water"})
	sample.Same(t, shown(t, heater(t, "10 L", "water_gas", "3.5 kW", "mains_low", "850 W", "mains_high", "0 W")), []string{
		"heater:mains_low | 850 W | 37 min",
		"heater:water_gas | 3,500 W | 9 min",
		"lacks heater:mains_high: mains_high is 0 W, which must be above zero: outside what the formula holds for; so both together is not worked out either",
	})
	sample.Same(t, shown(t, heater(t, "10 L", "water_gas", "")), []string{"lacks heater:water_gas: water_gas is not stated"})
}

func TestWaterHeatUpRefuses(t *testing.T) {
	two := heater(t, "10 L", "water_gas", "3.5 kW")
	two.Facts = append(two.Facts, sample.Fact(t, "second", "boiler-volume", quantity.Volume, "5 L"))
	for name, f := range map[string]table.Fitted{"empty boiler": heater(t, "0 L", "water_gas", "3.5 kW"), "two boilers": two} {
		if result, err := heating.WaterHeatUpTable(table.Input{Self: f}); err == nil || len(result.Rows) > 0 {
			t.Errorf("%s: %d rows, %v", name, len(result.Rows), err)
		}
	}
}
