package electrics

import (
	"errors"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// errCovered says that a battery lasts without end: the sun gives as much as is
// used.
var errCovered = errors.New("the sun covers it")

// systemFactor is the part of a panel's charge that arrives in the battery,
// after heat, dirt, wiring and the regulator: the low end of what is common.
//
// Source: common practice (0.7 to 0.8).
const systemFactor quantity.Fraction = 0.7

// sunYear is the mean of full sun a day on flat ground, in hours, by month,
// January first. An hour of full sun is a kilowatt-hour on a square metre.
type sunYear [12]float64

// The places that stand for three latitudes.
//
// Source: monthly means of global horizontal irradiance. Netherlands coast
// (52.3° north): IWEC typical year. Northern Italy (45.0° north): PVGIS typical
// year 2005 to 2023, (c) European Union. North Carolina (36.1° north): NREL TMY3
// 723170.
var (
	north52 = sunYear{0.64, 1.36, 2.48, 3.43, 4.81, 4.93, 4.93, 4.07, 2.72, 1.55, 0.82, 0.46}
	north45 = sunYear{1.54, 2.39, 3.82, 4.05, 4.83, 7.21, 6.62, 5.76, 4.52, 2.87, 2.02, 1.49}
	north36 = sunYear{2.41, 3.06, 4.25, 5.41, 5.64, 6.25, 6.08, 5.61, 4.43, 3.59, 2.43, 2.24}
)

// SunYield is what a panel that lies flat puts into the battery in a day.
//
//	E = P h f
//
// with the power P of the panel in full sun in W, the hours h of full sun in
// that day (here in seconds) and the system factor f. It holds as a mean of many
// days, without any shade, for a battery that is not full.
//
// Source: common practice.
func SunYield(peak quantity.Watts, fullSun quantity.Seconds, factor quantity.Fraction) (quantity.Joules, error) {
	if _, err := calc.Positive("the power of the panel", peak); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the full sun of a day", fullSun); err != nil {
		return 0, err
	}
	if fullSun > day {
		return 0, calc.Outside("the full sun of a day is longer than a day")
	}
	if !(factor > 0 && factor <= 1) {
		return 0, calc.Outside("the system factor is %g, not above 0 and up to 1", float64(factor))
	}
	return calc.Positive("the yield", quantity.Joules(float64(peak)*float64(fullSun)*float64(factor)))
}

// Charge is the charge that an energy is at a voltage.
//
//	Q = E / U
//
// with the energy E in J, the voltage U in V and the charge Q in coulombs.
//
// Source: definition of voltage.
func Charge(energy quantity.Joules, voltage quantity.Volts) (quantity.Coulombs, error) {
	if _, err := calc.Positive("the energy", energy); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the voltage", voltage); err != nil {
		return 0, err
	}
	return calc.Positive("the charge", quantity.Coulombs(float64(energy)/float64(voltage)))
}
