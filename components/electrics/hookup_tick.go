package electrics

import (
	"strconv"

	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// belowLimit is how far below a limit a sum of watts stays that does not reach
// it: the smallest step in which ticked rows are added up.
const belowLimit quantity.Watts = 0.001

// tick gives the verdicts as limits of the power in watts, one limit a pitch.
func (s supply) tick() *table.Tick {
	t := &table.Tick{Column: "power"}
	bands, _ := s.standard.bands()
	for _, rated := range s.pitches {
		limit := table.Limit{Word: "pitch-" + strconv.FormatFloat(float64(rated), 'f', -1, 64)}
		verdict := StaysOn
		for _, b := range bands {
			upto := quantity.Watts(b.from * float64(rated) * float64(s.voltage))
			if b.reached {
				upto -= belowLimit
			}
			limit.Steps = append(limit.Steps, table.Step{Upto: quantity.Of(upto), Word: verdictWords[verdict], Tone: verdict.tone()})
			verdict = b.verdict
		}
		limit.Steps = append(limit.Steps, table.Step{Word: verdictWords[verdict], Tone: verdict.tone()})
		t.Limits = append(t.Limits, limit)
	}
	return t
}
