package water

import (
	"errors"
	"math"
	"testing"
	"testing/quick"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/gnuunits"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func mass(t *testing.T, volume quantity.CubicMetres) float64 {
	t.Helper()
	got, err := Mass(volume)
	if err != nil {
		t.Fatal(err)
	}
	return float64(got)
}

func TestMassPublished(t *testing.T) {
	checks := published.Read(t, "water")
	gallon := published.Get(t, checks, "gallon")
	gallon.Same(t, "a gallon", mass(t, published.Value[quantity.CubicMetres](t, gallon.Values, "volume")),
		float64(published.Value[quantity.Kilograms](t, gallon.Values, "mass")))
	// Never less than the printed mass, and not much more.
	for _, row := range published.Get(t, checks, "densities").Rows {
		printed := float64(published.Value[quantity.Kilograms](t, row, "mass"))
		if got := mass(t, litre); got < printed || got > 1.01*printed {
			t.Errorf("a litre at %s weighs %g kg, here %g kg", row["at"], printed, got)
		}
	}
}

// A load is never told too small: a litre weighs at least what GNU units knows of
// water, whose weight it counts as a force.
func TestMassAgainstGNUUnits(t *testing.T) {
	for sum, volume := range map[string]quantity.CubicMetres{"100 liter water": 100 * litre, "1 brgallon water": 4.54609 * litre} {
		want := gnuunits.Number(t, sum, "kgf")
		if got := mass(t, volume); got < want*(1-1e-9) || got > want*1.005 {
			t.Errorf("%s: %g kg, GNU units says %g kg", sum, got, want)
		}
	}
}

func TestMassProperties(t *testing.T) {
	check := func(a, b uint16) bool {
		one, other := quantity.CubicMetres(a+1)*litre, quantity.CubicMetres(b+1)*litre
		return near(mass(t, one+other), mass(t, one)+mass(t, other)) && mass(t, one+litre) > mass(t, one)
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func TestMassRefuses(t *testing.T) {
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got, err := Mass(quantity.CubicMetres(v)); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("%g m³: %g, %v", v, got, err)
		}
	}
}
