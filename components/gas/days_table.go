package gas

import (
	"fmt"
	"slices"

	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// outsides are the temperatures of the table, in °C.
var outsides = []float64{-10, -5, 0, 5, 10, 15, 20}

// day is 24 hours: the least that the table of days shows.
const day quantity.Seconds = wholeDay

// DaysTable says how many days all the gas on board lasts: at an outside
// temperature, for cooking and hot water alone, with the fridge on gas too, and
// with the heating too. The gas is of the kind in the store whose page it is.
//
// A temperature at which the last of the gas does not come has no row: not all
// of the gas can be used there.
//
// Days are whole and rounded down; less than one, a use that cannot be reckoned
// with and one that the van has not are left empty, and each of the uses is
// empty where one before it cannot be reckoned with.
//
// Columns: at, cook, fridge, heat.
func DaysTable(in table.Input) (table.Result, error) {
	self, err := storeOf(in.Self)
	if err != nil {
		return table.Result{}, err
	}
	gas, err := gasOf(in.Self)
	if err != nil {
		return table.Result{}, err
	}
	all, lacks := aboard(in, self)
	if all == 0 {
		return table.Result{Lacks: lacks}, nil
	}
	brew, _, err := brewOf(in.Self) // ColdTable tells its lacks
	if err != nil {
		return table.Result{}, err
	}
	stops, err := CoolLimit(brew.last, anyFlow)
	if err != nil {
		return table.Result{}, err
	}
	cook, cool := cooking(in), cooling(in)
	cook.join(hotWater(in, gas))
	warm, heated, unknown := warmings(in, gas)
	result := table.Result{Lacks: once(slices.Concat(cook.lacks, cool.lacks, unknown))}
	for i, celsius := range outsides {
		if quantity.Kelvins(273.15+celsius) < stops {
			continue
		}
		has := [...]bool{len(cook.list) > 0, len(cool.list) > 0, heated}
		row, some, err := daysRow(all, quantity.Kelvins(273.15+celsius), [...]uses{cook, cool, warm[i]}, has)
		if err != nil {
			return table.Result{}, err
		}
		if some {
			result.Rows = append(result.Rows, row)
		}
	}
	return result, nil
}

// warmings is the heating at each of the temperatures and whether it is known
// at all of them; a blank would else look like less than a day.
func warmings(in table.Input, gas string) (warm []uses, heated bool, lacks []table.Lack) {
	for _, celsius := range outsides {
		at := heatingAt(in, gas, quantity.Kelvins(273.15+celsius))
		warm, lacks = append(warm, at), append(lacks, at.lacks...)
		heated = heated || len(at.list) > 0
	}
	return warm, heated && len(lacks) == 0, lacks
}

// daysRow works out one row for the purposes that the van has, each with those
// before it, and reports whether it says anything.
func daysRow(all quantity.Kilograms, outside quantity.Kelvins, parts [3]uses, has [3]bool) (table.Row, bool, error) {
	row, some := table.Row{{Quantity: quantity.Of(outside)}, {}, {}, {}}, false
	var sum uses
	for i, part := range parts {
		sum.join(part)
		if !has[i] || !sum.whole() || sum.mass() == 0 {
			continue
		}
		lasts, err := Duration(all, quantity.KilogramsPerSecond(float64(sum.mass())/float64(day)))
		if err != nil {
			return nil, false, err
		}
		if lasts >= day {
			row[i+1].Quantity, some = quantity.Of(lasts), true
		}
	}
	return row, some, nil
}

// once drops what has been said before.
func once(lacks []table.Lack) []table.Lack {
	var first []table.Lack
	for _, lack := range lacks {
		if !slices.Contains(first, lack) {
			first = append(first, lack)
		}
	}
	return first
}

// gasOf reads which gas a store holds.
func gasOf(f table.Fitted) (string, error) {
	stated, ok := f.Fact("gas")
	if !ok {
		return "", fmt.Errorf("%s: gas is not stated, so nobody knows how much heat is in it", f.Name)
	}
	if _, known := netHeat[stated.Option]; !known {
		return "", fmt.Errorf("%s: nobody knows how much heat is in %q", f.Name, stated.Option)
	}
	return stated.Option, nil
}
