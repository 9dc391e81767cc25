package electrics

import (
	"errors"
	"testing"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func breaker(t *testing.T, current, rated quantity.Amperes) Trip {
	t.Helper()
	got, err := BreakerAt(current, rated)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestBreakerPublished(t *testing.T) {
	checks := published.Read(t, "mains")
	ten := published.Get(t, checks, "breaker-10a")
	at := func(name string) quantity.Amperes { return published.Value[quantity.Amperes](t, ten.Values, name) }
	multiples := published.Get(t, checks, "breaker-multiples").Values
	times := func(name string) quantity.Amperes {
		return quantity.Amperes(published.Value[quantity.Fraction](t, multiples, name))
	}
	for _, c := range []struct {
		name           string
		at             func(string) quantity.Amperes
		scale, rated   quantity.Amperes
		under, reached Trip
	}{
		{"holds", at, 1, 10, Holds, Holds},
		{"hour", at, 1, 10, MayTrip, TripsWithinHour},
		{"minute", at, 1, 10, TripsWithinHour, TripsWithinMinute},
		{"holds", times, 6, 6, Holds, Holds},
		{"hour", times, 16, 16, MayTrip, TripsWithinHour},
		{"minute", times, 32, 32, TripsWithinHour, TripsWithinMinute},
	} {
		limit := c.at(c.name) * c.scale
		if got := breaker(t, limit, c.rated); got != c.reached {
			t.Errorf("%g A on %g A gives %d, expected %d (%s)", float64(limit), float64(c.rated), got, c.reached, ten.Source)
		}
		if got := breaker(t, limit*0.999, c.rated); got != c.under {
			t.Errorf("just under %g A on %g A gives %d, expected %d (%s)", float64(limit), float64(c.rated), got, c.under, ten.Source)
		}
	}
	if got := breaker(t, at("holds")*1.001, 10); got != MayTrip {
		t.Errorf("just above %g A gives %d, expected that it may trip", float64(at("holds")), got)
	}
}

func TestBreakerIsMonotone(t *testing.T) {
	for _, rated := range []quantity.Amperes{0.5, 6, 10, 16, 32} {
		last := Holds
		for step := 1; step <= 400; step++ {
			got := breaker(t, rated*quantity.Amperes(step)/100, rated)
			if got < last {
				t.Fatalf("%d %% of %g A is milder than a little less", step, float64(rated))
			}
			last = got
		}
		if last != TripsWithinMinute {
			t.Errorf("four times %g A does not trip within a minute", float64(rated))
		}
	}
}

func TestBreakerRefuses(t *testing.T) {
	for _, v := range bad {
		if got, err := BreakerAt(quantity.Amperes(v), 10); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("BreakerAt(%v, 10) gives %v, %v", v, got, err)
		}
		if got, err := BreakerAt(10, quantity.Amperes(v)); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("BreakerAt(10, %v) gives %v, %v", v, got, err)
		}
	}
	if got, err := BreakerAt(10, 32.1); !errors.Is(err, calc.ErrOutside) {
		t.Errorf("a breaker over 32 A gives %v, %v", got, err)
	}
}
