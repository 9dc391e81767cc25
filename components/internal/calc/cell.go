package calc

import (
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// CellDown is a cell with a whole number of steps, rounded down, and empty for
// less than one: no table may show nothing.
func CellDown[T quantity.Measure](v, step T) table.Cell {
	if v = StepDown(v, step); v > 0 {
		return table.Cell{Quantity: quantity.Of(v)}
	}
	return table.Cell{}
}
