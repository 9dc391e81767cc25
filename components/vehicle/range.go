package vehicle

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// consumptionWay is the way that consumption is stated for, 100 km.
const consumptionWay quantity.Metres = 100e3

// keptBack is the part of a tank or battery that is not reckoned with: gauges
// are not that exact, and heaters that use the van's fuel stop before the end.
//
// Source: common practice.
const keptBack quantity.Fraction = 0.1

// Range is how far a van goes on what its tank or drive battery holds, down to
// the part that is kept back.
//
//	s = (level - 0.1) · C / c · 100 km
//
// with the level as a part of the whole, the capacity C and the consumption c
// for 100 km in the same unit, both fuel or both energy. It holds for levels
// above 0.1 and up to 1, and is as good as the consumption: load, hills, wind
// and speed move it by a fifth and more.
//
// Source: definition of the consumption.
func Range[T quantity.CubicMetres | quantity.Joules](level quantity.Fraction, holds, uses T) (quantity.Metres, error) {
	if !(level > keptBack && level <= 1) {
		return 0, calc.Outside("the level is %g, which must lie above %g and not above 1", float64(level), float64(keptBack))
	}
	if _, err := calc.Positive("what the tank or battery holds", holds); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the consumption", uses); err != nil {
		return 0, err
	}
	return calc.Positive("the range", quantity.Metres(float64(level-keptBack)*float64(holds)/float64(uses))*consumptionWay)
}
