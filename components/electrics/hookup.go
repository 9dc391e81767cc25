package electrics

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// Current is what a load takes from a supply at nominal voltage.
//
//	I = P / U
//
// with the power P in W, the voltage U in V and the current I in A. It holds for
// direct current and for loads with a power factor of 1, that is for all that
// heats by a wire. A motor or a charger takes more from the mains. An element
// takes in proportion to the voltage: at 253 V a tenth more than at 230 V.
//
// Source: definition of power.
func Current(power quantity.Watts, voltage quantity.Volts) (quantity.Amperes, error) {
	if _, err := calc.Positive("the power", power); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the voltage", voltage); err != nil {
		return 0, err
	}
	return calc.Positive("the current", quantity.Amperes(float64(power)/float64(voltage)))
}
