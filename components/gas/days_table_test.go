package gas_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"doorpocket/components/gas"
	"doorpocket/components/internal/published"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// body loses 2.1 kW at 35 K: 60 W/K.
func body(t *testing.T) table.Fitted {
	t.Helper()
	return table.Fitted{Name: "body", System: "vehicle/body", Facts: []table.Fact{
		sample.Fact(t, "length", "", quantity.Length, "6 m"), sample.Fact(t, "width", "", quantity.Length, "2.2 m"),
		sample.Fact(t, "height", "", quantity.Length, "2.8 m"), sample.Fact(t, "heat_need", "", quantity.Power, "2.1 kW"),
	}}
}

func combi(t *testing.T, facts ...table.Fact) table.Fitted {
	t.Helper()
	return table.Fitted{Name: "heater", System: "heating/air-heater-with-boiler", Facts: append([]table.Fact{
		rate(t, "gas_low", "170 g/h"), rate(t, "gas_high", "335 g/h"), sample.Fact(t, "boiler", "boiler-volume", quantity.Volume, "10 L"),
	}, facts...)}
}

func winterVan(t *testing.T) []table.Fitted {
	t.Helper()
	hob := table.Fitted{Name: "hob", System: "kitchen/hob", Facts: []table.Fact{rate(t, "gas_small", "75 g/h"), rate(t, "gas_large", "180 g/h"), rate(t, "gas_all", "380 g/h")}}
	oven := table.Fitted{Name: "oven", System: "kitchen/oven", Facts: []table.Fact{rate(t, "gas_high", "176 g/h")}}
	fridge := table.Fitted{Name: "fridge", System: "kitchen/three-way-fridge", Facts: []table.Fact{rate(t, "gas_mean", "16 g/h"), rate(t, "gas_high", "30 g/h")}}
	return []table.Fitted{body(t), locker(t, "locker", "6 kg", 2), combi(t, sample.Fact(t, "heat_gas", "heat-output", quantity.Power, "4 kW")), hob, oven, fridge}
}

func TestDayTable(t *testing.T) {
	sample.Same(t, sample.Shown(t, "gas/day", sample.Van(t, "locker", winterVan(t)...)), []string{
		"cooking | hob:gas_large | 180 g/h | 1.0 h | 180 g",
		"baking | oven:gas_high | 176 g/h | 0.3 h | 44 g",
		"hot-water | heater:gas_high | 335 g/h | 0.4 h | 102 g", // 20 kg x 4186 x 45 K / (0.8 x 46.334 MJ/kg) = 101.64 g
		"cooling | fridge:gas_mean | 16 g/h | 24.0 h | 384 g",   // 16 x 24
		"warming | heater:gas_high | 335 g/h | 7.2 h | 2,412 g", // 60 W/K x 20 K x 24 h = 28.8 kWh, at 4 kW 7.2 h
	})
}

func TestDaysTable(t *testing.T) {
	sample.Same(t, sample.Shown(t, "gas/days", sample.Van(t, "locker", winterVan(t)...)), []string{
		"-10 °C | 36 d | 16 d | 2 d", // 12 kg / 325.6 g, / 709.6 g, / (709.6 + 3618) g
		"-5 °C | 36 d | 16 d | 3 d",
		"0 °C | 36 d | 16 d | 3 d",
		"5 °C | 36 d | 16 d | 4 d",
		"10 °C | 36 d | 16 d | 6 d",
		"15 °C | 36 d | 16 d | 9 d",
		"20 °C | 36 d | 16 d | 16 d",
	})
}

// days reads a cell of the shown table, 0 where it is blank.
func days(t *testing.T, line string, column int) int {
	t.Helper()
	n, _ := strconv.Atoi(strings.TrimSuffix(strings.TrimSpace(strings.Split(line, "|")[column]), " d"))
	return n
}

// Two cylinders heat a van for days, not weeks, in frost; warmer is never
// shorter, and each use more makes it shorter.
func TestDaysInWinter(t *testing.T) {
	c := published.Get(t, published.Read(t, "gas_heat"), "days-in-winter")
	most := int(float64(published.Value[quantity.Seconds](t, c.Values, "most")) / 86400)
	shown := sample.Shown(t, "gas/days", sample.Van(t, "locker", winterVan(t)...))
	last := 0
	for i, line := range shown {
		heated := days(t, line, 3)
		if i < 3 && (heated < 1 || heated > most) {
			t.Errorf("%q: a van in frost (%s)", line, c.What)
		}
		if heated < last || heated > days(t, line, 2) || days(t, line, 2) > days(t, line, 1) {
			t.Errorf("%q after %d days", line, last)
		}
		last = heated
	}
}

// A tank counts at 80 % of its size: 60 L are 24.0 kg of propane.
func TestDaysOfTank(t *testing.T) {
	van := winterVan(t)
	van[1] = tank(t, "propane", "60 L", 1)
	shown := sample.Shown(t, "gas/days", sample.Van(t, "tank", van...))
	sample.Same(t, shown[2:3], []string{"0 °C | 73 d | 33 d | 7 d"}) // 24.0048 kg / 325.6 g, / 709.6 g, / 3121.6 g
}

// Butane and the last of a mixture do not come in frost, so no days are told.
func TestDaysOfButane(t *testing.T) {
	for _, gas := range []string{"butane", "mixture"} {
		van := winterVan(t)
		van[1] = tank(t, gas, "60 L", 1)
		shown := sample.Shown(t, "gas/days", sample.Van(t, "tank", van...))
		if len(shown) != 4 || !strings.HasPrefix(shown[0], "5 °C | ") {
			t.Errorf("%s: %q", gas, shown)
		}
	}
}

// A heater that cannot keep up burns at its highest all day.
func TestDaysOfWeakHeater(t *testing.T) {
	van := winterVan(t)
	van[2] = combi(t, sample.Fact(t, "heat_gas", "heat-output", quantity.Power, "1 kW"))
	shown := sample.Shown(t, "gas/days", sample.Van(t, "locker", van...))
	sample.Same(t, shown[:1], []string{"-10 °C | 36 d | 16 d | 1 d"}) // 12 kg / (0.7096 + 24 x 0.335) kg
}

// What the van lacks is blank, what cannot be reckoned with too, and so is
// all that counts it.
func TestDaysTableBlanks(t *testing.T) {
	van := slices.Delete(winterVan(t), 5, 6)
	shown := sample.Shown(t, "gas/days", sample.Van(t, "locker", van...))
	sample.Same(t, shown[2:3], []string{"0 °C | 36 d |  | 4 d"}) // no fridge: 12 kg / 2737.6 g

	van = winterVan(t)
	van[3].Facts[1] = rate(t, "gas_large", "0 g/h")
	sample.Same(t, sample.Shown(t, "gas/days", sample.Van(t, "locker", van...)), []string{
		"lacks hob:gas_large: gas_large is 0 g/h, which must be above zero: outside what the formula holds for",
	})

	van = winterVan(t)
	van[2] = combi(t, sample.Fact(t, "heat_gas", "heat-output", quantity.Power, "6 kW"))
	shown = sample.Shown(t, "gas/days", sample.Van(t, "locker", van...))
	sample.Same(t, slices.Concat(shown[:1], shown[6:]), []string{
		"-10 °C | 36 d | 16 d | ",
		"20 °C | 36 d | 16 d | ",
		"lacks heater:gas_high: heat_gas with gas_high: a heat output of 6000 W is more than the 4683 W in the gas: outside what the formula holds for",
	})

	van = winterVan(t)
	van[0].Facts = van[0].Facts[:3]
	shown = sample.Shown(t, "gas/days", sample.Van(t, "locker", van...))
	if !strings.HasPrefix(shown[7], "lacks body:insulation: ") || days(t, shown[0], 3) != 0 || days(t, shown[6], 3) != 0 {
		t.Errorf("a van whose loss is not known: %q", shown)
	}
}

func TestDayTablesWithoutTheirStore(t *testing.T) {
	for name, work := range map[string]table.Func{"day": gas.DayTable, "days": gas.DaysTable} {
		result, err := work(table.Input{Self: table.Fitted{Name: "hob"}, All: winterVan(t)})
		if err == nil || len(result.Rows) > 0 {
			t.Errorf("%s: %d rows, %v", name, len(result.Rows), err)
		}
	}
	unknown := locker(t, "spare", "6 kg", 0)
	sample.Same(t, sample.Shown(t, "gas/days", sample.Van(t, "locker", append(winterVan(t), unknown)...)), []string{
		"lacks spare:net: all the gas on board is unknown: spare: cylinders is 0, which must be 1 or more",
	})
}

func BenchmarkDaysTable(b *testing.B) { benchmark(b, gas.DaysTable) }
func BenchmarkDayTable(b *testing.B)  { benchmark(b, gas.DayTable) }

func benchmark(b *testing.B, work table.Func) {
	self := table.Fitted{Name: "locker", System: "gas/cylinder-locker", Facts: []table.Fact{
		sample.Choice("gas", "propane"), {Name: "net", Role: "gas-store", Quantity: quantity.Of(quantity.Kilograms(6))}, sample.Count("cylinders", 2),
	}}
	fridge := table.Fitted{Name: "fridge", System: "kitchen/three-way-fridge", Facts: []table.Fact{
		{Name: "gas_mean", Role: "gas-rate", Quantity: quantity.Of(quantity.KilogramsPerSecond(5e-6))},
	}}
	in := table.Input{Self: self, All: []table.Fitted{self, fridge}}
	for b.Loop() {
		if result, err := work(in); err != nil || len(result.Rows) == 0 {
			b.Fatal(err)
		}
	}
}
