package electrics

import (
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// Verdict is what a hirer is told about a load on a pitch.
type Verdict uint8

// The verdicts, best first.
const (
	StaysOn Verdict = iota
	PitchMayTrip
	Trips
)

// pitches are the ratings of the columns of the table.
//
// Source: motorhome and caravan magazine articles on hook-up supplies.
var pitches = [...]quantity.Amperes{6, 10, 16}

// verdicts is one verdict a pitch, in the order of pitches.
type verdicts [len(pitches)]Verdict

// VerdictOn says what a hirer is told about a steady current on a pitch.
//
//	I ≤ In             stays on
//	In < I < 1.45 In   may trip
//	1.45 In ≤ I        trips
//
// It is more careful than the standard, which has a breaker hold 1.13 In: the
// voltage may be 10 % higher than nominal and the load with it, the post may
// stand in the sun, and some pitches limit the current in another way.
// Validity as for BreakerAt.
//
// Source: BreakerAt; stopping at the rated current is common practice.
func VerdictOn(current, rated quantity.Amperes) (Verdict, error) {
	trip, err := BreakerAt(current, rated)
	switch {
	case err != nil:
		return 0, err
	case trip >= TripsWithinHour:
		return Trips, nil
	case current > rated*(1+noise):
		return PitchMayTrip, nil
	}
	return StaysOn, nil
}

// verdictsOn gives the verdict on every pitch.
func verdictsOn(current quantity.Amperes) (verdicts, error) {
	var all verdicts
	for i, rated := range pitches {
		v, err := VerdictOn(current, rated)
		if err != nil {
			return verdicts{}, err
		}
		all[i] = v
	}
	return all, nil
}

// cell says a verdict in a word, and the same in a tone.
func (v Verdict) cell() table.Cell {
	switch v {
	case StaysOn:
		return table.Cell{Word: "stays-on", Tone: table.Good}
	case PitchMayTrip:
		return table.Cell{Word: "may-trip", Tone: table.Doubtful}
	}
	return table.Cell{Word: "trips", Tone: table.Bad}
}
