package electrics

import (
	"fmt"

	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// supply is what the pitches of a region give.
type supply struct {
	option   string // of the fact with role mains-supply
	voltage  quantity.Volts
	standard Standard
	pitches  []quantity.Amperes // the columns of a table of loads
	leads    []quantity.Amperes // the rows of a table of the lead
}

// supplies lists the regions, the one that a van is for where nothing is stated
// first. The voltages are nominal and may lie 10 % (120 V: 5 %) above or below.
//
// Source: IEC 60038 for 230 V, ANSI C84.1 for 120 V (from memory); motorhome and
// caravan magazine articles on hook-up supplies for the ratings, 13 A being the
// household plug of the United Kingdom (from memory); pages on North American
// outlets for 15, 20 and 30 A.
var supplies = []supply{
	{"230-v", 230, IEC60898, []quantity.Amperes{6, 10, 13, 16}, []quantity.Amperes{6, 10, 16}},
	{"120-v", 120, UL489, []quantity.Amperes{15, 20, 30}, []quantity.Amperes{15, 20, 30}},
}

// supplyRole marks the fact that says which pitches a van is for.
const supplyRole = "mains-supply"

// supplyOf is the supply that a van is for.
func supplyOf(in table.Input) (supply, error) {
	stated := in.WithRole(supplyRole)
	if len(stated) == 0 {
		return supplies[0], nil
	}
	for _, s := range supplies {
		if s.option == stated[0].Fact.Option {
			return s, nil
		}
	}
	return supply{}, fmt.Errorf("%s is %q, of which nothing is known", stated[0].Fact.Name, stated[0].Fact.Option)
}

// verdicts gives one verdict a pitch, in the order of pitches.
func (s supply) verdicts(current quantity.Amperes) ([]Verdict, error) {
	var all []Verdict
	for _, rated := range s.pitches {
		v, err := s.standard.Verdict(current, rated)
		if err != nil {
			return nil, err
		}
		all = append(all, v)
	}
	return all, nil
}

// verdictWords are the keys of the words, by verdict.
var verdictWords = [...]string{
	StaysOn: "stays-on", MayTripAfterHour: "may-trip-after-hour", MayTripWithinHour: "may-trip-within-hour",
	TripsWithinHour: "trips-within-hour", TripsWithinMinutes: "trips-within-minutes", TripsWithinMinute: "trips-within-minute",
	TripsWithinMinuteNow: "trips-within-minute-now", TripsAtOnce: "trips-at-once",
}

// tone is good for what stays on, doubtful for what may trip and bad for what
// does.
func (v Verdict) tone() table.Tone {
	switch {
	case v == StaysOn:
		return table.Good
	case v < TripsWithinHour:
		return table.Doubtful
	}
	return table.Bad
}

// cell says a verdict in a word, and the same in a tone.
func (v Verdict) cell() table.Cell { return table.Cell{Word: verdictWords[v], Tone: v.tone()} }
