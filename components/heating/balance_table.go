package heating

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// weather lists the temperatures outside of the rows, from hard frost to a
// mild day.
var weather = []quantity.Kelvins{HardFrost, freezing - 10, freezing - 5, freezing, freezing + 5, freezing + 10, freezing + 15}

const day = 24 * hour

// heatStep is how finely heat is told that has been worked out: an estimate has
// no single watts.
const heatStep quantity.Watts = 50

// spare is how much more than an estimated need a source must give before the
// table calls it enough.
//
// Source: from memory; vans of one grade and size differ by about a third.
const spare = 4.0 / 3

// HeatBalanceTable says for each temperature outside how much heat keeps the
// van at 20 °C, what of its heater is enough for it, and what that uses in a
// day and a night: gas or diesel alone, and mains alone. Where one of them is
// too weak it runs without a pause, so it uses what it can.
//
// The heater is that of the page, and on other pages the strongest of the van.
// A van without one has no rows.
//
// Where the need is an estimate, a source counts as enough only if it gives a
// third more.
//
// Columns: outside, need, enough, gas, diesel, mains. A column is empty where
// the heater has no such source.
func HeatBalanceTable(in table.Input) (table.Result, error) {
	h := heaterFor(in)
	if h == nil || h.most() == 0 {
		return table.Result{}, nil
	}
	loss, lack := LossOf(in.All)
	result := table.Result{Lacks: h.lacks}
	if lack != nil {
		result.Lacks = append(result.Lacks, *lack)
	}
	if loss.Coefficient == 0 {
		return result, nil
	}
	for _, outside := range weather {
		need, err := HeatNeed(loss.Coefficient, Warm, outside)
		if err != nil {
			return table.Result{}, err
		}
		result.Rows = append(result.Rows, h.balance(outside, need, loss.Estimated))
	}
	return result, nil
}

func (h *heater) balance(outside quantity.Kelvins, need quantity.Watts, estimated bool) table.Row {
	certain := need
	if estimated {
		certain *= spare
	}
	row := table.Row{{Quantity: quantity.Of(outside)}, {Quantity: quantity.Of(calc.StepUp(need, heatStep))}, h.enough(certain), {}, {}, {}}
	if h.flame != nil {
		switch burns := h.flame.atMost(need); burns.fuel {
		case gas:
			row[3].Quantity = quantity.Of(quantity.Kilograms(float64(burns.gas) * float64(day)))
		case diesel:
			row[4].Quantity = quantity.Of(quantity.CubicMetres(float64(burns.diesel) * float64(day)))
		}
	}
	if mains := h.strongest(); mains != nil {
		row[5].Quantity = quantity.Of(quantity.Joules(float64(min(mains.heat, need)) * float64(day)))
	}
	return row
}

// enough says what of the heater holds the van warm.
func (h *heater) enough(need quantity.Watts) table.Cell {
	var burning string
	if h.flame != nil {
		burning = h.flame.word
	}
	flame := h.flame != nil && h.flame.heat >= need
	mains := len(h.elements) > 0 && h.strongest().heat >= need
	switch {
	case flame && mains:
		return table.Cell{Word: burning + "-or-mains", Tone: table.Good}
	case flame:
		return table.Cell{Word: burning, Tone: table.Good}
	case mains:
		return table.Cell{Word: "mains", Tone: table.Good}
	case h.together() >= need:
		return table.Cell{Word: burning + "-and-mains", Tone: table.Doubtful}
	}
	return table.Cell{Word: "nothing", Tone: table.Bad}
}
