package toilet

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

func dose(t *testing.T, label, of, tank quantity.CubicMetres) float64 {
	t.Helper()
	got, err := Dose(label, of, tank)
	if err != nil {
		t.Fatal(err)
	}
	return float64(got)
}

func TestDosePublished(t *testing.T) {
	checks := published.Read(t, "toilet")
	for _, id := range []string{"label-doses", "tank-doses"} {
		c := published.Get(t, checks, id)
		for _, row := range c.Rows {
			volume := func(name string) quantity.CubicMetres {
				return published.Value[quantity.CubicMetres](t, row, name)
			}
			c.Same(t, row["dose"]+" for "+row["of"]+" in "+row["tank"], dose(t, volume("dose"), volume("of"), volume("tank")), float64(volume("here")))
		}
	}
}

func TestDoseAgainstGNUUnits(t *testing.T) {
	want := gnuunits.Number(t, "4 brfluidounce * 12 brgallon / (24 liter)", "m^3")
	if got := dose(t, 4*28.4130625e-6, 24*litre, 12*4.54609*litre); math.Abs(got-want) > 1e-9*want {
		t.Errorf("%g m³, GNU units says %g m³", got, want)
	}
}

func TestDoseProperties(t *testing.T) {
	check := func(a, b uint16, scale uint8) bool {
		label, of := quantity.CubicMetres(a%300+10)*litre/1000, quantity.CubicMetres(b%40+5)*litre
		tank := of * quantity.CubicMetres(0.25+float64(scale)/256*1.5) // leaves room for twice as large
		here := dose(t, label, of, tank)
		return near(dose(t, label, of, of), float64(label)) && // the tank of the label takes its dose
			near(dose(t, 2*label, of, tank), 2*here) &&
			near(dose(t, label, of, 2*tank), 2*here) &&
			near(here/float64(tank), float64(label)/float64(of)) // as strong as the label says
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func TestDoseRefuses(t *testing.T) {
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		bad := quantity.CubicMetres(v)
		for what, c := range map[string][3]quantity.CubicMetres{"dose": {bad, 0.02, 0.02}, "tank of the label": {1e-4, bad, 0.02}, "tank": {1e-4, 0.02, bad}} {
			if got, err := Dose(c[0], c[1], c[2]); !errors.Is(err, calc.ErrOutside) || got != 0 {
				t.Errorf("%s of %g: %g, %v", what, v, got, err)
			}
		}
	}
	for _, tank := range []quantity.CubicMetres{0.0049, 0.0801} { // the label speaks of 20 L
		if got, err := Dose(1e-4, 0.02, tank); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("a tank of %g m³: %g, %v", tank, got, err)
		}
	}
	for _, tank := range []quantity.CubicMetres{0.005, 0.08} {
		if _, err := Dose(1e-4, 0.02, tank); err != nil {
			t.Errorf("a tank of %g m³: %v", tank, err)
		}
	}
}
