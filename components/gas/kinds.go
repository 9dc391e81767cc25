package gas

import (
	"strings"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// rateRole marks the fact that says how much gas an appliance uses at a setting.
const rateRole = "gas-rate"

// kind is a column of appliances that do the same.
type kind int

const (
	heats kind = iota // the van, its water or both
	hob
	fridge
	others // oven, grill, what is plugged in outside
	kinds
)

// kindOf says what an appliance does by the system that it is.
func kindOf(system string) kind {
	switch {
	case strings.HasPrefix(system, "heating/"):
		return heats
	case system == "kitchen/hob":
		return hob
	case system == "kitchen/three-way-fridge":
		return fridge
	}
	return others
}

// thirstiest gives for each kind the highest rate that any appliance of it
// has at any setting, zero where the van has none.
func thirstiest(in table.Input) ([kinds]quantity.KilogramsPerSecond, []table.Lack) {
	var most [kinds]quantity.KilogramsPerSecond
	var lacks []table.Lack
	for _, stated := range in.WithRole(rateRole) {
		rate, err := calc.Take[quantity.KilogramsPerSecond](stated.Fact)
		if err != nil {
			lacks = append(lacks, table.Lack{Use: stated.Use(), Reason: err.Error()})
			continue
		}
		k := kindOf(stated.Fitted.System)
		most[k] = max(most[k], rate)
	}
	return most, lacks
}
