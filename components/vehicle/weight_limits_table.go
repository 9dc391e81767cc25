package vehicle

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// weighed is a mass that a road sign or a licence asks for: the system and the
// fact that state it, and its word.
type weighed struct{ system, fact, word string }

var signed = []weighed{
	{massesSystem, "max", "whole"},
	{massesSystem, "front_axle", "front"},
	{massesSystem, "rear_axle", "rear"},
	{"vehicle/tow-bar", "train", "train"},
}

// WeightLimitsTable shows the most that the van, its axles, and the van with a
// trailer may weigh, in kilograms and in tonnes as signs have them. The table is
// that of the van: it may stand on any page.
//
// Columns: what, kg, tonnes. Both round up, so that the van never seems light
// enough for a bridge that does not carry it.
func WeightLimitsTable(in table.Input) (table.Result, error) {
	var result table.Result
	for _, w := range signed {
		for _, f := range in.Of(w.system) {
			limit, ok := f.Fact(w.fact)
			if !ok {
				continue // optional
			}
			if _, err := calc.Take[quantity.Kilograms](limit); err != nil {
				use := table.Use{Fitted: f.Name, Fact: w.fact}
				result.Lacks = append(result.Lacks, table.Lack{Use: use, Reason: err.Error()})
				continue
			}
			mass := table.Cell{Quantity: limit.Quantity}
			result.Rows = append(result.Rows, table.Row{{Word: w.word}, mass, mass})
		}
	}
	return result, nil
}
