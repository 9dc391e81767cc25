package electrics

import (
	"errors"
	"testing"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func verdict(t *testing.T, current, rated quantity.Amperes) Verdict {
	t.Helper()
	got, err := VerdictOn(current, rated)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestVerdict(t *testing.T) {
	for _, c := range []struct {
		power quantity.Watts
		want  verdicts
	}{
		{20, verdicts{StaysOn, StaysOn, StaysOn}},
		{1380, verdicts{StaysOn, StaysOn, StaysOn}}, // 6 A exactly
		{1381, verdicts{PitchMayTrip, StaysOn, StaysOn}},
		{2000, verdicts{PitchMayTrip, StaysOn, StaysOn}}, // 8.696 A, under 8.7 A
		{2001, verdicts{Trips, StaysOn, StaysOn}},        // 1.45 times 6 A
		{2300, verdicts{Trips, StaysOn, StaysOn}},
		{3334, verdicts{Trips, PitchMayTrip, StaysOn}},
		{3335, verdicts{Trips, Trips, StaysOn}}, // 1.45 times 10 A
		{3680, verdicts{Trips, Trips, StaysOn}},
		{3681, verdicts{Trips, Trips, PitchMayTrip}},
		{5336, verdicts{Trips, Trips, Trips}}, // 1.45 times 16 A
	} {
		got, err := verdictsOn(amperes(t, c.power))
		if err != nil || got != c.want {
			t.Errorf("%g W gives %v, %v; expected %v", float64(c.power), got, err, c.want)
		}
	}
}

// What stays on at nominal voltage stays on at the highest that the supply may
// have, where an element takes more in the same proportion.
func TestStaysOnAtHighestVoltage(t *testing.T) {
	voltage := published.Get(t, published.Read(t, "mains"), "voltage-range").Values
	highest := published.Value[quantity.Volts](t, voltage, "highest")
	for _, rated := range pitches {
		if verdict(t, rated, rated) != StaysOn {
			t.Errorf("%g A does not stay on", float64(rated))
		}
		if got := breaker(t, rated*quantity.Amperes(highest/pitchVoltage), rated); got != Holds {
			t.Errorf("at %g V a breaker of %g A does not hold", float64(highest), float64(rated))
		}
	}
}

func TestVerdictIsMonotone(t *testing.T) {
	for power := quantity.Watts(10); power < 8000; power += 10 {
		current := amperes(t, power)
		for i, rated := range pitches {
			if verdict(t, amperes(t, power+10), rated) < verdict(t, current, rated) {
				t.Fatalf("more than %g W does better on %g A", float64(power), float64(rated))
			}
			if i > 0 && verdict(t, current, rated) > verdict(t, current, pitches[i-1]) {
				t.Fatalf("%g W does worse on %g A than on less", float64(power), float64(rated))
			}
		}
	}
}

func TestVerdictRefuses(t *testing.T) {
	for _, v := range bad {
		if got, err := VerdictOn(quantity.Amperes(v), 10); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("VerdictOn(%v, 10) gives %v, %v", v, got, err)
		}
	}
	if got, err := VerdictOn(10, 63); !errors.Is(err, calc.ErrOutside) {
		t.Errorf("a pitch of 63 A gives %v, %v", got, err)
	}
}
