package toilet

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// doseStep is how finely a measuring cup shows.
//
// Source: common practice.
const doseStep = 5 * litre / 1000

// DoseTable says how much toilet liquid the tank of the page takes: the dose
// of the label, scaled from the tank that the label names and rounded up to
// 5 ml; or exactly as the label says where that is for this tank. A toilet
// without liquid has no rows.
//
// Columns: tank, label, for, dose. The column for is empty where the label
// speaks of this tank.
func DoseTable(in table.Input) (table.Result, error) {
	tank := in.Self.WithRole("toilet-capacity")
	if len(tank) != 1 {
		return table.Result{}, nil
	}
	dose, ok := in.Self.Fact("dose")
	if !ok && !takesLiquid(in.Self) {
		return table.Result{}, nil
	}
	dose.Name = "dose"
	row, fact, err := doseRow(in.Self, dose, tank[0].Fact)
	if err != nil {
		return table.Result{Lacks: []table.Lack{{Use: table.Use{Fitted: in.Self.Name, Fact: fact}, Reason: err.Error()}}}, nil
	}
	return table.Result{Rows: []table.Row{row}}, nil
}

// takesLiquid reports whether a toilet is filled with liquid, so that its dose
// must be stated.
func takesLiquid(f table.Fitted) bool {
	chemical, _ := f.Fact("chemical")
	additive, _ := f.Fact("additive")
	return chemical.Has(liquid) || additive.Option == liquid
}

const liquid = "liquid"

// doseRow gives with an error the fact that is at fault.
func doseRow(f table.Fitted, dose, tank table.Fact) (table.Row, string, error) {
	volume, err := calc.Take[quantity.CubicMetres](tank)
	if err != nil {
		return nil, tank.Name, err
	}
	label, err := calc.Take[quantity.CubicMetres](dose)
	if err != nil {
		return nil, dose.Name, err
	}
	row := table.Row{{Quantity: tank.Quantity}, {Quantity: dose.Quantity}, {}, {Quantity: dose.Quantity}}
	other, ok := f.Fact("dose_for")
	if !ok {
		return row, "", nil
	}
	of, err := calc.Take[quantity.CubicMetres](other)
	if err != nil {
		return nil, other.Name, err
	}
	here, err := Dose(label, of, volume)
	if err != nil {
		return nil, other.Name, err
	}
	row[2].Quantity, row[3].Quantity = other.Quantity, quantity.Of(calc.StepUp(here, doseStep))
	return row, "", nil
}
