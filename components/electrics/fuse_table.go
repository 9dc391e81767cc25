package electrics

import (
	"cmp"
	"fmt"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// FusesTable lists the blade fuses of the van by circuit, in the order in which
// the system declares them, with rating and colour. A rating in which no blade
// fuse is made has no row, and neither has a circuit of which another page of
// the van says another rating.
//
// Columns: circuit, rating, colour, replace.
func FusesTable(in table.Input) (table.Result, error) {
	var result table.Result
	for _, stated := range in.Self.WithRole("fuse") {
		rating, err := calc.Take[quantity.Amperes](stated.Fact)
		if err == nil {
			err = agrees(in, stated.Fact.Name, rating)
		}
		var colour string
		if err == nil {
			colour, err = BladeColour(rating)
		}
		if err != nil {
			result.Lacks = append(result.Lacks, table.Lack{Use: stated.Use(), Reason: err.Error()})
			continue
		}
		result.Rows = append(result.Rows, table.Row{
			{Uses: []table.Use{stated.Use()}}, {Quantity: stated.Fact.Quantity}, {Word: colour}, {Word: "same-only"},
		})
	}
	return result, nil
}

// saidBy names the system that states the fuse of a circuit on its own page, in
// the fact fuse.
var saidBy = map[string][]string{
	"water_pump": {"water/pump"},
	"toilet":     {"toilet/macerator-toilet"},
}

// agrees reports an error where another page of the van says another rating:
// one of the two is wrong, and nobody may trust either.
func agrees(in table.Input, circuit string, rating quantity.Amperes) error {
	for _, f := range in.All {
		if !slices.Contains(saidBy[circuit], f.System) {
			continue
		}
		other, err := take[quantity.Amperes](f, "fuse")
		if err == nil && cmp.Compare(other, rating) != 0 {
			return fmt.Errorf("it is %.4g A here and %.4g A in %s: look at the van", float64(rating), float64(other), f.Name)
		}
	}
	return nil
}
