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

func TestFuelPublished(t *testing.T) {
	checks := published.Read(t, "heat_loss")
	for _, id := range []string{"regulator-brochure", "printed-consumption"} {
		c := published.Get(t, checks, id)
		got, err := GasHeat(published.Value[quantity.KilogramsPerSecond](t, c.Values, "rate"))
		if err != nil {
			t.Fatal(err)
		}
		want := published.Value[quantity.Watts](t, c.Values, "heat")
		c.Same(t, "heat", float64(got), float64(want))
		if id == "printed-consumption" && got > want {
			t.Errorf("a heater gives more than it burns")
		}
	}
	c := published.Get(t, checks, "diesel-2-kw")
	got, err := DieselHeat(published.Value[quantity.CubicMetresPerSecond](t, c.Values, "rate"))
	if err != nil {
		t.Fatal(err)
	}
	c.Same(t, "heat", float64(got), float64(published.Value[quantity.Watts](t, c.Values, "heat")))
}

// No heater gives more than the diesel holds.
func TestDieselWithinItsHeat(t *testing.T) {
	c := published.Get(t, published.Read(t, "heat_loss"), "diesel-net-heat")
	held := float64(published.Value[quantity.Joules](t, c.Values, "heat")) / float64(published.Value[quantity.CubicMetres](t, c.Values, "volume"))
	if part := dieselHeat / held; part < 0.6 || part > 1 {
		t.Errorf("the heater uses %.2f of the heat of diesel", part)
	}
}

func TestFuelProperties(t *testing.T) {
	check := func(a, b uint16) bool {
		gas, other := quantity.KilogramsPerSecond(a)+1, quantity.KilogramsPerSecond(b)+1
		heat := func(rate quantity.KilogramsPerSecond) float64 { w, _ := GasHeat(rate); return float64(w) }
		warm := func(rate quantity.KilogramsPerSecond) float64 {
			w, _ := DieselHeat(quantity.CubicMetresPerSecond(rate))
			return float64(w)
		}
		return near(heat(gas+other), heat(gas)+heat(other)) && near(warm(gas+other), warm(gas)+warm(other)) && // rates add up
			heat(gas) < ButaneHeat*float64(gas) // nothing gives all of its heat to the van
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func TestFuelRefuses(t *testing.T) {
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got, err := GasHeat(quantity.KilogramsPerSecond(v)); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("GasHeat(%g) = %g, %v", v, got, err)
		}
		if got, err := DieselHeat(quantity.CubicMetresPerSecond(v)); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("DieselHeat(%g) = %g, %v", v, got, err)
		}
	}
}
