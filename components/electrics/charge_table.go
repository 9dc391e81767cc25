package electrics

import (
	"fmt"

	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// ChargeStateTable says what the voltage of the leisure battery at rest means.
//
// Columns: state, from, below, do. A van without a leisure battery has no rows.
func ChargeStateTable(in table.Input) (table.Result, error) {
	stated := in.WithRole("battery-capacity")
	if len(stated) == 0 {
		return table.Result{}, nil
	}
	if len(stated) > 1 {
		return table.Result{}, fmt.Errorf("the van states %d leisure batteries, and a reading belongs to one", len(stated))
	}
	battery := stated[0].Fitted
	chemistry, _ := battery.Fact("chemistry")
	states, err := RestStates(chemistry.Option)
	if err != nil {
		use := table.Use{Fitted: battery.Name, Fact: "chemistry"}
		return table.Result{Lacks: []table.Lack{{Use: use, Reason: err.Error()}}}, nil
	}
	var result table.Result
	for i, s := range states {
		row := table.Row{{Word: s.Name}, {}, {}, advice[s.Name]}
		if s.From > 0 {
			row[1].Quantity = quantity.Of(s.From)
		}
		if i > 0 {
			row[2].Quantity = quantity.Of(states[i-1].From)
		}
		result.Rows = append(result.Rows, row)
	}
	return result, nil
}

// advice is what to do about a state.
var advice = map[string]table.Cell{
	"full":           {Word: "fine", Tone: table.Good},
	"nearly-full":    {Word: "fine", Tone: table.Good},
	"three-quarters": {Word: "fine", Tone: table.Good},
	"cannot-tell":    {Word: "read-percent", Tone: table.Doubtful},
	"half":           {Word: "charge-soon", Tone: table.Doubtful},
	"quarter":        {Word: "charge-now", Tone: table.Bad},
	"nearly-empty":   {Word: "charge-now", Tone: table.Bad},
	"empty":          {Word: "charge-now", Tone: table.Bad},
}
