package electrics_test

import (
	"testing"

	"doorpocket/components/electrics"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func inletWith(t testing.TB, option, length, area string) table.Fitted {
	t.Helper()
	inlet := pitch(option)
	inlet.Facts = append(inlet.Facts,
		sample.Fact(t, "lead_length", "", quantity.Length, length), sample.Fact(t, "lead_area", "", quantity.Area, area))
	return inlet
}

func TestLeadDropTable(t *testing.T) {
	for _, c := range []struct {
		name  string
		inlet table.Fitted
		want  []string
	}{
		{"usual", inletWith(t, "230-v", "25 m", "2.5 mm2"), []string{
			"6 A | cool | 2.4 V | 1.1% | 15 W", "6 A | warm | 2.9 V | 1.3% | 18 W",
			"10 A | cool | 4.0 V | 1.8% | 40 W", "10 A | warm | 4.8 V | 2.1% | 48 W",
			"16 A | cool | 6.4 V | 2.8% | 103 W", "16 A | warm | 7.7 V | 3.4% | 123 W",
		}},
		{"thin", inletWith(t, "230-v", "10 m", "1.5 mm2"), []string{
			"6 A | cool | 1.6 V | 0.7% | 10 W", "6 A | warm | 2.0 V | 0.9% | 12 W",
			"10 A | cool | 2.7 V | 1.2% | 27 W", "10 A | warm | 3.2 V | 1.4% | 32 W",
			"16 A | too-thin |  |  | ",
			"lacks inlet:lead_area: a lead of 1.5 mm² is too thin for a pitch of 16 A, which wants 2.5 mm² or more",
		}},
		{"American", inletWith(t, "120-v", "7.6 m", "5.26 mm2"), []string{
			"15 A | cool | 0.8 V | 0.7% | 12 W", "15 A | warm | 1.0 V | 0.8% | 14 W",
			"20 A | cool | 1.1 V | 0.9% | 21 W", "20 A | warm | 1.3 V | 1.1% | 25 W",
			"30 A | cool | 1.6 V | 1.3% | 46 W", "30 A | warm | 1.9 V | 1.6% | 55 W",
		}},
		{"size not made", inletWith(t, "230-v", "25 m", "3 mm2"), []string{
			"lacks inlet:lead_area: no published resistance is known for a lead of 3 mm²: outside what the formula holds for",
		}},
		{"nothing stated", inletWith(t, "230-v", "25 m", ""), []string{"lacks inlet:lead_area: lead_area is not stated"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			sample.Same(t, sample.Shown(t, "electrics/lead-drop", sample.Van(t, "inlet", c.inlet)), c.want)
		})
	}
}

func BenchmarkLeadDropTable(b *testing.B) {
	in := sample.Van(b, "inlet", inletWith(b, "230-v", "25 m", "2.5 mm2"))
	for b.Loop() {
		if _, err := electrics.LeadDropTable(in); err != nil {
			b.Fatal(err)
		}
	}
}
