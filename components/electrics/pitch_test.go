package electrics

import (
	"slices"
	"testing"

	"doorpocket/components/quantity"
)

func TestVerdictsOfPitches(t *testing.T) {
	const (
		on, later, may, hour, minute, now = StaysOn, MayTripAfterHour, MayTripWithinHour, TripsWithinHour, TripsWithinMinute, TripsWithinMinuteNow
	)
	for _, c := range []struct {
		power quantity.Watts
		want  []Verdict
	}{
		{20, []Verdict{on, on, on, on}},
		{1380, []Verdict{on, on, on, on}}, // 6 A exactly
		{1381, []Verdict{later, on, on, on}},
		{1559, []Verdict{later, on, on, on}}, // 1.13 times 6 A is 1559.4 W
		{1560, []Verdict{may, on, on, on}},
		{2000, []Verdict{may, on, on, on}}, // 8.696 A, under 8.7 A
		{2001, []Verdict{hour, on, on, on}},
		{2990, []Verdict{hour, may, on, on}}, // 13 A exactly
		{3335, []Verdict{hour, hour, later, on}},
		{3519, []Verdict{minute, hour, may, on}}, // 2.55 times 6 A
		{4140, []Verdict{minute, hour, may, later}},
		{4141, []Verdict{now, hour, may, later}}, // over 3 times 6 A
		{5336, []Verdict{now, hour, hour, hour}}, // 1.45 times 16 A
	} {
		current, err := Current(c.power, 230)
		if err != nil {
			t.Fatal(err)
		}
		got, err := supplies[0].verdicts(current)
		if err != nil || !slices.Equal(got, c.want) {
			t.Errorf("%g W gives %v, %v; expected %v", float64(c.power), got, err, c.want)
		}
	}
}

// A larger pitch never does worse.
func TestLargerPitchIsBetter(t *testing.T) {
	for _, s := range supplies {
		for power := quantity.Watts(10); power < 20_000; power += 10 {
			current, err := Current(power, s.voltage)
			if err != nil {
				t.Fatal(err)
			}
			got, err := s.verdicts(current)
			if err != nil || !slices.IsSortedFunc(got, func(a, b Verdict) int { return int(b) - int(a) }) {
				t.Fatalf("%g W gives %v, %v", float64(power), got, err)
			}
		}
	}
}
