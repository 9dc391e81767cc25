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

// rangeStep is how coarsely a range is told: consumption is an estimate.
const rangeStep quantity.Metres = 10e3

// RangeTable shows how far the van goes on what the gauge shows, from the tank
// and the consumption that are stated, or from the drive battery. A van that
// states no consumption has no rows; one that states it and not what it is
// drawn from has a lack.
//
// Columns: gauge, km, miles. A range is told in whole tens of kilometres, and
// both columns round down; what is less than that has no row.
func RangeTable(in table.Input) (table.Result, error) {
	fuel, lacks := rangeRows[quantity.CubicMetres](in.Self, "tank", "fuel_100_km")
	charge, more := rangeRows[quantity.Joules](in.Self, "drive_battery", "energy_100_km")
	return table.Result{Rows: append(fuel, charge...), Lacks: append(lacks, more...)}, nil
}

// rangeRows makes the rows of what drives the van, from the facts that say how
// much is held and how much 100 km use.
func rangeRows[T quantity.CubicMetres | quantity.Joules](f table.Fitted, store, consumption string) ([]table.Row, []table.Lack) {
	lack := func(fact string, err error) []table.Lack {
		return []table.Lack{{Use: table.Use{Fitted: f.Name, Fact: fact}, Reason: err.Error()}}
	}
	uses, ok := f.Fact(consumption)
	if !ok {
		return nil, nil
	}
	rate, err := calc.Take[T](uses)
	if err != nil {
		return nil, lack(consumption, err)
	}
	holds, err := take[T](f, store)
	if err != nil {
		return nil, lack(store, err)
	}
	var rows []table.Row
	for _, g := range gauges {
		way, err := Range(g.level, holds, rate)
		if err != nil {
			return nil, lack(store, err)
		}
		if way = calc.StepDown(way, rangeStep); way == 0 {
			continue
		}
		shown := table.Cell{Quantity: quantity.Of(way)}
		rows = append(rows, table.Row{{Word: g.word}, shown, shown})
	}
	return rows, nil
}
