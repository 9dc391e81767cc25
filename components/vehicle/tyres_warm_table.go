package vehicle

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// coldTyre is the temperature at which the tyres of the tables were set, 15 °C.
// One set at 20 °C shows up to 0.02 bar less for the same rise, which no gauge
// of a filling station tells apart; of the two, the table shows more, so that
// it never makes a soft tyre look right.
//
// Source: common practice.
const coldTyre quantity.Kelvins = 288.15

// rises are how much warmer than that the air in a tyre is, from a night in
// frost to a fast drive on a hot day. As it was set is no row: that is the plate.
//
// Source: common practice.
var rises = []quantity.KelvinDifference{-25, -15, 10, 20, 30, 40}

// airState is one row of a table of gauge readings: what names it, and the air
// in and around the tyre.
type airState struct {
	name quantity.Quantity
	now  Air
}

// TyresWarmTable shows what a gauge says on the front and the rear tyres while
// the air in them is colder or warmer than when they were set, at sea level.
// Nothing is lost or added. A pressure that cannot be used, or is not stated,
// is a lack and leaves its columns empty.
//
// Columns: inside, front-bar, front-psi, rear-bar, rear-psi. Pressures round up:
// of a tyre that shows less, air is missing.
func TyresWarmTable(in table.Input) (table.Result, error) {
	var states []airState
	for _, rise := range rises {
		inside := coldTyre + quantity.Kelvins(rise)
		states = append(states, airState{quantity.Of(inside), Air{Inside: inside, Outside: seaLevelPressure}})
	}
	return gaugeTable(in.Self, states), nil
}

// gaugeTable is a row for each state with the readings of both axles. There are
// no rows where neither pressure can be used.
func gaugeTable(f table.Fitted, states []airState) table.Result {
	var result table.Result
	for _, s := range states {
		result.Rows = append(result.Rows, table.Row{{Quantity: s.name}, {}, {}, {}, {}})
	}
	for i, name := range requiredTyres {
		readings, err := gaugeReadings(f, name, states)
		if err != nil {
			result.Lacks = append(result.Lacks, table.Lack{Use: table.Use{Fitted: f.Name, Fact: name}, Reason: err.Error()})
			continue
		}
		for k, reading := range readings {
			shown := table.Cell{Quantity: quantity.Of(reading)}
			result.Rows[k][1+2*i], result.Rows[k][2+2*i] = shown, shown
		}
	}
	if len(result.Lacks) == len(requiredTyres) {
		result.Rows = nil
	}
	return result
}

func gaugeReadings(f table.Fitted, name string, states []airState) ([]quantity.Pascals, error) {
	pressure, err := take[quantity.Pascals](f, name)
	if err != nil {
		return nil, err
	}
	var readings []quantity.Pascals
	for _, s := range states {
		reading, err := GaugeReading(Air{Inside: coldTyre, Outside: seaLevelPressure}, s.now, pressure)
		if err != nil {
			return nil, err
		}
		readings = append(readings, reading)
	}
	return readings, nil
}

// take reads a fact by name, also for the message where it is not stated.
func take[T quantity.Measure](f table.Fitted, name string) (T, error) {
	stated, _ := f.Fact(name)
	stated.Name = name
	return calc.Take[T](stated)
}
