package water

import (
	"cmp"
	"fmt"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// LoadTable says what the water in a fresh tank weighs: a row for each quarter
// of the tank, and one for the most that may be in it on the road, where that
// is stated.
//
// Columns: part, water, tank, boiler: the mass in the tank, and with that in
// every boiler of the van, which stays full whatever the tank holds. The last
// is empty where there is no boiler, or one whose size cannot be used.
func LoadTable(in table.Input) (table.Result, error) {
	tank, ok := in.Self.Fact("capacity")
	if !ok || tank.Role != "fresh-capacity" {
		return table.Result{}, nil
	}
	whole, err := calc.Take[quantity.CubicMetres](tank)
	if err != nil {
		return table.Result{Lacks: []table.Lack{{Use: table.Use{Fitted: in.Self.Name, Fact: tank.Name}, Reason: err.Error()}}}, nil
	}
	boilers, lacks := boilerWater(in)
	result := table.Result{Lacks: lacks}
	fills, lack := fills(in.Self, whole)
	if lack != nil {
		result.Lacks = append(result.Lacks, *lack)
	}
	for _, water := range fills {
		row, err := loadRow(water, whole, boilers)
		if err != nil {
			return table.Result{}, err
		}
		result.Rows = append(result.Rows, row)
	}
	return result, nil
}

func loadRow(water, whole, boilers quantity.CubicMetres) (table.Row, error) {
	mass, err := Mass(water)
	if err != nil {
		return nil, err
	}
	row := table.Row{
		{Quantity: quantity.Of(quantity.Fraction(water / whole))}, {Quantity: quantity.Of(water)}, {Quantity: quantity.Of(mass)}, {},
	}
	if boilers > 0 {
		mass, err := Mass(water + boilers)
		if err != nil {
			return nil, err
		}
		row[3].Quantity = quantity.Of(mass)
	}
	return row, nil
}

// fills are the volumes of the rows, the smallest first.
func fills(f table.Fitted, whole quantity.CubicMetres) ([]quantity.CubicMetres, *table.Lack) {
	var all []quantity.CubicMetres
	for quarters := 1; quarters <= 4; quarters++ {
		all = append(all, whole*quantity.CubicMetres(quarters)/4)
	}
	stated, ok := f.Fact("travel_volume")
	if !ok {
		return all, nil
	}
	lack := func(err error) *table.Lack {
		return &table.Lack{Use: table.Use{Fitted: f.Name, Fact: stated.Name}, Reason: err.Error()}
	}
	travel, err := calc.Take[quantity.CubicMetres](stated)
	if err != nil {
		return all, lack(err)
	}
	if travel > whole {
		return all, lack(fmt.Errorf("the tank may hold %s on the road, which is more than fits in", stated.Quantity))
	}
	if !slices.ContainsFunc(all, func(v quantity.CubicMetres) bool { return cmp.Compare(v, travel) == 0 }) {
		all = append(all, travel)
		slices.Sort(all)
	}
	return all, nil
}

// boilerWater is the water in all boilers of the van; 0 where one of them
// cannot be reckoned with.
func boilerWater(in table.Input) (quantity.CubicMetres, []table.Lack) {
	var sum quantity.CubicMetres
	var lacks []table.Lack
	for _, s := range in.WithRole("boiler-volume") {
		volume, err := calc.Take[quantity.CubicMetres](s.Fact)
		if err != nil {
			lacks = append(lacks, table.Lack{Use: s.Use(), Reason: err.Error()})
			continue
		}
		sum += volume
	}
	if len(lacks) > 0 {
		return 0, lacks
	}
	return sum, nil
}
