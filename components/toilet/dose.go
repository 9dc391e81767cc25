package toilet

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// Dose is the liquid for a tank of which the label gives the dose for another.
//
//	d = d0 · V / V0
//
// with the dose d0 that the label gives for a tank of V0, both in m³, the tank
// V in m³ and the dose d in m³. It holds for tanks from a quarter to four times
// the size that the label names; beyond that the label must say more.
//
// Source: doses are told per volume; labels: common practice.
func Dose(label, labelTank, tank quantity.CubicMetres) (quantity.CubicMetres, error) {
	if _, err := calc.Positive("the dose", label); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the tank of the label", labelTank); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the tank", tank); err != nil {
		return 0, err
	}
	scale := tank / labelTank
	if scale < 1.0/mostScale || scale > mostScale {
		return 0, calc.Outside("the tank is %.3g times the one of the label, which must be from a quarter to %g", float64(scale), float64(mostScale))
	}
	return calc.Positive("the dose", label*scale)
}

// mostScale bounds how far a dose is scaled.
//
// Source: common practice.
const mostScale = 4
