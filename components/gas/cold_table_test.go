package gas_test

import (
	"testing"

	"doorpocket/components/gas"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func share(t *testing.T, text string) table.Fact {
	t.Helper()
	return sample.Fact(t, "propane_share", "", quantity.Ratio, text)
}

func shownCold(t *testing.T, facts ...table.Fact) []string {
	t.Helper()
	return sample.Shown(t, "gas/cold", sample.Van(t, "store", table.Fitted{Name: "store", Facts: facts}))
}

func TestColdTableOfButane(t *testing.T) {
	sample.Same(t, shownCold(t, sample.Choice("gas", "butane")), []string{
		"-10.0 °C |  |  | none",
		"-5.0 °C |  |  | none",
		"0.0 °C | 0.01 bar | 0.01 bar | none",
		"0.3 °C | 0.03 bar | 0.03 bar | stops",
		"5.0 °C | 0.22 bar | 0.22 bar | little", // 1.2425 bar - 1.01325 bar
		"6.6 °C | 0.30 bar | 0.30 bar | full-from",
		"10.0 °C | 0.47 bar | 0.47 bar | enough",
		"15.0 °C | 0.74 bar | 0.74 bar | enough",
		"20.0 °C | 1.06 bar | 1.06 bar | enough",
	})
}

func TestColdTableOfPropane(t *testing.T) {
	sample.Same(t, shownCold(t, sample.Choice("gas", "propane")), []string{
		"-41.4 °C | 0.03 bar | 0.03 bar | stops",
		"-40.0 °C | 0.09 bar | 0.09 bar | little",
		"-36.0 °C | 0.30 bar | 0.30 bar | full-from",
		"-30.0 °C | 0.66 bar | 0.66 bar | enough",
		"-20.0 °C | 1.43 bar | 1.43 bar | enough",
		"-10.0 °C | 2.43 bar | 2.43 bar | enough",
		"-5.0 °C | 3.04 bar | 3.04 bar | enough",
		"0.0 °C | 3.73 bar | 3.73 bar | enough",
		"5.0 °C | 4.49 bar | 4.49 bar | enough",
		"10.0 °C | 5.35 bar | 5.35 bar | enough",
		"15.0 °C | 6.30 bar | 6.30 bar | enough",
		"20.0 °C | 7.35 bar | 7.35 bar | enough",
	})
}

func TestColdTableOfMixture(t *testing.T) {
	sample.Same(t, shownCold(t, sample.Choice("gas", "mixture"), share(t, "40 %"))[4:8], []string{
		"-5.0 °C | 1.33 bar |  | while-full",
		"0.0 °C | 1.75 bar | 0.01 bar | while-full", // 46.8 % of the molecules: 0.468 x 4.7446 + 0.532 x 1.0323 - 1.01325
		"0.3 °C | 1.78 bar | 0.03 bar | while-full",
		"5.0 °C | 2.22 bar | 0.22 bar | while-full",
	})
	sample.Same(t, shownCold(t, sample.Choice("gas", "mixture"))[1:6], []string{
		"-5.0 °C |  |  | last-none",
		"0.0 °C |  | 0.01 bar | last-none",
		"0.3 °C |  | 0.03 bar | last-none",
		"5.0 °C |  | 0.22 bar | little",
		"6.6 °C |  | 0.30 bar | full-from",
	})
}

// A mixture whose share cannot be used is judged by its last, and told.
func TestColdTableLacks(t *testing.T) {
	for text, want := range map[string]string{
		"":      "lacks store:propane_share: propane_share is not stated, so the table judges the mixture by the last of it, which is butane",
		"0 %":   "lacks store:propane_share: propane_share is 0 %, which must be above zero: outside what the formula holds for, so the table judges the mixture by the last of it, which is butane",
		"130 %": "lacks store:propane_share: propane_share is above the whole: outside what the formula holds for, so the table judges the mixture by the last of it, which is butane",
	} {
		shown := shownCold(t, sample.Choice("gas", "mixture"), share(t, text))
		sample.Same(t, shown[len(shown)-1:], []string{want})
	}
	for name, facts := range map[string][]table.Fact{"no gas": nil, "another gas": {sample.Choice("gas", "steam")}} {
		result, err := gas.ColdTable(table.Input{Self: table.Fitted{Name: "store", Facts: facts}})
		if err == nil || len(result.Rows) > 0 {
			t.Errorf("%s: %d rows, %v", name, len(result.Rows), err)
		}
	}
}

func BenchmarkColdTable(b *testing.B) {
	in := table.Input{Self: table.Fitted{Name: "store", Facts: []table.Fact{sample.Choice("gas", "propane")}}}
	for b.Loop() {
		if _, err := gas.ColdTable(in); err != nil {
			b.Fatal(err)
		}
	}
}
