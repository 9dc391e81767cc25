package electrics_test

import (
	"testing"

	"doorpocket/components/electrics"
	"doorpocket/components/internal/sample"
	"doorpocket/components/table"
)

func TestChargeState(t *testing.T) {
	monitor := table.Fitted{Name: "monitor", System: "electrics/battery-monitor"}
	for kind, want := range map[string][]string{
		"wet": {
			"full | 12.7 V |  | fine", "three-quarters | 12.5 V | 12.7 V | fine", "half | 12.3 V | 12.5 V | charge-soon",
			"quarter | 12.1 V | 12.3 V | charge-now", "nearly-empty | 11.9 V | 12.1 V | charge-now", "empty |  | 11.9 V | charge-now",
		},
		"lithium": {
			"nearly-full | 13.4 V |  | fine", "cannot-tell | 12.9 V | 13.4 V | read-percent", "nearly-empty |  | 12.9 V | charge-now",
		},
		"nuclear": {`lacks battery:chemistry: nothing is known of the voltage of a battery of the kind "nuclear"`},
	} {
		in := sample.Van(t, "monitor", battery(t, kind, "100 Ah"), monitor)
		sample.Same(t, sample.Shown(t, "electrics/charge-state", in), want)
	}
	sample.Same(t, sample.Shown(t, "electrics/charge-state", sample.Van(t, "monitor", monitor)), nil)
}

func TestChargeStateOfTwoBatteries(t *testing.T) {
	second := battery(t, "lithium", "100 Ah")
	second.Name = "second"
	if result, err := electrics.ChargeStateTable(sample.Van(t, "battery", battery(t, "wet", "100 Ah"), second)); err == nil {
		t.Errorf("two batteries give %v", result)
	}
}

func BenchmarkChargeStateTable(b *testing.B) {
	in := sample.Van(b, "battery", battery(b, "agm", "100 Ah"))
	for b.Loop() {
		if _, err := electrics.ChargeStateTable(in); err != nil {
			b.Fatal(err)
		}
	}
}
