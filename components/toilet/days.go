package toilet

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

const (
	litre quantity.CubicMetres = 0.001
	day   quantity.Seconds     = 86400
)

// What one person adds in a day.
//
// Source: 0.8 to 2 litres of urine, page of a boater (2016), which also flushes
// ten times a day for two people with 0.2 litres each. 1.5 litres and five
// flushes give the three to five days that two pages of the trade print for a
// cassette. A litre for each flush of a toilet with blades: from memory.
const (
	urine      = 1.5 * litre
	flushes    = 5
	smallFlush = 0.2 * litre // cassette and portable toilet
	largeFlush = 1 * litre   // toilet with blades
)

// firstWater goes in with the chemical, and into a fixed tank to cover its
// bottom.
//
// Source: magazine of an Australian motorhome club, "a couple of litres".
const firstWater = 2 * litre

// FillTime is how long a tank takes to fill to a level.
//
//	t = (p · V - V0) / (n · q) · 1 day
//
// with the part p of the volume V in m³, the water V0 in m³ that is in it from
// the start, the people n, what each adds in a day q in m³ and the time t in s.
// It holds for p above 0 and at most 1 and for one person or more; a tank that
// the first water alone fills to that level is refused.
//
// Accuracy: that of q; a person adds 0.8 to 2 litres a day without the flush.
//
// Source: conservation of volume.
func FillTime(tank quantity.CubicMetres, part quantity.Fraction, first quantity.CubicMetres, people int, each quantity.CubicMetres) (quantity.Seconds, error) {
	if _, err := calc.Positive("the volume of the tank", tank); err != nil {
		return 0, err
	}
	if !(part > 0 && part <= 1) {
		return 0, calc.Outside("a level of %.3g, which must be above 0 and at most 1", float64(part))
	}
	if !(first >= 0) {
		return 0, calc.Outside("%.3g m³ at the start, which must not be below 0", float64(first))
	}
	room, err := calc.Positive("the room in the tank", tank*quantity.CubicMetres(part)-first)
	if err != nil {
		return 0, err
	}
	if _, err := calc.Positive("what a person adds", each); err != nil {
		return 0, err
	}
	if people < 1 {
		return 0, calc.Outside("%d people", people)
	}
	return calc.Positive("the time", quantity.Seconds(float64(room)/(float64(people)*float64(each))*float64(day)))
}
