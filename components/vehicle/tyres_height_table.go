package vehicle

import (
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// heights are those of the table: hills, low and high passes.
//
// Source: common practice.
var heights = []quantity.Metres{500, 1000, 1500, 2000, 2500}

// TyresHeightTable shows what a gauge says on cold tyres that were set at sea
// level, high up where the air outside presses less. It adds to what warmth
// does. Lacks are those of TyresWarmTable.
//
// Columns: height, front-bar, front-psi, rear-bar, rear-psi. Pressures round up,
// as in TyresWarmTable.
func TyresHeightTable(in table.Input) (table.Result, error) {
	var states []airState
	for _, height := range heights {
		outside, err := AirPressure(height)
		if err != nil {
			return table.Result{}, err
		}
		states = append(states, airState{quantity.Of(height), Air{Inside: coldTyre, Outside: outside}})
	}
	return gaugeTable(in.Self, states), nil
}
