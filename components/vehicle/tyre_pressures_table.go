package vehicle

import (
	"fmt"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// pressureRole marks a fact that is the pressure of a tyre.
const pressureRole = "tyre-pressure"

// The tyres that the table has words for, in its order. Every van has the
// first two; where no pressure of a spare wheel is stated, the van has none or
// its plate does not say.
var (
	tyres         = []string{"front", "rear", "spare"}
	requiredTyres = []string{"front", "rear"}
)

// TyrePressuresTable shows the tyre pressures of the van's plate in three units.
// Nothing is worked out but the units; they are pressures above that of the
// atmosphere, as gauges show them, and so is every unit. A tyre that the
// table has no words for stands last under the label of its fact.
//
// Columns: axle, bar, psi, kpa. Source of the units: package quantity.
func TyrePressuresTable(in table.Input) (table.Result, error) {
	var result table.Result
	for _, name := range requiredTyres {
		if _, ok := in.Self.Fact(name); !ok {
			use := table.Use{Fitted: in.Self.Name, Fact: name}
			result.Lacks = append(result.Lacks, table.Lack{Use: use, Reason: name + " is not stated"})
		}
	}
	stated := in.Self.WithRole(pressureRole)
	slices.SortStableFunc(stated, func(a, b table.Stated) int { return tyrePlace(a) - tyrePlace(b) })
	for _, s := range stated {
		if _, err := calc.Take[quantity.Pascals](s.Fact); err != nil {
			result.Lacks = append(result.Lacks, table.Lack{Use: s.Use(), Reason: err.Error()})
			continue
		}
		pressure := table.Cell{Quantity: s.Fact.Quantity}
		result.Rows = append(result.Rows, table.Row{tyreCell(s), pressure, pressure, pressure})
	}
	if len(result.Rows) == 0 {
		return table.Result{}, fmt.Errorf("no tyre pressure of %s can be used", in.Self.Name)
	}
	return result, nil
}

func tyrePlace(s table.Stated) int {
	if i := slices.Index(tyres, s.Fact.Name); i >= 0 {
		return i
	}
	return len(tyres)
}

func tyreCell(s table.Stated) table.Cell {
	if slices.Contains(tyres, s.Fact.Name) {
		return table.Cell{Word: s.Fact.Name}
	}
	return table.Cell{Uses: []table.Use{s.Use()}}
}
