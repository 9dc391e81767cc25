package electrics

import (
	"errors"
	"math"
	"testing"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// bad are numbers that no formula takes.
var bad = []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)}

func verdict(t *testing.T, s Standard, current, rated quantity.Amperes) Verdict {
	t.Helper()
	got, err := s.Verdict(current, rated)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// multiple reads a published multiple of the rated current.
func multiple(t *testing.T, c published.Check, name string) quantity.Amperes {
	t.Helper()
	return quantity.Amperes(published.Value[quantity.Fraction](t, c.Values, name))
}

func TestVerdictPublished(t *testing.T) {
	checks := published.Read(t, "mains")
	ten := published.Get(t, checks, "breaker-10a")
	ul := published.Get(t, checks, "breaker-ul")
	amps := func(name string) quantity.Amperes { return published.Value[quantity.Amperes](t, ten.Values, name) }
	for _, c := range []struct {
		standard               Standard
		limit, rated           quantity.Amperes
		under, reached, beyond Verdict
		source                 string
	}{
		{IEC60898, amps("holds"), 10, MayTripAfterHour, MayTripAfterHour, MayTripWithinHour, ten.Source},
		{IEC60898, amps("hour"), 10, MayTripWithinHour, TripsWithinHour, TripsWithinHour, ten.Source},
		{IEC60898, amps("minute"), 10, TripsWithinHour, TripsWithinMinute, TripsWithinMinute, ten.Source},
		{UL489, 20 * multiple(t, ul, "all-day"), 20, StaysOn, StaysOn, MayTripAfterHour, ul.Source},
		{UL489, 20 * multiple(t, ul, "holds"), 20, MayTripAfterHour, MayTripAfterHour, MayTripWithinHour, ul.Source},
		{UL489, 20 * multiple(t, ul, "hour"), 20, MayTripWithinHour, TripsWithinHour, TripsWithinHour, ul.Source},
		{UL489, 30 * multiple(t, ul, "minutes"), 30, TripsWithinHour, TripsWithinMinutes, TripsWithinMinutes, ul.Source},
	} {
		for part, want := range map[quantity.Amperes]Verdict{0.999: c.under, 1: c.reached, 1.001: c.beyond} {
			if got := verdict(t, c.standard, c.limit*part, c.rated); got != want {
				t.Errorf("%g A on %g A gives %d, expected %d (%s)", float64(c.limit*part), float64(c.rated), got, want, c.source)
			}
		}
	}
}

// The table that gives multiples and the worked one for 10 A say the same.
func TestMultiplesPublished(t *testing.T) {
	c := published.Get(t, published.Read(t, "mains"), "breaker-multiples")
	for name, want := range map[string]Verdict{"holds": MayTripAfterHour, "hour": TripsWithinHour, "minute": TripsWithinMinute} {
		for _, rated := range []quantity.Amperes{6, 13, 16, 32} {
			if got := verdict(t, IEC60898, rated*multiple(t, c, name), rated); got != want {
				t.Errorf("%s on %g A gives %d, expected %d (%s)", name, float64(rated), got, want, c.Source)
			}
		}
	}
}

// A breaker of a pitch may be of type B or C: it is said to go at once only
// where both must, and perhaps at once wherever one of them may.
func TestAtOncePublished(t *testing.T) {
	checks := published.Read(t, "mains")
	b, c := published.Get(t, checks, "breaker-at-once"), published.Get(t, checks, "breaker-at-once-c")
	for _, at := range []struct {
		multiple quantity.Amperes
		want     Verdict
	}{
		{multiple(t, b, "not-at-once"), TripsWithinMinute},
		{multiple(t, b, "not-at-once") * 1.001, TripsWithinMinuteNow},
		{multiple(t, b, "at-once"), TripsWithinMinuteNow},
		{multiple(t, c, "not-at-once"), TripsWithinMinuteNow},
		{multiple(t, c, "at-once") * 0.999, TripsWithinMinuteNow},
		{multiple(t, c, "at-once"), TripsAtOnce},
	} {
		if got := verdict(t, IEC60898, 6*at.multiple, 6); got != at.want {
			t.Errorf("%g times gives %d, expected %d (%s)", float64(at.multiple), got, at.want, c.Source)
		}
	}
}

// What stays on at nominal voltage does not trip within the hour at the highest
// that the supply may have, where an element takes more in the same proportion.
func TestStaysOnAtHighestVoltage(t *testing.T) {
	voltage := published.Get(t, published.Read(t, "mains"), "voltage-range").Values
	rise := published.Value[quantity.Volts](t, voltage, "highest") / published.Value[quantity.Volts](t, voltage, "nominal")
	for _, rated := range supplies[0].pitches {
		if verdict(t, IEC60898, rated, rated) != StaysOn {
			t.Errorf("%g A does not stay on", float64(rated))
		}
		if got := verdict(t, IEC60898, rated*quantity.Amperes(rise), rated); got > MayTripAfterHour {
			t.Errorf("at the highest voltage a breaker of %g A gives %d", float64(rated), got)
		}
	}
}

// What everybody on a site knows: 3 kW does not live long on 10 A.
func TestVerdictCommonPractice(t *testing.T) {
	c := published.Get(t, published.Read(t, "mains"), "three-kilowatts-on-ten-amps")
	current, err := Current(published.Value[quantity.Watts](t, c.Values, "power"), supplies[0].voltage)
	if err != nil {
		t.Fatal(err)
	}
	if got := verdict(t, IEC60898, current, published.Value[quantity.Amperes](t, c.Values, "pitch")); got < MayTripWithinHour {
		t.Errorf("%s: %d", c.What, got)
	}
	if got := verdict(t, IEC60898, current, published.Value[quantity.Amperes](t, c.Values, "enough")); got != StaysOn {
		t.Errorf("%s: %d", c.What, got)
	}
}

func TestVerdictIsMonotone(t *testing.T) {
	for standard, pitches := range map[Standard][]quantity.Amperes{IEC60898: {0.5, 6, 10, 13, 16, 32}, UL489: {15, 20, 30}} {
		for _, rated := range pitches {
			last := StaysOn
			for step := 1; step <= 1200; step++ {
				got := verdict(t, standard, rated*quantity.Amperes(step)/100, rated)
				if got < last {
					t.Fatalf("%d %% of %g A is milder than a little less", step, float64(rated))
				}
				last = got
			}
			if last.tone() != table.Bad {
				t.Errorf("twelve times %g A does not trip", float64(rated))
			}
		}
	}
}

func TestVerdictRefuses(t *testing.T) {
	for _, s := range []Standard{IEC60898, UL489} {
		for _, v := range bad {
			if got, err := s.Verdict(quantity.Amperes(v), 10); !errors.Is(err, calc.ErrOutside) || got != 0 {
				t.Errorf("%v A on 10 A gives %v, %v", v, got, err)
			}
			if got, err := s.Verdict(10, quantity.Amperes(v)); !errors.Is(err, calc.ErrOutside) || got != 0 {
				t.Errorf("10 A on %v A gives %v, %v", v, got, err)
			}
		}
	}
	if got, err := IEC60898.Verdict(10, 32.1); !errors.Is(err, calc.ErrOutside) {
		t.Errorf("a breaker over 32 A gives %v, %v", got, err)
	}
	if got, err := UL489.Verdict(10, 30.1); !errors.Is(err, calc.ErrOutside) {
		t.Errorf("a breaker over 30 A gives %v, %v", got, err)
	}
}
