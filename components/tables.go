package components

import (
	"doorpocket/components/electrics"
	"doorpocket/components/gas"
	"doorpocket/components/heating"
	"doorpocket/components/table"
	"doorpocket/components/vehicle"
)

// Calculations lists the functions behind the computed tables. A table of
// tables.toml without a function here, or the reverse, fails a test.
func Calculations() map[string]table.Func {
	return map[string]table.Func{
		"electrics/hook-up-load": electrics.HookUpLoadTable,
		"gas/cold":               gas.ColdTable,
		"gas/duration":           gas.DurationTable,
		"gas/weigh":              gas.WeighTable,
		"heating/water-heat-up":  heating.WaterHeatUpTable,
		"vehicle/dimensions":     vehicle.DimensionsTable,
		"vehicle/tyre-pressures": vehicle.TyrePressuresTable,
	}
}
