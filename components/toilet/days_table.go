package toilet

import (
	"errors"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

const (
	mostPeople = 4
	halfDay    = day / 2

	// emptyAt is the level at which it is best to empty a tank.
	//
	// Source: page of a caravan information service, "about two thirds".
	emptyAt quantity.Fraction = 2.0 / 3
)

// filling is what goes into a kind of toilet.
type filling struct {
	first, each quantity.CubicMetres
}

// fillings are those of the systems that hold a tank. The container of a dry
// toilet takes urine alone and starts empty.
var fillings = map[string]filling{
	"toilet/cassette":         {firstWater, urine + flushes*smallFlush},
	"toilet/portable-toilet":  {firstWater, urine + flushes*smallFlush},
	"toilet/macerator-toilet": {firstWater, urine + flushes*largeFlush},
	"toilet/dry-toilet":       {0, urine},
}

// DaysTable says how many days the tank of the toilet takes to fill, for one
// to four people: to two thirds, when it is best emptied, and to the top.
//
// Columns: people, best, full. A cell is empty where it is less than half a
// day.
func DaysTable(in table.Input) (table.Result, error) {
	f, ok := fillings[in.Self.System]
	if !ok {
		return table.Result{}, nil
	}
	var result table.Result
	for _, tank := range in.Self.WithRole("toilet-capacity") {
		volume, err := calc.Take[quantity.CubicMetres](tank.Fact)
		if err != nil {
			result.Lacks = append(result.Lacks, table.Lack{Use: tank.Use(), Reason: err.Error()})
			continue
		}
		for people := 1; people <= mostPeople; people++ {
			row := table.Row{{Quantity: quantity.Of(quantity.Fraction(people))}}
			for _, level := range []quantity.Fraction{emptyAt, 1} {
				lasts, err := FillTime(volume, level, f.first, people, f.each)
				if err != nil && !errors.Is(err, calc.ErrOutside) {
					return table.Result{}, err
				}
				row = append(row, calc.CellDown(lasts, halfDay))
			}
			result.Rows = append(result.Rows, row)
		}
	}
	return result, nil
}
