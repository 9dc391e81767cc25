package electrics_test

import (
	"strings"
	"testing"

	"doorpocket/components/electrics"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func panel(t testing.TB, name, peak string) table.Fitted {
	t.Helper()
	return table.Fitted{Name: name, System: "electrics/solar", Facts: []table.Fact{sample.Fact(t, "peak", "solar-peak", quantity.Power, peak)}}
}

// 100 Ah of AGM, half of which may be used, and 24 W for 10 h: 20 Ah a day.
// December gives 100 × 0.46 × 0.7 = 32.2 Wh = 2.6 Ah, so 50 / 17.3 = 2.9 days.
func TestSolarDay(t *testing.T) {
	tv := consumerOf(t, "tv", "electrics/tv", "dc_power", "24 W")
	tv.Facts = append(tv.Facts, sample.Fact(t, "hours_a_day", "use-a-day", quantity.Time, "10 h"))
	got := sample.Shown(t, "electrics/solar-day-52", sample.Van(t, "panel", panel(t, "panel", "100 W"), battery(t, "agm", "100 Ah"), tv))
	sample.Same(t, []string{got[0], got[2], got[3], got[5], got[11]}, []string{
		"january | 44 Wh | 3.7 Ah | three-days",
		"march | 173 Wh | 14.4 Ah | a-week",
		"april | 240 Wh | 20.0 Ah | covers",
		"june | 345 Wh | 28.7 Ah | covers",
		"december | 32 Wh | 2.6 Ah | two-days",
	})
}

// Two panels give what both give; further south the sun gives more in winter.
func TestSolarDayOfTwoPanels(t *testing.T) {
	two := []table.Fitted{panel(t, "panel", "100 W"), panel(t, "folding", "60 W")}
	for id, want := range map[string]string{
		"electrics/solar-day-52": "december | 51 Wh | 4.2 Ah | not-known",
		"electrics/solar-day-45": "december | 166 Wh | 13.9 Ah | not-known",
		"electrics/solar-day-36": "december | 250 Wh | 20.9 Ah | not-known",
	} {
		got := sample.Shown(t, id, sample.Van(t, "panel", two...))
		if len(got) != 12 || got[11] != want {
			t.Errorf("%s ends with %q, expected %q", id, got[len(got)-1], want)
		}
	}
}

func TestSolarDayLacks(t *testing.T) {
	got := sample.Shown(t, "electrics/solar-day-52", sample.Van(t, "panel", panel(t, "panel", "100 W"), panel(t, "folding", "")))
	sample.Same(t, got, []string{"lacks folding:peak: peak is not stated"})
	lights := consumerOf(t, "lights", "electrics/lights", "all_on", "")
	got = sample.Shown(t, "electrics/solar-day-52", sample.Van(t, "panel", panel(t, "panel", "100 W"), battery(t, "agm", "100 Ah"), lights))
	for _, line := range got {
		if !strings.HasSuffix(line, "| not-known") {
			t.Errorf("%s, though nobody knows what the lights take", line)
		}
	}
}

func benchmarkSolar(b *testing.B, work table.Func) {
	in := sample.Van(b, "panel", panel(b, "panel", "100 W"), battery(b, "agm", "100 Ah"), consumerOf(b, "tv", "electrics/tv", "dc_power", "24 W"))
	for b.Loop() {
		if _, err := work(in); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSolarDay52Table(b *testing.B) { benchmarkSolar(b, electrics.SolarDay52Table) }
func BenchmarkSolarDay45Table(b *testing.B) { benchmarkSolar(b, electrics.SolarDay45Table) }
func BenchmarkSolarDay36Table(b *testing.B) { benchmarkSolar(b, electrics.SolarDay36Table) }
