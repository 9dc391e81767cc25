package gas_test

import (
	"testing"

	"doorpocket/components/gas"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func stamped(t *testing.T, net, tare string) table.Fitted {
	t.Helper()
	f := locker(t, "locker", net, 2)
	f.Facts = append(f.Facts, sample.Fact(t, "tare", "", quantity.Mass, tare))
	return f
}

func TestWeighTable(t *testing.T) {
	heater := table.Fitted{Name: "heater", System: "heating/air-heater-with-boiler", Facts: []table.Fact{rate(t, "gas_low", "170 g/h"), rate(t, "gas_high", "335 g/h")}}
	van := append(appliances(t), heater, stamped(t, "6 kg", "7.25 kg"))
	sample.Same(t, sample.Shown(t, "gas/weigh", sample.Van(t, "locker", van...)), []string{
		"13.3 kg | 100% | 6.0 kg | 17 h | 12 h | 171 h | 12 h", // 17.9, 12.9 and 171.4 h
		"12.7 kg | 90% | 5.4 kg | 16 h | 11 h | 154 h | 11 h",
		"12.1 kg | 80% | 4.8 kg | 14 h | 10 h | 137 h | 10 h",
		"11.5 kg | 70% | 4.2 kg | 12 h | 9 h | 120 h | 9 h",
		"10.9 kg | 60% | 3.6 kg | 10 h | 7 h | 102 h | 7 h",
		"10.3 kg | 50% | 3.0 kg | 8 h | 6 h | 85 h | 6 h",
		"9.7 kg | 40% | 2.4 kg | 7 h | 5 h | 68 h | 5 h",
		"9.1 kg | 30% | 1.8 kg | 5 h | 3 h | 51 h | 3 h",
		"8.5 kg | 20% | 1.2 kg | 3 h | 2 h | 34 h | 2 h",
		"7.9 kg | 10% | 0.6 kg | 1 h | 1 h | 17 h | 1 h",
	})
}

// What lasts less than an hour, and a kind that the van lacks, are blank.
func TestWeighTableBlanks(t *testing.T) {
	point := table.Fitted{Name: "point", System: "gas/outside-gas-point", Facts: []table.Fact{rate(t, "gas_barbecue", "1 kg/h")}}
	shown := sample.Shown(t, "gas/weigh", sample.Van(t, "locker", point, stamped(t, "5 kg", "8 kg")))
	sample.Same(t, []string{shown[0], shown[9]}, []string{"13.0 kg | 100% | 5.0 kg |  |  |  | 5 h", "8.5 kg | 10% | 0.5 kg |  |  |  | "})
}

func TestWeighTableWithoutFacts(t *testing.T) {
	sample.Same(t, sample.Shown(t, "gas/weigh", sample.Van(t, "locker", append(appliances(t), locker(t, "locker", "6 kg", 1))...)), nil)
	sample.Same(t, sample.Shown(t, "gas/weigh", sample.Van(t, "locker", stamped(t, "6 kg", "0 kg"))), []string{
		"lacks locker:tare: tare is 0 kg, which must be above zero: outside what the formula holds for",
	})
	hob := table.Fitted{Name: "hob", System: "kitchen/hob", Facts: []table.Fact{rate(t, "gas_all", "0 g/h")}}
	shown := sample.Shown(t, "gas/weigh", sample.Van(t, "locker", hob, stamped(t, "6 kg", "7 kg")))
	sample.Same(t, shown[10:], []string{"lacks hob:gas_all: gas_all is 0 g/h, which must be above zero: outside what the formula holds for"})
	if result, err := gas.WeighTable(table.Input{Self: table.Fitted{Name: "hob"}}); err == nil || len(result.Rows) > 0 {
		t.Errorf("no store gives %d rows, %v", len(result.Rows), err)
	}
}

func BenchmarkWeighTable(b *testing.B) {
	self := table.Fitted{Name: "locker", Facts: []table.Fact{
		{Name: "net", Role: "gas-store", Quantity: quantity.Of(quantity.Kilograms(6))}, sample.Count("cylinders", 2),
		{Name: "tare", Quantity: quantity.Of(quantity.Kilograms(7))},
	}}
	in := table.Input{Self: self, All: []table.Fitted{self}}
	for b.Loop() {
		if _, err := gas.WeighTable(in); err != nil {
			b.Fatal(err)
		}
	}
}
