package vehicle

import (
	"math"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// The standard atmosphere below 11 km: pressure and temperature at sea level,
// what the temperature loses with each metre, and the exponent g/(R·L).
//
// Source: ISO 2533:1975 (from memory).
const (
	seaLevelPressure    quantity.Pascals = 101325
	seaLevelTemperature quantity.Kelvins = 288.15
	lapse                                = 0.0065 // K/m
	pressureExponent                     = 5.25588
)

// highestRoad bounds the heights asked for: no road in a hire van's reach is
// higher.
const highestRoad quantity.Metres = 5000

// AirPressure is the usual pressure of the outside air at a height above the
// sea.
//
//	p = 101325 · (1 - 0.0065·h / 288.15)^5.25588
//
// with the height h in m and the pressure p in Pa. It holds from the sea to
// 5000 m; the weather moves it by up to 4 % either way.
//
// Source: ISO 2533:1975, the standard atmosphere.
func AirPressure(height quantity.Metres) (quantity.Pascals, error) {
	if !(height >= 0 && height <= highestRoad) {
		return 0, calc.Outside("the height is %g m, which must lie between 0 and %g m", float64(height), float64(highestRoad))
	}
	part := math.Pow(1-lapse*float64(height)/float64(seaLevelTemperature), pressureExponent)
	return seaLevelPressure * quantity.Pascals(part), nil
}

// Air is the state of a tyre and its surroundings: the temperature of the air
// in the tyre and the pressure of the air outside.
type Air struct {
	Inside  quantity.Kelvins
	Outside quantity.Pascals
}

// What the gas law of a tyre is used for here: tyres of vans on the road.
const (
	coldestTyre     quantity.Kelvins = 223.15 // -50 °C
	hottestTyre     quantity.Kelvins = 373.15 // 100 °C
	hardestTyre     quantity.Pascals = 1e6    // 10 bar
	thinnestOutside quantity.Pascals = 50e3
	densestOutside  quantity.Pascals = 110e3
)

func (a Air) check() error {
	if !(a.Inside >= coldestTyre && a.Inside <= hottestTyre) {
		return calc.Outside("the air in the tyre is at %g K, which must lie between %g and %g K", float64(a.Inside), float64(coldestTyre), float64(hottestTyre))
	}
	if !(a.Outside >= thinnestOutside && a.Outside <= densestOutside) {
		return calc.Outside("the pressure outside is %g Pa, which must lie between %g and %g Pa", float64(a.Outside), float64(thinnestOutside), float64(densestOutside))
	}
	return nil
}

// GaugeReading is what a gauge shows on a tyre that was set to a pressure in
// one state of the air and is now in another, with nothing lost.
//
//	p2 = (p1 + b1) · T2 / T1 - b2
//
// with the gauge pressures p and the outside pressures b in Pa and the
// temperatures T in K. It holds for dry air in a tyre that keeps its volume, up
// to 10 bar and between -50 and 100 °C; dry air then departs from the law by
// less than 1 %. A tyre stretches a little, so that it shows slightly less.
// Readings that would be nothing or less are refused.
//
// Source: the ideal gas law, as in OpenStax College Physics, section 13.3.
func GaugeReading(set, now Air, pressure quantity.Pascals) (quantity.Pascals, error) {
	if _, err := calc.Positive("the pressure of the tyre", pressure); err != nil {
		return 0, err
	}
	if pressure > hardestTyre {
		return 0, calc.Outside("the pressure of the tyre is %g Pa, which must not be above %g Pa", float64(pressure), float64(hardestTyre))
	}
	for _, air := range []Air{set, now} {
		if err := air.check(); err != nil {
			return 0, err
		}
	}
	warmer := float64(now.Inside) / float64(set.Inside)
	return calc.Positive("the reading", (pressure+set.Outside)*quantity.Pascals(warmer)-now.Outside)
}
