package gas_test

import (
	"testing"

	"doorpocket/components/gas"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func rate(t *testing.T, name, text string) table.Fact {
	t.Helper()
	return sample.Fact(t, name, "gas-rate", quantity.MassFlow, text)
}

func locker(t *testing.T, name, net string, cylinders int) table.Fitted {
	t.Helper()
	return table.Fitted{Name: name, System: "gas/cylinder-locker", Facts: []table.Fact{
		sample.Choice("gas", "propane"), sample.Fact(t, "net", "gas-store", quantity.Mass, net), sample.Count("cylinders", cylinders),
	}}
}

func tank(t *testing.T, gas, capacity string, tanks int) table.Fitted {
	t.Helper()
	return table.Fitted{Name: "tank", System: "gas/refillable-tank", Facts: []table.Fact{
		sample.Choice("gas", gas), sample.Fact(t, "capacity", "gas-store", quantity.Volume, capacity), sample.Count("tanks", tanks),
	}}
}

func appliances(t *testing.T) []table.Fitted {
	t.Helper()
	return []table.Fitted{
		{Name: "fridge", System: "kitchen/three-way-fridge", Facts: []table.Fact{rate(t, "gas_mean", "12 g/h"), rate(t, "gas_high", "35 g/h")}},
		{Name: "hob", System: "kitchen/hob", Facts: []table.Fact{rate(t, "gas_small", "0.14 kg/h"), rate(t, "gas_all", "465 g/h")}},
		{Name: "lamp", System: "electrics/lights"},
		{Name: "oven", System: "kitchen/oven", Facts: []table.Fact{rate(t, "gas_high", "465 g/h")}},
	}
}

func TestDurationTableOfCylinders(t *testing.T) {
	van := append(appliances(t), locker(t, "locker", "6 kg", 2))
	sample.Same(t, sample.Shown(t, "gas/duration", sample.Van(t, "locker", van...)), []string{
		"hob:gas_all | 465 g/h | 12 h | 25 h", // 12.903 and 25.806 h
		"hob:gas_small | 140 g/h | 42 h | 85 h",
		"oven:gas_high | 465 g/h | 12 h | 25 h",
		"fridge:gas_high | 35 g/h | 171 h | 342 h",
		"fridge:gas_mean | 12 g/h | 500 h | 1,000 h",
	})
}

func TestDurationTableOfTank(t *testing.T) {
	heater := table.Fitted{Name: "heater", System: "heating/air-heater-with-boiler", Facts: []table.Fact{rate(t, "gas_high", "480 g/h")}}
	for _, c := range []struct {
		gas, want string
	}{
		{"propane", "heater:gas_high | 480 g/h | 50 h | 50 h"}, // 60 L x 0.8 x 500.1 = 24.0 kg
		{"butane", "heater:gas_high | 480 g/h | 57 h | 57 h"},
		{"mixture", "heater:gas_high | 480 g/h | 50 h | 50 h"},
	} {
		got := sample.Shown(t, "gas/duration", sample.Van(t, "tank", tank(t, c.gas, "60 L", 1), heater))
		sample.Same(t, got, []string{c.want})
	}
}

// A van with a locker and a tank counts both as the gas on board, but one
// cylinder or one tank as that of the page.
func TestDurationTableOfTwoStores(t *testing.T) {
	heater := table.Fitted{Name: "heater", Facts: []table.Fact{rate(t, "gas_high", "500.1 g/h")}}
	van := []table.Fitted{locker(t, "locker", "5.001 kg", 1), heater, tank(t, "propane", "25 L", 2)}
	sample.Same(t, sample.Shown(t, "gas/duration", sample.Van(t, "locker", van...)), []string{"heater:gas_high | 500.1 g/h | 10 h | 50 h"})
	sample.Same(t, sample.Shown(t, "gas/duration", sample.Van(t, "tank", van...)), []string{"heater:gas_high | 500.1 g/h | 20 h | 50 h"})
}

func TestDurationTableLacks(t *testing.T) {
	hob := table.Fitted{Name: "hob", Facts: []table.Fact{rate(t, "gas_low", "0 g/h"), rate(t, "gas_all", ""), rate(t, "gas_large", "200 g/h")}}
	torch := table.Fitted{Name: "torch", Facts: []table.Fact{rate(t, "gas_high", "6.1 kg/h")}}
	unknown := locker(t, "spare", "6 kg", 0)
	sample.Same(t, sample.Shown(t, "gas/duration", sample.Van(t, "locker", locker(t, "locker", "6 kg", 1), hob, torch, unknown)), []string{
		"hob:gas_large | 200 g/h | 30 h | ",
		"lacks spare:net: all the gas on board is unknown: spare: cylinders is 0, which must be 1 or more",
		"lacks hob:gas_low: gas_low is 0 g/h, which must be above zero: outside what the formula holds for",
		"lacks hob:gas_all: gas_all is not stated",
		"lacks torch:gas_high: at 6.1 kg/h one full store lasts less than an hour, and the table counts whole hours",
	})
}

func TestDurationTableWithoutItsStore(t *testing.T) {
	noGas := tank(t, "propane", "60 L", 1)
	noGas.Facts = noGas.Facts[1:]
	noCount := locker(t, "locker", "6 kg", 1)
	noCount.Facts = noCount.Facts[:2]
	two := locker(t, "locker", "6 kg", 1)
	two.Facts = append(two.Facts, sample.Fact(t, "other", "gas-store", quantity.Mass, "5 kg"))
	for name, c := range map[string]struct {
		self table.Fitted
		want string
	}{
		"no store":        {table.Fitted{Name: "hob"}, "hob states 0 facts of role gas-store, not one"},
		"two stores":      {two, "locker states 2 facts of role gas-store, not one"},
		"no kind of gas":  {noGas, "tank: gas is not stated, so nobody knows what a litre weighs"},
		"unknown gas":     {tank(t, "steam", "60 L", 1), `tank: the gas is "steam" and not one of butane, mixture, propane: outside what the formula holds for`},
		"no count":        {noCount, "locker: cylinders is not stated"},
		"an empty net":    {locker(t, "locker", "0 kg", 1), "locker: net is 0 kg, which must be above zero: outside what the formula holds for"},
		"an absent net":   {locker(t, "locker", "", 1), "locker: net is not stated"},
		"another measure": {table.Fitted{Name: "x", Facts: []table.Fact{sample.Fact(t, "net", "gas-store", quantity.Length, "2 m")}}, "x: net: expected volume, got length"},
	} {
		result, err := gas.DurationTable(table.Input{Self: c.self, All: append(appliances(t), c.self)})
		if err == nil || err.Error() != c.want || len(result.Rows) > 0 {
			t.Errorf("%s: %v, expected %q", name, err, c.want)
		}
	}
}
