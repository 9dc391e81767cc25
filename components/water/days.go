package water

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

const (
	litre quantity.CubicMetres = 0.001
	day   quantity.Seconds     = 86400
)

// What one person uses in a day.
//
// Sources: the Sphere Project (2011) gives 7.5 to 15 litres as the basic need,
// with washing and cooking, and its upper end is the usual use here; the least
// for washing and dishes with care, and a shower of 15 litres, which is three
// minutes at 5 L/min, are common practice. Houses are reckoned with 20 litres
// at the very least and 50 to 100 for good hygiene, a list after the WHO.
const (
	sparing = 10 * litre
	usual   = 15 * litre
	showers = usual + 15*litre
)

// Lasts is how long a tank lasts that so many people empty, or fill, each at a
// steady use.
//
//	t = V / (n · q) · 1 day
//
// with the volume V in m³, the people n, what each uses in a day q in m³ and the
// time t in s. It holds for one person or more.
//
// Source: conservation of volume.
func Lasts(tank quantity.CubicMetres, people int, each quantity.CubicMetres) (quantity.Seconds, error) {
	if _, err := calc.Positive("the volume of the tank", tank); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("what a person uses", each); err != nil {
		return 0, err
	}
	if people < 1 {
		return 0, calc.Outside("%d people", people)
	}
	return calc.Positive("the time", quantity.Seconds(float64(tank)/(float64(people)*float64(each))*float64(day)))
}
