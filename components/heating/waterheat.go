package heating

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// Water between freezing and boiling under the pressure of the air. From 10 °C
// to 100 °C the product of the two is at most 0.2 % above the one used here and
// at most 4 % below; at 0 °C it is about 0.7 % above (from memory).
//
// Source: a published property list of water, whose rounded value is in general use;
// one litre taken as one kilogram, where the list gives 998 kg/m³ at 20 °C.
const (
	heatCapacity = 4186.0 // J/(kg K)
	waterDensity = 1000.0 // kg/m³

	freezing quantity.Kelvins = 273.15
	boiling  quantity.Kelvins = 373.15
)

// HeatEnergy is the heat that water takes up on the way from one temperature
// to a higher one.
//
//	E = ρ · V · c · (T2 - T1)
//
// with the volume V in m³, the temperatures in K, ρ = 1000 kg/m³,
// c = 4186 J/(kg K) and the energy E in J. It holds for liquid water, 0 °C to
// 100 °C, that gets warmer; anything else is refused.
//
// Source: definition of heat capacity; the constants above.
func HeatEnergy(volume quantity.CubicMetres, from, to quantity.Kelvins) (quantity.Joules, error) {
	if _, err := calc.Positive("the volume of water", volume); err != nil {
		return 0, err
	}
	if !(from >= freezing && to <= boiling && from < to) { // also refuses what is not a number
		return 0, calc.Outside("water from %.4g K to %.4g K is not liquid all the way, or does not get warmer", float64(from), float64(to))
	}
	return calc.Positive("the heat", quantity.Joules(waterDensity*float64(volume)*heatCapacity*float64(to-from)))
}

// HeatTime is the time in which a steady power heats water, if nothing is lost
// on the way: the least it can take.
//
//	t = E / P
//
// with the energy E of HeatEnergy in J, the power P into the water in W and the
// time t in s. Powers at once add up. Validity as for HeatEnergy.
//
// Source: definition of power.
func HeatTime(volume quantity.CubicMetres, from, to quantity.Kelvins, power quantity.Watts) (quantity.Seconds, error) {
	heat, err := HeatEnergy(volume, from, to)
	if err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the power", power); err != nil {
		return 0, err
	}
	return calc.Positive("the time", quantity.Seconds(float64(heat)/float64(power)))
}
