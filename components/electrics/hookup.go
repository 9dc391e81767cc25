package electrics

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// pitchVoltage is the nominal voltage of a pitch. It may lie 10 % above or
// below.
//
// Source: IEC 60038.
const pitchVoltage quantity.Volts = 230

// Current is what a load takes from a pitch at nominal voltage.
//
//	I = P / U
//
// with the power P in W, U = 230 V and the current I in A. It holds for loads
// with a power factor of 1, that is for all that heats by a wire. A motor or a
// charger takes more. An element takes in proportion to the voltage: at 253 V a
// tenth more.
//
// Source: definition of power; IEC 60038 for the voltage.
func Current(power quantity.Watts) (quantity.Amperes, error) {
	if _, err := calc.Positive("the power", power); err != nil {
		return 0, err
	}
	return calc.Positive("the current", quantity.Amperes(float64(power)/float64(pitchVoltage)))
}
