package electrics

import (
	"errors"
	"math"
	"testing"
	"testing/quick"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

// bad are numbers that no formula takes.
var bad = []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)}

func amperes(t *testing.T, power quantity.Watts) quantity.Amperes {
	t.Helper()
	got, err := Current(power)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestCurrentPublished(t *testing.T) {
	checks := published.Read(t, "mains")
	pitch := published.Get(t, checks, "pitch-power")
	for _, row := range pitch.Rows {
		got := amperes(t, published.Value[quantity.Watts](t, row, "power"))
		pitch.Same(t, row["power"], float64(got), float64(published.Value[quantity.Amperes](t, row, "current")))
	}
	for _, id := range []string{"pitch-power-printed", "pitch-power-magazine"} {
		c := published.Get(t, checks, id)
		got := amperes(t, published.Value[quantity.Watts](t, c.Values, "power"))
		c.Same(t, "current", float64(got), float64(published.Value[quantity.Amperes](t, c.Values, "current")))
	}
	voltage := published.Get(t, checks, "voltage-range")
	if want := published.Value[quantity.Volts](t, voltage.Values, "nominal"); pitchVoltage != want {
		t.Errorf("a pitch has %g V, expected %g (%s)", float64(pitchVoltage), float64(want), voltage.Source)
	}
}

func TestCurrentProperties(t *testing.T) {
	check := func(a, b uint16) bool {
		one, other := quantity.Watts(a)+1, quantity.Watts(b)+1
		both := amperes(t, one+other)
		return both > amperes(t, one) && math.Abs(float64(both-amperes(t, one)-amperes(t, other))) < 1e-9
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func TestCurrentRefuses(t *testing.T) {
	for _, v := range bad {
		if got, err := Current(quantity.Watts(v)); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("Current(%v) gives %v, %v", v, got, err)
		}
	}
}
