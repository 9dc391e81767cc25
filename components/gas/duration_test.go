package gas

import (
	"errors"
	"math"
	"testing"
	"testing/quick"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func TestDurationPublished(t *testing.T) {
	checks := published.Read(t, "gas")
	for _, id := range []string{"trade-consumption", "trade-consumption-small", "gross-heat"} {
		c := published.Get(t, checks, id)
		got, err := Duration(published.Value[quantity.Kilograms](t, c.Values, "store"),
			published.Value[quantity.KilogramsPerSecond](t, c.Values, "rate"))
		if err != nil {
			t.Errorf("%s: %v", id, err)
		}
		c.Same(t, "time", float64(got), float64(published.Value[quantity.Seconds](t, c.Values, "time")))
	}
}

// Appliances in use at once use the sum of their rates, so the reciprocals of
// their durations add up to that of the whole.
func TestDurationAddsUp(t *testing.T) {
	checks := published.Read(t, "gas")
	const store quantity.Kilograms = 6
	for _, id := range []string{"hob-and-heater", "regulator-sizing"} {
		c := published.Get(t, checks, id)
		var parts float64
		for _, row := range c.Rows {
			parts += 1 / seconds(t, store, published.Value[quantity.KilogramsPerSecond](t, row, "rate"))
		}
		whole := seconds(t, store, published.Value[quantity.KilogramsPerSecond](t, c.Values, "total"))
		c.Same(t, "duration", 1/parts, whole)
	}
}

func seconds(t *testing.T, store quantity.Kilograms, rate quantity.KilogramsPerSecond) float64 {
	t.Helper()
	got, err := Duration(store, rate)
	if err != nil {
		t.Fatal(err)
	}
	return float64(got)
}

func TestDurationProperties(t *testing.T) {
	check := func(a, b, c uint32) bool {
		store, more, rate := kilograms(a), kilograms(a)+kilograms(b), quantity.KilogramsPerSecond(float64(c)+1)*1e-6
		base := seconds(t, store, rate)
		return seconds(t, more, rate) > base && // more gas lasts longer
			seconds(t, store, 2*rate) < base && // a thirstier appliance less long
			near(seconds(t, 2*store, rate), 2*base) && // twice the gas lasts twice as long
			near(base*float64(rate), float64(store)) // and all of it is used
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func kilograms(n uint32) quantity.Kilograms { return quantity.Kilograms(float64(n%50_000)+1) / 1000 }

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-12*math.Max(math.Abs(a), math.Abs(b)) }

// bad are numbers that no formula takes.
var bad = []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)}

func TestDurationRefuses(t *testing.T) {
	for _, v := range bad {
		if got, err := Duration(quantity.Kilograms(v), 1); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("Duration(%v, 1) gives %v, %v", v, got, err)
		}
		if got, err := Duration(1, quantity.KilogramsPerSecond(v)); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("Duration(1, %v) gives %v, %v", v, got, err)
		}
	}
	if got, err := Duration(math.MaxFloat64, math.SmallestNonzeroFloat64); !errors.Is(err, calc.ErrOutside) {
		t.Errorf("a duration that no number holds gives %v, %v", got, err)
	}
	if got, err := Duration(math.SmallestNonzeroFloat64, math.MaxFloat64); !errors.Is(err, calc.ErrOutside) {
		t.Errorf("a duration too short for any number gives %v, %v", got, err)
	}
}
