package electrics

import (
	"errors"
	"testing"
	"testing/quick"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func TestSunYieldPublished(t *testing.T) {
	checks := published.Read(t, "battery")
	for _, id := range []string{"sun-july", "sun-december"} {
		c := published.Get(t, checks, id)
		energy, err := SunYield(published.Value[quantity.Watts](t, c.Values, "peak"), published.Value[quantity.Seconds](t, c.Values, "sun"),
			published.Value[quantity.Fraction](t, c.Values, "factor"))
		if err != nil {
			t.Fatal(err)
		}
		c.Same(t, "energy", float64(energy), float64(published.Value[quantity.Joules](t, c.Values, "energy")))
		charge, err := Charge(energy, houseVoltage)
		if err != nil {
			t.Fatal(err)
		}
		c.Same(t, "charge", float64(charge), float64(published.Value[quantity.Coulombs](t, c.Values, "charge")))
	}
}

// The months of each place add up to its year, and the figures of the worked
// examples are among them.
func TestSunYearsPublished(t *testing.T) {
	checks := published.Read(t, "battery")
	c := published.Get(t, checks, "sun-year")
	days := [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	for name, year := range map[string]sunYear{"north-52": north52, "north-45": north45, "north-36": north36} {
		sum := 0.0
		for i, h := range year {
			sum += h * days[i]
		}
		c.Same(t, name, sum*3600, float64(published.Value[quantity.Seconds](t, c.Values, name)))
	}
	for id, got := range map[string]float64{"sun-july": north45[6], "sun-december": north52[11]} {
		want := published.Value[quantity.Seconds](t, published.Get(t, checks, id).Values, "sun")
		if quantity.Seconds(got)*hour != want {
			t.Errorf("%s has %g h", id, got)
		}
	}
}

func TestSunYieldProperties(t *testing.T) {
	check := func(a, b, h uint8) bool {
		one, other, sun := quantity.Watts(a)+1, quantity.Watts(b)+1, quantity.Seconds(h)*300+1
		x, _ := SunYield(one, sun, systemFactor)
		y, _ := SunYield(other, sun, systemFactor)
		both, err := SunYield(one+other, sun, systemFactor)
		longer, _ := SunYield(one+other, sun+60, systemFactor)
		better, _ := SunYield(one+other, sun, 0.8)
		return err == nil && both > x && both > y && longer > both && better > both && both-x-y < 1e-6 && x+y-both < 1e-6
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func TestSunRefuses(t *testing.T) {
	refused := func(what string, err error) {
		t.Helper()
		if !errors.Is(err, calc.ErrOutside) {
			t.Errorf("%s gives %v", what, err)
		}
	}
	for _, v := range bad {
		_, err := SunYield(quantity.Watts(v), hour, 0.7)
		refused("panel", err)
		_, err = SunYield(100, quantity.Seconds(v), 0.7)
		refused("sun", err)
		_, err = SunYield(100, hour, quantity.Fraction(v))
		refused("factor", err)
		_, err = Charge(quantity.Joules(v), 12)
		refused("energy", err)
		_, err = Charge(100, quantity.Volts(v))
		refused("voltage", err)
	}
	_, err := SunYield(100, day+1, 0.7)
	refused("a day of more than 24 hours", err)
	_, err = SunYield(100, hour, 1.01)
	refused("a panel that gives more than it gets", err)
}
