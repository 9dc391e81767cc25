package gas

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// Duration is how long a mass of gas lasts at a steady rate of use.
//
//	t = m / r
//
// with the mass m in kg, the rate r in kg/s and the time t in s. It holds for
// any mass and rate above zero, as long as all of the gas can be drawn at that
// rate: it knows nothing of a cylinder that is too cold to give its gas. The
// rates of appliances in use at once add up.
//
// Source: conservation of mass.
func Duration(store quantity.Kilograms, rate quantity.KilogramsPerSecond) (quantity.Seconds, error) {
	if _, err := calc.Positive("the mass of gas", store); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the rate of use", rate); err != nil {
		return 0, err
	}
	return calc.Positive("the duration", quantity.Seconds(float64(store)/float64(rate)))
}
