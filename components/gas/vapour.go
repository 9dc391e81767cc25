package gas

import (
	"math"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// Atmosphere is the standard pressure of the air at sea level; gauges show
// what is above it. Higher up the air presses less and the gas comes a little
// more easily, so sea level is the safe side.
//
// Source: the standard atmosphere, 101 325 Pa by definition.
const Atmosphere quantity.Pascals = 101_325

// substance is a pure gas with the constants of its vapour pressure.
type substance struct {
	name       string
	molar      float64 // kg/mol
	critical   quantity.Kelvins
	pressure   quantity.Pascals // at the critical temperature
	a, b, c, d float64
	low, high  quantity.Kelvins // where the constants have been checked
}

// The constants of both gases. They are published without a range; the one
// here reaches as far as they have been compared with independent values: down
// to the boiling point of propane and to 225 K for butane, up to 40 °C.
//
// Source: VDI Heat Atlas, constants of the Wagner equation; molar masses: ISO
// 6976:2016.
var (
	propane = substance{
		name: "propane", molar: 0.04409562, critical: 369.82, pressure: 4_248_000,
		a: -6.7148, b: 1.38388, c: -1.30695, d: -2.56827, low: 231.04, high: 313.15,
	}
	butane = substance{
		name: "butane", molar: 0.0581222, critical: 425.13, pressure: 3_796_000,
		a: -7.08562, b: 1.79335, c: -2.00003, d: -2.31975, low: 225, high: 313.15,
	}
)

// vapourPressure is the absolute pressure of a pure gas above its liquid.
//
//	ln(p/pc) = (a·x + b·x^1.5 + c·x^2.5 + d·x^5) / Tr,  Tr = T/Tc,  x = 1 - Tr
//
// with the temperature T and the critical temperature Tc in K, the pressure p
// and the critical pressure pc in Pa. It is refused outside low and high of
// the substance.
//
// Accuracy: within 0.1 % of the reference equations of state from -40 °C to
// 40 °C (propane: Lemmon, McLinden and Wagner 2009; n-butane: Buecker and
// Wagner 2006). Gas of the trade holds traces of others and may differ more.
//
// Source: Wagner equation in its 2.5/5 form, VDI Heat Atlas.
func (s substance) vapourPressure(t quantity.Kelvins) (quantity.Pascals, error) {
	if !(t >= s.low && t <= s.high) { // also refuses what is not a number
		return 0, calc.Outside("%s at %.5g K: its vapour pressure is known from %g K to %g K", s.name, float64(t), float64(s.low), float64(s.high))
	}
	reduced := float64(t / s.critical)
	x := 1 - reduced
	power := (s.a*x + s.b*math.Pow(x, 1.5) + s.c*math.Pow(x, 2.5) + s.d*math.Pow(x, 5)) / reduced
	return calc.Positive("the vapour pressure", s.pressure*quantity.Pascals(math.Exp(power)))
}

// VapourPressure is the absolute pressure in a cylinder of propane and
// n-butane at the temperature of its liquid, whatever its level.
//
//	p = x·pp + (1 - x)·pb,  x = (w/Mp) / (w/Mp + (1 - w)/Mb)
//
// with the part w of propane in the mass of the liquid, 0 for butane and 1 for
// propane; its part x of the molecules; the pressures pp and pb of the pure
// gases in Pa; and the molar masses Mp and Mb. It holds from 0 to 1 and from
// the lowest to the highest temperature at which the constants of every gas
// in it hold: -42 °C with propane, -48 °C for butane alone, up to 40 °C.
//
// Accuracy: as vapourPressure for a pure gas; some per cent for a mixture, as
// the two are near to an ideal solution (from memory).
//
// Source: Raoult's law; vapourPressure.
func VapourPressure(propanePart quantity.Fraction, t quantity.Kelvins) (quantity.Pascals, error) {
	w := float64(propanePart)
	if !(w >= 0 && w <= 1) {
		return 0, calc.Outside("the part of propane is %g, which must be from 0 to 1", w)
	}
	if w == 0 {
		return butane.vapourPressure(t)
	}
	if w == 1 {
		return propane.vapourPressure(t)
	}
	light, err := propane.vapourPressure(t)
	if err != nil {
		return 0, err
	}
	heavy, err := butane.vapourPressure(t)
	if err != nil {
		return 0, err
	}
	x := w / propane.molar / (w/propane.molar + (1-w)/butane.molar)
	return calc.Positive("the vapour pressure", quantity.Pascals(x)*light+quantity.Pascals(1-x)*heavy)
}

// CoolLimit is the lowest temperature of the liquid at which its pressure
// above that of the air is still as high as needed: colder, and the cylinder
// stops feeding.
//
//	p(T) - 101 325 Pa = need
//
// solved for T in K by halving the range of VapourPressure until it is no
// wider than a thousandth of a kelvin, and giving its warmer end. A need that
// is reached nowhere in that range, or everywhere, is refused.
//
// Source: VapourPressure, which rises with temperature.
func CoolLimit(propanePart quantity.Fraction, need quantity.Pascals) (quantity.Kelvins, error) {
	if _, err := calc.Positive("the pressure needed", need); err != nil {
		return 0, err
	}
	low, high := propane.low, propane.high
	if propanePart == 0 {
		low, high = butane.low, butane.high
	}
	least, err := VapourPressure(propanePart, low)
	if err != nil {
		return 0, err
	}
	most, err := VapourPressure(propanePart, high)
	if err != nil {
		return 0, err
	}
	if least-Atmosphere >= need || most-Atmosphere < need {
		return 0, calc.Outside("a pressure of %.4g Pa above the air is not met between %g K and %g K", float64(need), float64(low), float64(high))
	}
	for high-low > 0.001 {
		middle := (low + high) / 2
		p, err := VapourPressure(propanePart, middle)
		if err != nil {
			return 0, err
		}
		if p-Atmosphere >= need {
			high = middle
		} else {
			low = middle
		}
	}
	return high, nil
}
