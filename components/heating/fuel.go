package heating

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// What fuel gives where the appliance's own heat is not stated.
const (
	// gasHeat is the net heat of a kilogram of n-butane, 12.7 kWh, which is a
	// little less than that of propane: enough for either.
	//
	// Source: ISO 6976:2016 constants, 2657.32 kJ/mol and 0.0581222 kg/mol.
	gasHeat = 45.72e6 // J/kg

	// gasUsed is the part of the net heat that a heater with a flue brings
	// into the van.
	//
	// Source: brochure of a gas regulator, 480 g/h for 5 kW of heat, which is
	// 81 % on net heat.
	gasUsed = 0.80

	// dieselHeat is the warm air from a litre of diesel: 2 kW from 0.24 L/h.
	//
	// Source: published table of diesel air heaters of the 2 kW class.
	dieselHeat = 2000.0 * 3600 / 0.00024 // J/m³
)

// GasRate is the gas that a heater burns for a heat, where its plate does not
// tell.
//
//	r = P / (H · e)
//
// with the heat P in W, the net heat of the gas H = 45.72 MJ/kg, the part used
// e = 0.80 and the rate r in kg/s. It holds for any heater with a flue, of any
// size, on butane, propane or both.
//
// Accuracy: on the safe side; many heaters use up to a seventh less (from
// memory).
//
// Source: definition of the calorific value; the constants above.
func GasRate(heat quantity.Watts) (quantity.KilogramsPerSecond, error) {
	if _, err := calc.Positive("the heat", heat); err != nil {
		return 0, err
	}
	return calc.Positive("the rate of gas", quantity.KilogramsPerSecond(float64(heat)/(gasHeat*gasUsed)))
}

// GasHeat is the heat that a rate of gas brings into the van: the reverse of
// GasRate.
func GasHeat(rate quantity.KilogramsPerSecond) (quantity.Watts, error) {
	if _, err := calc.Positive("the rate of gas", rate); err != nil {
		return 0, err
	}
	return calc.Positive("the heat", quantity.Watts(float64(rate)*gasHeat*gasUsed))
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
