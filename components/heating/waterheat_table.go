package heating

import (
	"cmp"
	"fmt"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// What all tables assume of the water that a boiler heats.
//
// Source: common practice.
const (
	ColdWater = freezing + 15
	HotWater  = freezing + 60
)

// source is what heats the water: a burner or an element at one setting.
type source struct {
	use    table.Use
	stated quantity.Quantity
	power  quantity.Watts
}

// WaterHeatUpTable says how long the boiler of the system whose page it is
// takes to heat: a row for every power that heats its water, the weakest first,
// and last the burner with its strongest element together. A system without a
// boiler has no rows.
//
// Columns: source, power, time.
func WaterHeatUpTable(in table.Input) (table.Result, error) {
	boilers := in.Self.WithRole("boiler-volume")
	if len(boilers) == 0 {
		return table.Result{}, nil
	}
	if len(boilers) > 1 {
		return table.Result{}, fmt.Errorf("%s states %d boilers, not one", in.Self.Name, len(boilers))
	}
	volume, err := calc.Take[quantity.CubicMetres](boilers[0].Fact)
	if err != nil {
		return table.Result{}, err
	}
	burners, elements := in.Self.WithRole("water-heat"), in.Self.WithRole("mains-power")
	known, lacks := sources(slices.Concat(burners, elements))
	result := table.Result{Lacks: lacks}
	for _, s := range known {
		row, err := s.row(volume, table.Cell{Uses: []table.Use{s.use}})
		if err != nil {
			return table.Result{}, err
		}
		result.Rows = append(result.Rows, row)
	}
	if len(burners) == 0 && len(elements) == 0 {
		result.Lacks = append(result.Lacks, table.Lack{Use: boilers[0].Use(), Reason: "nothing is stated that heats the water"})
	}
	if len(burners) == 0 || len(elements) == 0 {
		return result, nil
	}
	return withTogether(result, volume, burners, elements)
}

// withTogether adds the last row: the strongest of each kind. It is left out
// where a power of either kind is unknown.
func withTogether(result table.Result, volume quantity.CubicMetres, burners, elements []table.Stated) (table.Result, error) {
	for i := range result.Lacks {
		result.Lacks[i].Reason += "; so both together is not worked out either"
	}
	if len(result.Lacks) > 0 {
		return result, nil
	}
	both := source{power: strongest(burners) + strongest(elements)}
	both.stated = quantity.Of(both.power)
	row, err := both.row(volume, table.Cell{Word: "together"})
	if err != nil {
		return table.Result{}, err
	}
	result.Rows = append(result.Rows, row)
	return result, nil
}

// sources lists the powers that can be reckoned with, the weakest first.
func sources(stated []table.Stated) ([]source, []table.Lack) {
	var known []source
	var lacks []table.Lack
	for _, s := range stated {
		power, err := calc.Take[quantity.Watts](s.Fact)
		if err != nil {
			lacks = append(lacks, table.Lack{Use: s.Use(), Reason: err.Error()})
			continue
		}
		known = append(known, source{use: s.Use(), stated: s.Fact.Quantity, power: power})
	}
	slices.SortStableFunc(known, func(a, b source) int { return cmp.Compare(a.power, b.power) })
	return known, lacks
}

func strongest(stated []table.Stated) quantity.Watts {
	known, _ := sources(stated)
	return known[len(known)-1].power
}

func (s source) row(volume quantity.CubicMetres, name table.Cell) (table.Row, error) {
	lasts, err := HeatTime(volume, ColdWater, HotWater, s.power)
	if err != nil {
		return nil, err
	}
	return table.Row{name, {Quantity: s.stated}, {Quantity: quantity.Of(lasts)}}, nil
}
