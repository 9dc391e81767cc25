package electrics

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// Trip is what a circuit breaker does at a steady current.
type Trip uint8

// What a breaker does, mildest first.
const (
	Holds             Trip = iota // for an hour at least
	MayTrip                       // nobody can say
	TripsWithinHour               // one hour at most
	TripsWithinMinute             // one minute at most
)

// The multiples of the rated current at which the standard says what a breaker
// of type B, C or D does.
//
// Source: IEC 60898-1, table 7.
const (
	holdsAt       = 1.13
	tripsInHour   = 1.45
	tripsInMinute = 2.55
)

// mostRated is the highest rated current for which the times above hold: over
// 32 A the last one is two minutes.
const mostRated quantity.Amperes = 32

// noise is the part of a current that may come from adding and dividing, so
// that 1380 W on 6 A is not taken for more than 6 A.
const noise = 1e-9

// BreakerAt says what a circuit breaker does at a steady current, by the
// multiple of its rated current:
//
//	I / In ≤ 1.13            holds for an hour
//	1.13 < I / In < 1.45     may trip
//	1.45 ≤ I / In < 2.55     trips within an hour
//	2.55 ≤ I / In            trips within a minute
//
// with both currents in A. It holds for breakers of type B, C and D rated up to
// 32 A, from cold, one by itself in air of 30 °C; a warm one trips sooner.
// Other ratings are refused.
//
// Source: IEC 60898-1, table 7.
func BreakerAt(current, rated quantity.Amperes) (Trip, error) {
	if _, err := calc.Positive("the current", current); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the rated current", rated); err != nil {
		return 0, err
	}
	if rated > mostRated {
		return 0, calc.Outside("the rated current is %g A, over %g A", rated, mostRated)
	}
	switch multiple := float64(current) / float64(rated); {
	case multiple <= holdsAt*(1+noise):
		return Holds, nil
	case multiple < tripsInHour*(1-noise):
		return MayTrip, nil
	case multiple < tripsInMinute*(1-noise):
		return TripsWithinHour, nil
	}
	return TripsWithinMinute, nil
}
