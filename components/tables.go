package components

import (
	"doorpocket/components/electrics"
	"doorpocket/components/gas"
	"doorpocket/components/heating"
	"doorpocket/components/table"
	"doorpocket/components/toilet"
	"doorpocket/components/vehicle"
	"doorpocket/components/water"
)

// Calculations lists the functions behind the computed tables. A table of
// tables.toml without a function here, or the reverse, fails a test.
func Calculations() map[string]table.Func {
	return map[string]table.Func{
		"electrics/charge-state":           electrics.ChargeStateTable,
		"electrics/days-12v":               electrics.Days12VTable,
		"electrics/fuses":                  electrics.FusesTable,
		"electrics/hook-up-load":           electrics.HookUpLoadTable,
		"electrics/hook-up-together":       electrics.HookUpTogetherTable,
		"electrics/hook-up-together-120-v": electrics.HookUpTogether120VTable,
		"electrics/lead-drop":              electrics.LeadDropTable,
		"electrics/solar-day-36":           electrics.SolarDay36Table,
		"electrics/solar-day-45":           electrics.SolarDay45Table,
		"electrics/solar-day-52":           electrics.SolarDay52Table,
		"gas/cold":                         gas.ColdTable,
		"gas/day":                          gas.DayTable,
		"gas/days":                         gas.DaysTable,
		"gas/duration":                     gas.DurationTable,
		"gas/weigh":                        gas.WeighTable,
		"heating/heat-balance":             heating.HeatBalanceTable,
		"heating/shower-water":             heating.ShowerWaterTable,
		"heating/warm-up":                  heating.WarmUpTable,
		"heating/water-heat-up":            heating.WaterHeatUpTable,
		"toilet/days":                      toilet.DaysTable,
		"toilet/dose":                      toilet.DoseTable,
		"vehicle/dimensions":               vehicle.DimensionsTable,
		"vehicle/gallons":                  vehicle.GallonsTable,
		"vehicle/load-index":               vehicle.LoadIndexTable,
		"vehicle/payload":                  vehicle.PayloadTable,
		"vehicle/payload-cases":            vehicle.PayloadCasesTable,
		"vehicle/range":                    vehicle.RangeTable,
		"vehicle/speeds":                   vehicle.SpeedsTable,
		"vehicle/tyre-pressures":           vehicle.TyrePressuresTable,
		"vehicle/tyres-height":             vehicle.TyresHeightTable,
		"vehicle/tyres-warm":               vehicle.TyresWarmTable,
		"vehicle/weight-limits":            vehicle.WeightLimitsTable,
		"water/days":                       water.DaysTable,
		"water/load":                       water.LoadTable,
		"water/scald":                      water.ScaldTable,
	}
}
