package vehicle

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// held is a role that says what something holds, and the word for it.
type held struct{ role, word string }

var vessels = []held{
	{"fuel-capacity", "fuel"},
	{"fresh-capacity", "fresh"},
	{"waste-capacity", "waste"},
}

// GallonsTable shows what the tanks for fuel, fresh water and waste water hold,
// in litres and in the gallons of Britain and of the United States. Every tank
// of the van has a row.
//
// Columns: tank, litres, uk, us. All round down, so that nobody fills in more
// than fits.
func GallonsTable(in table.Input) (table.Result, error) {
	var result table.Result
	for _, v := range vessels {
		for _, s := range in.WithRole(v.role) {
			if _, err := calc.Take[quantity.CubicMetres](s.Fact); err != nil {
				result.Lacks = append(result.Lacks, table.Lack{Use: s.Use(), Reason: err.Error()})
				continue
			}
			volume := table.Cell{Quantity: s.Fact.Quantity}
			result.Rows = append(result.Rows, table.Row{{Word: v.word}, volume, volume, volume})
		}
	}
	return result, nil
}
