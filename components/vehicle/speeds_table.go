package vehicle

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// road is one row of the speed table: its word, and the constant that holds
// there for a light and for a heavy van.
type road struct{ word, light, heavy string }

var roads = []road{
	{"town", "gb_built_up", "gb_built_up"},
	{"single", "gb_single_light", "gb_single_heavy"},
	{"dual", "gb_dual_light", "gb_dual_heavy"},
	{"motorway", "gb_motorway", "gb_motorway"},
}

// SpeedsTable shows the speed limits of Great Britain that hold for the class
// of the van, and the operator's own, in both units. A van without a stated
// class gets the lower limits. Where the operator's own limit is lower, it
// stands in its row all the same: each row is one limit.
//
// Columns: road, mph, kmh. Both round down, so that a converted limit is never
// above the limit.
func SpeedsTable(in table.Input) (table.Result, error) {
	var result table.Result
	class, _ := in.Self.Fact("gb_class")
	for _, r := range roads {
		name := r.heavy
		if class.Option == "light" {
			name = r.light
		}
		limit, ok := in.Self.Constant(name)
		if !ok {
			continue // the system no longer states it
		}
		result.Rows = append(result.Rows, speedRow(r.word, limit.Quantity))
	}
	own, ok := in.Self.Fact("own_limit")
	if !ok {
		return result, nil
	}
	if _, err := calc.Take[quantity.MetresPerSecond](own); err != nil {
		result.Lacks = append(result.Lacks, table.Lack{Use: table.Use{Fitted: in.Self.Name, Fact: own.Name}, Reason: err.Error()})
		return result, nil
	}
	result.Rows = append(result.Rows, speedRow("own", own.Quantity))
	return result, nil
}

func speedRow(word string, limit quantity.Quantity) table.Row {
	return table.Row{{Word: word}, {Quantity: limit}, {Quantity: limit}}
}
