package electrics

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// Verdict is what a circuit breaker does at a steady current, and how soon.
type Verdict uint8

// The verdicts, mildest first.
const (
	StaysOn              Verdict = iota
	MayTripAfterHour             // not within the hour, perhaps later
	MayTripWithinHour            // nobody can say
	TripsWithinHour              // one hour at most
	TripsWithinMinutes           // two minutes at most
	TripsWithinMinute            // one minute at most
	TripsWithinMinuteNow         // one minute at most, perhaps in the blink of an eye
	TripsAtOnce                  // within a tenth of a second
)

// Standard is the standard that the breakers of a pitch are made to.
type Standard uint8

// The standards of the regions that the library knows.
const (
	IEC60898 Standard = iota // Europe, Australia, most of the world
	UL489                    // North America
)

// band is where a verdict begins, as a multiple of the rated current.
type band struct {
	from    float64
	reached bool // at the multiple itself, not only above it
	verdict Verdict
}

// iecBands holds for breakers of type B, C and D up to 32 A. Type B may go at
// once above 3 times the rated current and type C must at 10 times; type D,
// which is rare on pitches, goes at once later still. That up to the rated
// current all is well, and not up to 1.13 times it, is on the careful side: the
// voltage may be 10 % higher than nominal and the load with it.
//
// Source: IEC 60898-1, table 7; stopping at the rated current is common
// practice.
var iecBands = []band{
	{1, false, MayTripAfterHour},
	{1.13, false, MayTripWithinHour},
	{1.45, true, TripsWithinHour},
	{2.55, true, TripsWithinMinute},
	{3, false, TripsWithinMinuteNow},
	{10, true, TripsAtOnce},
}

// ulBands holds for breakers up to 30 A. What is on for three hours or more may
// take four fifths of the rated current. The standard says nothing of when a
// breaker must go at once.
//
// Source: UL 489 (holds 100 %, trips within an hour at 135 % and within two
// minutes at 200 %) and NEC article 210 (80 %), both from memory.
var ulBands = []band{
	{0.8, false, MayTripAfterHour},
	{1, false, MayTripWithinHour},
	{1.35, true, TripsWithinHour},
	{2, true, TripsWithinMinutes},
}

// The highest rated currents for which the bands hold: above them a breaker may
// take longer.
const (
	mostIEC quantity.Amperes = 32
	mostUL  quantity.Amperes = 30
)

func (s Standard) bands() ([]band, quantity.Amperes) {
	if s == UL489 {
		return ulBands, mostUL
	}
	return iecBands, mostIEC
}

// noise is the part of a current that may come from adding and dividing, so
// that 1380 W on 6 A is not taken for more than 6 A.
const noise = 1e-9

// Verdict says what a circuit breaker does at a steady current, by the multiple
// of its rated current. By IEC 60898-1:
//
//	I / In ≤ 1              stays on
//	1    < I / In ≤ 1.13    may trip, but not within the hour
//	1.13 < I / In < 1.45    may trip within the hour
//	1.45 ≤ I / In < 2.55    trips within the hour
//	2.55 ≤ I / In ≤ 3       trips within a minute
//	3    < I / In < 10      trips within a minute, perhaps at once
//	10   ≤ I / In           trips at once
//
// and by UL 489 in the same way with 0.8, 1, 1.35 and 2. Both currents are in
// A. It holds up to 32 A (UL 489: 30 A), from cold, for one breaker by itself in
// air of 30 °C; a warm one trips sooner. Other ratings are refused.
//
// Source: see the bands.
func (s Standard) Verdict(current, rated quantity.Amperes) (Verdict, error) {
	if _, err := calc.Positive("the current", current); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the rated current", rated); err != nil {
		return 0, err
	}
	bands, most := s.bands()
	if rated > most {
		return 0, calc.Outside("the rated current is %g A, over %g A", float64(rated), float64(most))
	}
	verdict, multiple := StaysOn, float64(current)/float64(rated)
	for _, b := range bands {
		if b.holds(multiple) {
			verdict = b.verdict
		}
	}
	return verdict, nil
}

func (b band) holds(multiple float64) bool {
	if b.reached {
		return multiple >= b.from*(1-noise)
	}
	return multiple > b.from*(1+noise)
}
