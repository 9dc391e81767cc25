package gas

import (
	"maps"
	"slices"
	"strings"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// fillLimit is the part of a tank's volume at which its stop valve ends the
// filling.
//
// Source: UN ECE R67 and EN 1949.
const fillLimit = 0.80

// liquidDensity is the density in kg/m³ of the liquid at 20 °C in balance with
// its vapour. A mixture of unknown parts counts as propane, the lighter, so
// that the gas never seems to last longer than it does.
//
// Source: reference equations of state; propane: Lemmon, McLinden and Wagner,
// J. Chem. Eng. Data 54 (2009) 3141; n-butane: Buecker and Wagner, J. Phys.
// Chem. Ref. Data 35 (2006) 929.
var liquidDensity = map[string]float64{
	"propane": 500.1,
	"butane":  578.6,
	"mixture": 500.1,
}

// TankMass is the mass of gas in a full tank that is filled by volume.
//
//	m = 0.80 · V · ρ
//
// with the volume V of the whole tank in m³, the density ρ of the liquid in
// kg/m³ and the mass m in kg. The small mass of the vapour above the liquid is
// left out. It holds for liquid near 20 °C: at 40 °C the same filling of propane
// weighs 7 % less, at 0 °C 6 % more. The gas is one of propane, butane and
// mixture; another is refused.
//
// Source: fillLimit and liquidDensity.
func TankMass(capacity quantity.CubicMetres, gas string) (quantity.Kilograms, error) {
	density, known := liquidDensity[gas]
	if !known {
		return 0, calc.Outside("the gas is %q and not one of %s", gas, strings.Join(slices.Sorted(maps.Keys(liquidDensity)), ", "))
	}
	if _, err := calc.Positive("the size of the tank", capacity); err != nil {
		return 0, err
	}
	return calc.Positive("the mass of gas", quantity.Kilograms(fillLimit*float64(capacity)*density))
}
