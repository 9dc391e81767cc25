package vehicle

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// gauge is what a gauge shows.
type gauge struct {
	word  string
	level quantity.Fraction
}

var gauges = []gauge{{"full", 1}, {"three-quarters", 0.75}, {"half", 0.5}, {"quarter", 0.25}}

// RangeTable shows how far the van goes on what the gauge shows, from the tank
// and the consumption that are stated, or from the drive battery. A van that
// states no consumption has no rows; one that states it and not what it is
// drawn from has a lack.
//
// Columns: gauge, km, miles. Both round down.
func RangeTable(in table.Input) (table.Result, error) {
	var result table.Result
	for _, way := range []func(table.Fitted) ([]table.Row, *table.Lack){
		rangeRows[quantity.CubicMetres]("tank", "fuel_100_km"),
		rangeRows[quantity.Joules]("drive_battery", "energy_100_km"),
	} {
		rows, lack := way(in.Self)
		result.Rows = append(result.Rows, rows...)
		if lack != nil {
			result.Lacks = append(result.Lacks, *lack)
		}
	}
	return result, nil
}

// rangeRows makes the rows of what drives the van: fuel of a tank, or the charge
// of a drive battery.
func rangeRows[T quantity.CubicMetres | quantity.Joules](store, consumption string) func(table.Fitted) ([]table.Row, *table.Lack) {
	return func(f table.Fitted) ([]table.Row, *table.Lack) {
		stated, ok := f.Fact(consumption)
		if !ok {
			return nil, nil
		}
		uses, err := calc.Take[T](stated)
		if err != nil {
			return nil, &table.Lack{Use: table.Use{Fitted: f.Name, Fact: consumption}, Reason: err.Error()}
		}
		held, _ := f.Fact(store)
		held.Name = store // also where nothing is stated, for the message
		holds, err := calc.Take[T](held)
		var rows []table.Row
		for _, g := range gauges {
			var way quantity.Metres
			if err == nil {
				way, err = Range(g.level, holds, uses)
			}
			if err != nil {
				return nil, &table.Lack{Use: table.Use{Fitted: f.Name, Fact: store}, Reason: err.Error()}
			}
			shown := table.Cell{Quantity: quantity.Of(way)}
			rows = append(rows, table.Row{{Word: g.word}, shown, shown})
		}
		return rows, nil
	}
}
