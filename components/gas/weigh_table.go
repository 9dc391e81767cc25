package gas

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// tareFact is the empty mass stamped on the collar of the van's cylinders.
const tareFact = "tare"

// tenths is how many steps the table makes from full to empty.
const tenths = 10

// WeighTable says what the reading of a scale means: the gas left and how many
// hours of it the thirstiest appliance of each kind has, at its highest
// setting. A row for each tenth of a full cylinder, down to the last; at the
// tare it is empty, which is no row.
//
// Readings are rounded up and all else down, so that a scale that shows the
// reading of a row always stands for at least its gas. A kind that the van
// lacks, or hours that are less than one, are left empty. Without a stated
// tare there is no table.
//
// Columns: reading, part, left, heats, hob, fridge, others.
func WeighTable(in table.Input) (table.Result, error) {
	self, err := storeOf(in.Self)
	if err != nil {
		return table.Result{}, err
	}
	stated, ok := in.Self.Fact(tareFact)
	if !ok {
		return table.Result{}, nil
	}
	tare, err := calc.Take[quantity.Kilograms](stated)
	if err != nil {
		use := table.Use{Fitted: in.Self.Name, Fact: tareFact}
		return table.Result{Lacks: []table.Lack{{Use: use, Reason: err.Error()}}}, nil
	}
	rates, lacks := thirstiest(in)
	result := table.Result{Lacks: lacks}
	for n := tenths; n > 0; n-- {
		row, err := weighed(self.one, tare, quantity.Fraction(n)/tenths, rates)
		if err != nil {
			return table.Result{}, err
		}
		result.Rows = append(result.Rows, row)
	}
	return result, nil
}

func weighed(full, tare quantity.Kilograms, part quantity.Fraction, rates [kinds]quantity.KilogramsPerSecond) (table.Row, error) {
	reading, err := Reading(full*quantity.Kilograms(part), tare)
	if err != nil {
		return nil, err
	}
	left, err := GasLeft(reading, tare)
	if err != nil {
		return nil, err
	}
	row := table.Row{{Quantity: quantity.Of(reading)}, {Quantity: quantity.Of(part)}, {Quantity: quantity.Of(left)}}
	for _, rate := range rates {
		cell, err := wholeHours(left, rate)
		if err != nil {
			return nil, err
		}
		row = append(row, cell)
	}
	return row, nil
}

// wholeHours is empty for no appliance and for less than an hour.
func wholeHours(left quantity.Kilograms, rate quantity.KilogramsPerSecond) (table.Cell, error) {
	if rate == 0 {
		return table.Cell{}, nil
	}
	lasts, err := Duration(left, rate)
	if err != nil || lasts < hour {
		return table.Cell{}, err
	}
	return table.Cell{Quantity: quantity.Of(lasts)}, nil
}
