package water

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// density is one kilogram a litre. Water is heaviest at 4 °C, with less than a
// hundred-thousandth below that, so no water is heavier than reckoned here.
//
// Source: a published property list of water, 998 kg/m³ at 20 °C.
const density = 1000.0 // kg/m³

// Mass is what water weighs.
//
//	m = ρ · V
//
// with the volume V in m³, ρ = 1000 kg/m³ and the mass m in kg. It holds for
// liquid water.
//
// Accuracy: never too little; 0.2 % too much at 20 °C, 2 % at 60 °C.
//
// Source: definition of density.
func Mass(volume quantity.CubicMetres) (quantity.Kilograms, error) {
	if _, err := calc.Positive("the volume of water", volume); err != nil {
		return 0, err
	}
	return calc.Positive("the mass", quantity.Kilograms(density*float64(volume)))
}
