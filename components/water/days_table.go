package water

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

const (
	mostPeople = 4
	halfDay    = day / 2
)

// DaysTable says how many days each tank lasts: the fresh water until it is
// empty and the waste water until it is full. The page of a tank shows that
// tank; any other page all tanks of the van.
//
// Columns: tank, people, sparing, usual, showers. A cell is empty where it is
// less than half a day.
func DaysTable(in table.Input) (table.Result, error) {
	var result table.Result
	for _, tank := range tanks(in) {
		volume, err := calc.Take[quantity.CubicMetres](tank.Fact)
		if err != nil {
			result.Lacks = append(result.Lacks, table.Lack{Use: tank.Use(), Reason: err.Error()})
			continue
		}
		for people := 1; people <= mostPeople; people++ {
			row := table.Row{{Uses: []table.Use{tank.Use()}}, {Quantity: quantity.Of(quantity.Fraction(people))}}
			for _, each := range []quantity.CubicMetres{sparing, usual, showers} {
				lasts, err := Lasts(volume, people, each)
				if err != nil {
					return table.Result{}, err
				}
				row = append(row, calc.CellDown(lasts, halfDay))
			}
			result.Rows = append(result.Rows, row)
		}
	}
	return result, nil
}

// tanks are the tanks of the page, or of the whole van.
func tanks(in table.Input) []table.Stated {
	own := append(in.Self.WithRole("fresh-capacity"), in.Self.WithRole("waste-capacity")...)
	if len(own) > 0 {
		return own
	}
	return append(in.WithRole("fresh-capacity"), in.WithRole("waste-capacity")...)
}
