package heating

import (
	"fmt"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// What the table assumes of the shower. The boiler holds water of HotWater.
//
// Source: common practice; flows with a small pump and a fine head, from
// memory.
const (
	litreAMinute = quantity.CubicMetresPerSecond(0.001 / float64(minute))
	thinFlow     = 3 * litreAMinute
	fullFlow     = 6 * litreAMinute
	halfMinute   = 30 * quantity.Seconds(1)
)

// The warmth of the cold water and of the shower in the rows: winter and
// summer, warm and hot.
//
// Source: common practice.
var (
	coldWaters   = []quantity.Kelvins{freezing + 10, freezing + 15}
	showerWaters = []quantity.Kelvins{freezing + 38, freezing + 40}
)

// ShowerWaterTable says how much water for a shower one full boiler makes and
// how long it runs: a row for each warmth of the cold water and of the shower.
// The page of a boiler counts that boiler; any other page the smallest of the
// van, so that no shower runs cold early. A shower for cold water only, and a
// van without a boiler, have no rows.
//
// Columns: cold, shower, water, thin, full, own. The column own is that of the
// shower inside, and empty where nobody states its flow. Less than half a minute
// is left empty too.
func ShowerWaterTable(in table.Input) (table.Result, error) {
	if supply, ok := in.Self.Fact("supply"); ok && supply.Option == "cold-only" {
		return table.Result{}, nil
	}
	var result table.Result
	boiler, lacks := smallestBoiler(in)
	result.Lacks = lacks
	if boiler == 0 {
		return result, nil
	}
	own, lack := ownFlow(in)
	if lack != nil {
		result.Lacks = append(result.Lacks, *lack)
	}
	for _, cold := range coldWaters {
		for _, shower := range showerWaters {
			row, err := showerRow(boiler, cold, shower, own)
			if err != nil {
				return table.Result{}, err
			}
			result.Rows = append(result.Rows, row)
		}
	}
	return result, nil
}

// smallestBoiler is the boiler of the page, or the smallest of the van; 0
// where there is none.
func smallestBoiler(in table.Input) (quantity.CubicMetres, []table.Lack) {
	stated := in.Self.WithRole("boiler-volume")
	if len(stated) == 0 {
		stated = in.WithRole("boiler-volume")
	}
	var least quantity.CubicMetres
	var lacks []table.Lack
	for _, s := range stated {
		volume, err := calc.Take[quantity.CubicMetres](s.Fact)
		if err != nil {
			lacks = append(lacks, table.Lack{Use: s.Use(), Reason: err.Error()})
			continue
		}
		if least == 0 || volume < least {
			least = volume
		}
	}
	return least, lacks
}

// showerSystem is the shower inside, whose flow the page of a boiler names too.
const showerSystem = "toilet/shower"

// ownFlow is the flow that the page states, or else the shower inside; 0 where
// neither does.
func ownFlow(in table.Input) (quantity.CubicMetresPerSecond, *table.Lack) {
	at := in.Self
	if in.Self.System != showerSystem {
		i := slices.IndexFunc(in.All, func(f table.Fitted) bool { return f.System == showerSystem })
		if i < 0 {
			return 0, nil
		}
		at = in.All[i]
	}
	stated, ok := at.Fact("flow")
	if !ok {
		return 0, nil
	}
	flow, err := calc.Take[quantity.CubicMetresPerSecond](stated)
	if err != nil {
		return 0, &table.Lack{Use: table.Use{Fitted: at.Name, Fact: stated.Name}, Reason: fmt.Sprintf("the minutes at the flow of the shower are left out: %v", err)}
	}
	return flow, nil
}

func showerRow(boiler quantity.CubicMetres, cold, shower quantity.Kelvins, own quantity.CubicMetresPerSecond) (table.Row, error) {
	water, err := MixedWater(boiler, HotWater, cold, shower)
	if err != nil {
		return nil, err
	}
	row := table.Row{{Quantity: quantity.Of(cold)}, {Quantity: quantity.Of(shower)}, {Quantity: quantity.Of(water)}}
	for _, flow := range []quantity.CubicMetresPerSecond{thinFlow, fullFlow, own} {
		cell := table.Cell{}
		if flow > 0 {
			lasts, err := FlowTime(water, flow)
			if err != nil {
				return nil, err
			}
			cell = calc.CellDown(lasts, halfMinute)
		}
		row = append(row, cell)
	}
	return row, nil
}
