package vehicle

import (
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// heights are those of the table: hills, a low pass, a high pass.
//
// Source: common practice.
var heights = []quantity.Metres{500, 1000, 2000}

// TyresHeightTable shows what a gauge says on cold tyres that were set at sea
// level, high up where the air outside presses less. It adds to what warmth
// does. Tyres of the same pressure share their rows.
//
// Columns: tyre, height, bar, psi. Pressures round up, as in TyresWarmTable.
func TyresHeightTable(in table.Input) (table.Result, error) {
	var result table.Result
	tyres, lacks := axleTyres(in.Self)
	result.Lacks = lacks
	set := Air{Inside: coldTyre, Outside: seaLevelPressure}
	for _, t := range tyres {
		for _, height := range heights {
			reading, err := readingAt(height, set, t.pressure)
			if err != nil {
				result.Lacks = append(result.Lacks, table.Lack{Use: t.use, Reason: err.Error()})
				break
			}
			shown := table.Cell{Quantity: quantity.Of(reading)}
			result.Rows = append(result.Rows, table.Row{{Word: t.word}, {Quantity: quantity.Of(height)}, shown, shown})
		}
	}
	return result, nil
}

// readingAt is what a gauge says on a tyre that is as warm as when it was set.
func readingAt(height quantity.Metres, set Air, pressure quantity.Pascals) (quantity.Pascals, error) {
	outside, err := AirPressure(height)
	if err != nil {
		return 0, err
	}
	return GaugeReading(set, Air{Inside: set.Inside, Outside: outside}, pressure)
}
