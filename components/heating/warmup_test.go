package heating

import (
	"errors"
	"math"
	"testing"
	"testing/quick"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

// A coachbuilt van of middle size with a heater of 6 kW warms up within the
// time of its grade, and is no quicker than the published record. From memory:
// such a van has such a heater.
func TestWarmUpAgainstTheStandard(t *testing.T) {
	checks := published.Read(t, "heat_loss")
	space, err := Box(7, 2.3, 2.9)
	if err != nil {
		t.Fatal(err)
	}
	capacity, err := HeatCapacity(space)
	if err != nil {
		t.Fatal(err)
	}
	for _, grade := range []string{"grade-2", "grade-3"} {
		c := published.Get(t, checks, grade)
		outside := published.Value[quantity.Kelvins](t, c.Values, "outside")
		got, err := WarmUp(loss(t, space, grades[grade], airChanges), capacity, 6000, outside, outside, published.Value[quantity.Kelvins](t, c.Values, "inside"))
		if err != nil {
			t.Fatal(err)
		}
		if within := published.Value[quantity.Seconds](t, c.Values, "within"); got > within {
			t.Errorf("%s takes %g s, which may be %g s (%s)", grade, got, within, c.Source)
		}
		if record := published.Value[quantity.Seconds](t, published.Get(t, checks, "grade-3-record").Values, "time"); grade == "grade-3" && got < record {
			t.Errorf("%s takes %g s, less than the record of %g s", grade, got, record)
		}
	}
}

func warm(t *testing.T, k WattsPerKelvin, c JoulesPerKelvin, heat quantity.Watts, outside, start, end quantity.Kelvins) float64 {
	t.Helper()
	got, err := WarmUp(k, c, heat, outside, start, end)
	if err != nil {
		t.Fatal(err)
	}
	return float64(got)
}

func TestWarmUpProperties(t *testing.T) {
	check := func(a, b, c, d uint16) bool {
		k, capacity := WattsPerKelvin(a%200)+20, JoulesPerKelvin(b)*20+1e5
		outside := freezing - quantity.Kelvins(c%20)
		heat := quantity.Watts(need(t, k, Warm, outside)) + quantity.Watts(d%5000) + 50
		half := (outside + Warm) / 2
		time := warm(t, k, capacity, heat, outside, outside, Warm)
		least := float64(capacity) * float64(Warm-outside) / float64(heat) // if nothing were lost
		return time > least &&
			near9(warm(t, k, capacity, heat, outside, outside, half)+warm(t, k, capacity, heat, outside, half, Warm), time) && // stretches add up
			near9(warm(t, k, 2*capacity, heat, outside, outside, Warm), 2*time) &&
			warm(t, k, capacity, heat+100, outside, outside, Warm) < time &&
			warm(t, k-1, capacity, heat, outside, outside, Warm) < time &&
			warm(t, k, capacity, 1000*heat, outside, outside, Warm) < 1.01*least/1000 // a huge heater loses nothing
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func near9(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(math.Abs(a), math.Abs(b)) }

// Two sources at once take less than half of what the stronger takes, wherever
// that one is only as strong as it must be.
func TestTogetherIsDrasticallyQuicker(t *testing.T) {
	const k, capacity = 100, 700_000
	one := warm(t, k, capacity, 2200, freezing, freezing, Warm)
	both := warm(t, k, capacity, 4000, freezing, freezing, Warm)
	if both > one/2 {
		t.Errorf("both together take %g s, one alone %g s", both, one)
	}
}

func TestWarmUpTooWeak(t *testing.T) {
	for _, heat := range []quantity.Watts{1, 1999, 2000} {
		if got, err := WarmUp(100, 700_000, heat, freezing, freezing, Warm); !errors.Is(err, ErrTooWeak) || errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("%g W against a loss of 2000 W: %g, %v", heat, got, err)
		}
	}
}

func TestWarmUpRefuses(t *testing.T) {
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		for what, ask := range map[string]func() (quantity.Seconds, error){
			"loss": func() (quantity.Seconds, error) {
				return WarmUp(WattsPerKelvin(v), 1e6, 4000, freezing, freezing, Warm)
			},
			"capacity": func() (quantity.Seconds, error) {
				return WarmUp(100, JoulesPerKelvin(v), 4000, freezing, freezing, Warm)
			},
			"heat":  func() (quantity.Seconds, error) { return WarmUp(100, 1e6, quantity.Watts(v), freezing, freezing, Warm) },
			"start": func() (quantity.Seconds, error) { return WarmUp(100, 1e6, 4000, freezing, quantity.Kelvins(v), Warm) },
			"surface": func() (quantity.Seconds, error) {
				c, err := HeatCapacity(Space{Surface: quantity.SquareMetres(v)})
				return quantity.Seconds(c), err
			},
		} {
			if got, err := ask(); !errors.Is(err, calc.ErrOutside) || got != 0 {
				t.Errorf("%s of %g: %g, %v", what, v, got, err)
			}
		}
	}
	for _, start := range []quantity.Kelvins{freezing - 1, Warm, Warm + 1} {
		if got, err := WarmUp(100, 1e6, 4000, freezing, start, Warm); !errors.Is(err, calc.ErrOutside) {
			t.Errorf("a start at %g K: %g, %v", start, got, err)
		}
	}
}
