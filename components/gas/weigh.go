package gas

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// GasLeft is the gas in a cylinder on a scale.
//
//	m = r - t
//
// with the reading r, the empty mass t stamped on the cylinder (its tare) and
// the gas m, all in kg. It holds for a cylinder alone on the scale, without
// hose, regulator or cap where these are not in its tare. A reading that is not
// above the tare is refused: the cylinder is empty, or the tare is another's.
//
// Accuracy: that of the scale; the whole error of it is an error of the gas.
//
// Source: conservation of mass.
func GasLeft(reading, tare quantity.Kilograms) (quantity.Kilograms, error) {
	if _, err := calc.Positive("the reading", reading); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the tare", tare); err != nil {
		return 0, err
	}
	if reading <= tare {
		return 0, calc.Outside("the reading of %g kg is not above the tare of %g kg", float64(reading), float64(tare))
	}
	return calc.Positive("the gas left", reading-tare)
}

// Reading is what a scale shows for a cylinder with so much gas in it, GasLeft
// the other way round.
func Reading(left, tare quantity.Kilograms) (quantity.Kilograms, error) {
	if _, err := calc.Positive("the gas left", left); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the tare", tare); err != nil {
		return 0, err
	}
	return calc.Positive("the reading", left+tare)
}
