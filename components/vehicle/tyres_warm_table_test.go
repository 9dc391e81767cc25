package vehicle_test

import (
	"testing"

	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
	"doorpocket/components/vehicle"
)

func onTyres(t *testing.T, id string, facts ...table.Fact) []string {
	t.Helper()
	return sample.Shown(t, id, sample.Van(t, "tyres", table.Fitted{Name: "tyres", System: "vehicle/tyres", Facts: facts}))
}

// By hand for 5 bar: (5 + 1.01325) * T / 288.15 - 1.01325.
func TestTyresWarm(t *testing.T) {
	sample.Same(t, onTyres(t, "vehicle/tyres-warm", tyre(t, "front", "5.0 bar"), tyre(t, "rear", "80 psi")), []string{
		"-10 °C | 4.5 bar | 65 psi | 5.0 bar | 72 psi", // 4.478 and 4.949 bar
		"0 °C | 4.7 bar | 68 psi | 5.2 bar | 76 psi",   // 4.687 and 5.176
		"25 °C | 5.3 bar | 76 psi | 5.8 bar | 84 psi",  // 5.209 and 5.743
		"35 °C | 5.5 bar | 79 psi | 6.0 bar | 87 psi",  // 5.417 and 5.969
		"45 °C | 5.7 bar | 82 psi | 6.2 bar | 90 psi",  // 5.626 and 6.196
		"55 °C | 5.9 bar | 85 psi | 6.5 bar | 94 psi",  // 5.835 and 6.422
	})
}

// The air outside presses 0.0586, 0.1145, 0.1677, 0.2182 and 0.2664 bar less.
func TestTyresHeight(t *testing.T) {
	sample.Same(t, onTyres(t, "vehicle/tyres-height", tyre(t, "front", "5.0 bar"), tyre(t, "rear", "5.5 bar")), []string{
		"500 m | 5.1 bar | 74 psi | 5.6 bar | 81 psi",
		"1,000 m | 5.2 bar | 75 psi | 5.7 bar | 82 psi",
		"1,500 m | 5.2 bar | 75 psi | 5.7 bar | 83 psi",
		"2,000 m | 5.3 bar | 76 psi | 5.8 bar | 83 psi",
		"2,500 m | 5.3 bar | 77 psi | 5.8 bar | 84 psi",
	})
}

// A pressure that cannot be used leaves its columns empty, two leave no table.
func TestTyresWarmLacks(t *testing.T) {
	for _, id := range []string{"vehicle/tyres-warm", "vehicle/tyres-height"} {
		lines := onTyres(t, id, tyre(t, "rear", "5.0 bar"))
		if len(lines) < 6 || lines[len(lines)-1] != "lacks tyres:front: front is not stated" {
			t.Errorf("%s without a front pressure: %q", id, lines)
		}
		sample.Same(t, onTyres(t, id, tyre(t, "front", "0 bar")), []string{
			"lacks tyres:front: front is 0 bar, which must be above zero: outside what the formula holds for",
			"lacks tyres:rear: rear is not stated",
		})
	}
	sample.Same(t, onTyres(t, "vehicle/tyres-warm", tyre(t, "rear", "5.0 bar"))[:1], []string{"-10 °C |  |  | 4.5 bar | 65 psi"})
}

func BenchmarkTyresWarmTable(b *testing.B) {
	in := sample.Van(b, "tyres", table.Fitted{Name: "tyres", Facts: []table.Fact{
		sample.Fact(b, "front", "tyre-pressure", quantity.Pressure, "5 bar"), sample.Fact(b, "rear", "tyre-pressure", quantity.Pressure, "5.5 bar")}})
	for b.Loop() {
		if _, err := vehicle.TyresWarmTable(in); err != nil {
			b.Fatal(err)
		}
	}
}
