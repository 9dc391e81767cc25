package electrics_test

import (
	"testing"

	"doorpocket/components/electrics"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func fuses(t testing.TB, pairs ...string) table.Fitted {
	t.Helper()
	f := table.Fitted{Name: "fuses", System: "electrics/fuses-12v", Facts: []table.Fact{sample.Fact(t, "main_fuse", "", quantity.Current, "80 A")}}
	for i := 0; i < len(pairs); i += 2 {
		f.Facts = append(f.Facts, sample.Fact(t, pairs[i], "fuse", quantity.Current, pairs[i+1]))
	}
	return f
}

func TestFuses(t *testing.T) {
	self := fuses(t, "water_pump", "7.5 A", "lights", "10 A", "fridge", "12 A", "step", "")
	pump := table.Fitted{Name: "pump", System: "water/pump", Facts: []table.Fact{sample.Fact(t, "fuse", "", quantity.Current, "7.5 A")}}
	sample.Same(t, sample.Shown(t, "electrics/fuses", sample.Van(t, "fuses", self, pump)), []string{
		"fuses:water_pump | 7.5 A | brown | same-only",
		"fuses:lights | 10 A | red | same-only",
		"lacks fuses:fridge: no blade fuse is made for 12 A: outside what the formula holds for",
		"lacks fuses:step: step is not stated",
	})
}

// Two pages that say two values of one fuse: neither is shown.
func TestFusesThatDisagree(t *testing.T) {
	pump := table.Fitted{Name: "pump", System: "water/pump", Facts: []table.Fact{sample.Fact(t, "fuse", "", quantity.Current, "10 A")}}
	sample.Same(t, sample.Shown(t, "electrics/fuses", sample.Van(t, "fuses", fuses(t, "water_pump", "7.5 A"), pump)), []string{
		"lacks fuses:water_pump: it is 7.5 A here and 10 A in pump: look at the van",
	})
}

func BenchmarkFusesTable(b *testing.B) {
	in := sample.Van(b, "fuses", fuses(b, "water_pump", "7.5 A", "lights", "10 A"))
	for b.Loop() {
		if _, err := electrics.FusesTable(in); err != nil {
			b.Fatal(err)
		}
	}
}
