package heating

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

const (
	// ButaneHeat is the net heat of a kilogram of n-butane in J, 12.7 kWh, which
	// is a little less than that of propane: enough for either.
	//
	// Source: ISO 6976:2016 constants at 25 °C, 2657.32 kJ/mol and
	// 0.0581222 kg/mol.
	ButaneHeat = 2_657_320 / 0.0581222

	// PropaneGrossHeat is the heat of a kilogram of propane in J with the water of
	// the exhaust condensed: more than that no gas of a van can give.
	//
	// Source: ISO 6976:2016 constants at 25 °C, 2219.17 kJ/mol and
	// 0.04409562 kg/mol.
	PropaneGrossHeat = 2_219_170 / 0.04409562

	// dieselGrossHeat is the same for a cubic metre of diesel: 10.7 kWh/L.
	//
	// Source: from memory.
	dieselGrossHeat = 10.7 * 3.6e6 / 0.001

	// GasUsed is the part of the net heat of gas that a heater with a flue brings
	// into the van, or a boiler into its water, where nothing is stated.
	//
	// Source: brochure of a gas regulator, 480 g/h for 5 kW of heat, which is
	// 81 % on net heat; rounded down.
	GasUsed quantity.Fraction = 0.80

	// dieselHeat is the warm air from a litre of diesel: 2 kW from 0.24 L/h.
	//
	// Source: published table of diesel air heaters of the 2 kW class.
	dieselHeat = 2000.0 * 3600 / 0.00024 // J/m³
)

// GasHeat is the heat that a rate of gas brings into the van, where the plate of
// the heater does not tell.
//
//	P = r · e · H
//
// with the rate r in kg/s, the part used e = 0.80, the net heat of n-butane
// H = 45.72 MJ/kg and the heat P in W. It holds for any heater with a flue, of
// any size, on butane, propane or both.
//
// Accuracy: on the safe side; many heaters give up to a seventh more (from
// memory).
//
// Source: definition of the calorific value; ButaneHeat and GasUsed.
func GasHeat(rate quantity.KilogramsPerSecond) (quantity.Watts, error) {
	if _, err := calc.Positive("the rate of gas", rate); err != nil {
		return 0, err
	}
	return calc.Positive("the heat", quantity.Watts(float64(rate)*ButaneHeat*float64(GasUsed)))
}

// DieselHeat is the heat of the warm air that a rate of diesel gives, where the
// heater's papers do not tell.
//
//	P = f · D
//
// with the rate f in m³/s, D = 30 GJ/m³ or 8.3 kWh/L, and the heat P in W. It
// holds for air heaters with a flame of their own.
//
// Source: published table of diesel air heaters of the 2 kW class.
func DieselHeat(rate quantity.CubicMetresPerSecond) (quantity.Watts, error) {
	if _, err := calc.Positive("the rate of diesel", rate); err != nil {
		return 0, err
	}
	return calc.Positive("the heat", quantity.Watts(float64(rate)*dieselHeat))
}
