package water

import (
	"errors"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// hotWaters are the temperatures of the rows: from the most that US rules allow
// at a bath or a shower to the hottest for which a time is published.
var hotWaters = []quantity.Kelvins{zeroCelsius + 49, zeroCelsius + 51, zeroCelsius + 55, zeroCelsius + 60, zeroCelsius + 65, zeroCelsius + 68}

// ScaldTable says how soon hot water burns. A page for cold water alone, and a
// van without hot water, have no rows.
//
// Columns: water, skin, whole. A cell is empty where no time is published.
func ScaldTable(in table.Input) (table.Result, error) {
	if !hot(in) {
		return table.Result{}, nil
	}
	var result table.Result
	for _, at := range hotWaters {
		row := table.Row{{Quantity: quantity.Of(at)}}
		for _, time := range []func(quantity.Kelvins) (quantity.Seconds, error){BurnTime, DeepBurnTime} {
			cell := table.Cell{}
			lasts, err := time(at)
			if err != nil && !errors.Is(err, calc.ErrOutside) {
				return table.Result{}, err
			}
			if err == nil {
				cell.Quantity = quantity.Of(lasts)
			}
			row = append(row, cell)
		}
		result.Rows = append(result.Rows, row)
	}
	return result, nil
}

// hot reports whether hot water comes where the page is about: as the page
// says itself, or from a boiler that it or the van has.
func hot(in table.Input) bool {
	if supply, ok := in.Self.Fact("supply"); ok {
		return supply.Option == "hot-and-cold"
	}
	if in.Self.System == "toilet/shower" {
		return len(in.WithRole("boiler-volume")) > 0
	}
	return slices.ContainsFunc(in.Self.Facts, func(f table.Fact) bool { return f.Role == "boiler-volume" })
}
