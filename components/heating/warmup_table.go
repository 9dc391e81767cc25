package heating

import (
	"errors"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// starts lists the temperatures outside, and inside at the start, of the
// columns.
var starts = []quantity.Kelvins{freezing + 10, freezing, freezing - 10}

const (
	timeStep = 10 * minute // how finely times are told
	longest  = 12 * hour   // what takes longer than a night is as good as never
)

// WarmUpTable says how long a cold van takes to reach 20 °C: a row for each
// element and for the flame of the heater whose page it is, each alone, the
// weakest first, and last the flame with the strongest element.
//
// Columns: source, heat, then one for each temperature at the start: mild,
// frost, hard. A cell is empty where the source is too weak or takes longer than
// twelve hours.
func WarmUpTable(in table.Input) (table.Result, error) {
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
	for _, w := range h.alone() {
		row, err := warmUpRow(w.word, w.heat, loss)
		if err != nil {
			return table.Result{}, err
		}
		result.Rows = append(result.Rows, row)
	}
	if both := h.together(); both > 0 {
		row, err := warmUpRow("together", both, loss)
		if err != nil {
			return table.Result{}, err
		}
		result.Rows = append(result.Rows, row)
	}
	return result, nil
}

// alone lists what warms the van by itself, the weakest first.
func (h *heater) alone() []warmth {
	all := h.elements
	if h.flame == nil {
		return all
	}
	i := 0
	for i < len(all) && all[i].heat <= h.flame.heat {
		i++
	}
	return append(append(append([]warmth{}, all[:i]...), *h.flame), all[i:]...)
}

func warmUpRow(name string, heat quantity.Watts, loss Loss) (table.Row, error) {
	capacity, err := HeatCapacity(loss.Space)
	if err != nil {
		return nil, err
	}
	row := table.Row{{Word: name}, {Quantity: quantity.Of(heat)}}
	for _, start := range starts {
		lasts, err := WarmUp(loss.Coefficient, capacity, heat, start, start, Warm)
		if err != nil && !errors.Is(err, ErrTooWeak) {
			return nil, err
		}
		cell := table.Cell{}
		if err == nil && lasts <= longest {
			cell.Quantity = quantity.Of(calc.StepUp(lasts, timeStep))
		}
		row = append(row, cell)
	}
	return row, nil
}
