package vehicle_test

import (
	"testing"

	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func onAxles(t *testing.T, masses []table.Fact, body []table.Fact, tyres ...table.Fact) []string {
	t.Helper()
	return sample.Shown(t, "vehicle/load-index", sample.Van(t, "tyres",
		table.Fitted{Name: "tyres", System: "vehicle/tyres", Facts: tyres},
		table.Fitted{Name: "masses", System: "vehicle/masses", Facts: masses},
		table.Fitted{Name: "body", System: "vehicle/body", Facts: body}))
}

func TestLoadIndexTable(t *testing.T) {
	limit := func(name, text string) table.Fact { return sample.Fact(t, name, "axle-max", quantity.Mass, text) }
	limits := []table.Fact{limit("front_axle", "1850 kg"), limit("rear_axle", "2240.5 kg")}
	front, rear := sample.Count("front_load_index", 112), sample.Count("rear_load_index", 112)
	gap := []table.Fact{sample.Fact(t, "rear_axle_gap", "", quantity.Length, "0.8 m")}
	twin := sample.Choice("rear_wheels", "twin")
	for _, c := range []struct {
		name         string
		masses, body []table.Fact
		tyres        []table.Fact
		want         []string
	}{
		{"two axles", limits, nil, []table.Fact{front, rear}, []string{
			"front | 2,240 kg | 1,850 kg | carried",
			"rear | 2,240 kg | 2,241 kg | too-little", // half a kilogram too little
		}},
		{"twin wheels", limits, nil, []table.Fact{front, rear, twin}, []string{
			"front | 2,240 kg | 1,850 kg | carried",
			"rear-twin | 4,480 kg | 2,241 kg | carried",
		}},
		{"a pair of rear axles", limits, gap, []table.Fact{front, rear}, []string{
			"front | 2,240 kg | 1,850 kg | carried",
			"rear-pair | 4,480 kg | 2,241 kg | carried",
		}},
		{"a pair with twin wheels", nil, gap, []table.Fact{front, rear, twin}, []string{
			"front | 2,240 kg |  | no-limit",
			"rear-pair-twin | 8,960 kg |  | no-limit",
		}},
		{"one axle", limits, nil, []table.Fact{rear}, []string{
			"rear | 2,240 kg | 2,241 kg | too-little",
			"lacks tyres:front_load_index: front_load_index is not stated",
		}},
		{"an index that does not exist", limits, nil, []table.Fact{front, sample.Count("rear_load_index", 12)}, []string{
			"front | 2,240 kg | 1,850 kg | carried",
			"lacks tyres:rear_load_index: rear_load_index: the load index is 12, which must lie between 60 and 130: outside what the formula holds for",
		}},
		{"no index", limits, nil, nil, nil},
	} {
		t.Run(c.name, func(t *testing.T) { sample.Same(t, onAxles(t, c.masses, c.body, c.tyres...), c.want) })
	}
}
