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

func amperes(t *testing.T, power quantity.Watts, voltage quantity.Volts) quantity.Amperes {
	t.Helper()
	got, err := Current(power, voltage)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestCurrentPublished(t *testing.T) {
	checks := published.Read(t, "mains")
	for id, s := range map[string]supply{"pitch-power": supplies[0], "pitch-power-120": supplies[1]} {
		pitch := published.Get(t, checks, id)
		for _, row := range pitch.Rows {
			got := amperes(t, published.Value[quantity.Watts](t, row, "power"), s.voltage)
			pitch.Same(t, row["power"], float64(got), float64(published.Value[quantity.Amperes](t, row, "current")))
		}
	}
	for _, id := range []string{"pitch-power-printed", "pitch-power-magazine"} {
		c := published.Get(t, checks, id)
		got := amperes(t, published.Value[quantity.Watts](t, c.Values, "power"), supplies[0].voltage)
		c.Same(t, "current", float64(got), float64(published.Value[quantity.Amperes](t, c.Values, "current")))
	}
	voltage := published.Get(t, checks, "voltage-range")
	if want := published.Value[quantity.Volts](t, voltage.Values, "nominal"); supplies[0].voltage != want {
		t.Errorf("a pitch has %g V, expected %g (%s)", float64(supplies[0].voltage), float64(want), voltage.Source)
	}
}

func TestCurrentProperties(t *testing.T) {
	check := func(a, b uint16) bool {
		one, other := quantity.Watts(a)+1, quantity.Watts(b)+1
		both := amperes(t, one+other, 230)
		return both > amperes(t, one, 230) && both < amperes(t, one+other, 120) &&
			math.Abs(float64(both-amperes(t, one, 230)-amperes(t, other, 230))) < 1e-9
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func TestCurrentRefuses(t *testing.T) {
	for _, v := range bad {
		if got, err := Current(quantity.Watts(v), 230); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("Current(%v, 230) gives %v, %v", v, got, err)
		}
		if got, err := Current(100, quantity.Volts(v)); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("Current(100, %v) gives %v, %v", v, got, err)
		}
	}
}
