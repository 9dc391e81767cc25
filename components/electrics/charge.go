package electrics

import (
	"fmt"

	"doorpocket/components/quantity"
)

// State is what a voltage at rest says of a battery: nothing charges it, nothing
// draws on it, and it has stood so for hours.
type State struct {
	Name string
	From quantity.Volts // zero: there is no lower end
}

// RestStates lists what the voltage of a rested 12-volt battery says, the
// fullest first. Each begins at its voltage and ends where the one before
// begins. A battery of which the voltage says nothing in the middle, as with
// lithium iron phosphate from 12.9 V to 13.3 V, has the state "cannot-tell"
// there; from a tenth of a volt above, which covers the gauge, it is nearly full.
// For other kinds of battery there is an error.
//
// Source: wet lead-acid at 26.7 °C, Battery Council International table; lithium
// iron phosphate, published charts that agree on the flat part only; AGM and gel
// from memory, never below the table for wet ones, because sealed batteries rest
// higher. The papers of the battery come first.
func RestStates(chemistry string) ([]State, error) {
	switch chemistry {
	case "wet":
		return leadStates(12.65, 12.45, 12.24, 12.06, 11.89), nil
	case "agm":
		return leadStates(12.80, 12.60, 12.30, 12.06, 11.89), nil
	case "gel":
		return leadStates(12.85, 12.65, 12.35, 12.06, 11.89), nil
	case "lithium":
		return []State{{"nearly-full", 13.4}, {"cannot-tell", 12.9}, {"nearly-empty", 0}}, nil
	}
	return nil, fmt.Errorf("nothing is known of the voltage of a battery of the kind %q", chemistry)
}

func leadStates(full, threeQuarters, half, quarter, empty quantity.Volts) []State {
	return []State{{"full", full}, {"three-quarters", threeQuarters}, {"half", half}, {"quarter", quarter}, {"nearly-empty", empty}, {"empty", 0}}
}
