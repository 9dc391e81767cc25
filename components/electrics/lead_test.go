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

func drop(t *testing.T, length quantity.Metres, area quantity.SquareMetres, current quantity.Amperes, copper quantity.Kelvins) quantity.Volts {
	t.Helper()
	got, err := LeadDrop(length, area, current, copper)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestLeadDropPublished(t *testing.T) {
	checks := published.Read(t, "mains")
	rows := func(id string) []map[string]string {
		c := published.Get(t, checks, id)
		if c.Values != nil {
			return []map[string]string{c.Values}
		}
		return c.Rows
	}
	for id, copper := range map[string]quantity.Kelvins{
		"lead-25m": coolCopper, "lead-25m-warm": warmCopper, "lead-40m": coolCopper, "lead-12v": coolCopper,
	} {
		c := published.Get(t, checks, id)
		for _, row := range rows(id) {
			got := drop(t, published.Value[quantity.Metres](t, row, "length"), published.Value[quantity.SquareMetres](t, row, "area"),
				published.Value[quantity.Amperes](t, row, "current"), copper)
			c.Same(t, row["area"], float64(got), float64(published.Value[quantity.Volts](t, row, "volts")))
			if row["share"] == "" {
				continue
			}
			share := published.Value[quantity.Fraction](t, row, "share")
			if math.Abs(float64(quantity.Fraction(got/230)-share)) > 0.0005 {
				t.Errorf("%s: %g of 230 V, expected %g", id, float64(got/230), float64(share))
			}
		}
	}
	gauges := published.Get(t, checks, "gauges")
	for _, row := range gauges.Rows {
		got := drop(t, 500, published.Value[quantity.SquareMetres](t, row, "area"), 100, coolCopper)
		want := published.Value[quantity.Volts](t, row, "volts")
		gauges.Same(t, row["area"], float64(got), float64(want))
		if got < want {
			t.Errorf("a lead of %s loses less than one of solid wire", row["area"])
		}
	}
}

func TestCopperWarmthPublished(t *testing.T) {
	c := published.Get(t, published.Read(t, "mains"), "copper-warmth")
	cool := drop(t, 25, 2.5*mm2, 16, coolCopper)
	for _, row := range c.Rows {
		got := cool / drop(t, 25, 2.5*mm2, 16, published.Value[quantity.Kelvins](t, row, "copper"))
		c.Same(t, row["copper"], float64(got), float64(published.Value[quantity.Fraction](t, row, "factor")))
	}
}

func TestThinnestPublished(t *testing.T) {
	checks := published.Read(t, "mains")
	for _, id := range []string{"lead-area", "lead-area-10a"} {
		c := published.Get(t, checks, id)
		got, err := Thinnest(published.Value[quantity.Amperes](t, c.Values, "current"))
		if want := published.Value[quantity.SquareMetres](t, c.Values, "area"); err != nil || math.Abs(float64(got/want)-1) > noise {
			t.Errorf("%s: %g, %v; expected %g (%s)", id, float64(got), err, float64(want), c.Source)
		}
	}
}

// A longer, thinner or warmer lead and a larger current lose more; two leads in
// a row lose what both lose.
func TestLeadDropProperties(t *testing.T) {
	check := func(l, m, a uint8) bool {
		one, other, current := quantity.Metres(l)+1, quantity.Metres(m)+1, quantity.Amperes(a)/10+1
		both := drop(t, one+other, 2.5*mm2, current, coolCopper)
		apart := drop(t, one, 2.5*mm2, current, coolCopper) + drop(t, other, 2.5*mm2, current, coolCopper)
		return math.Abs(float64(both-apart)) < 1e-9 && both > drop(t, one, 2.5*mm2, current, coolCopper) &&
			both < drop(t, one+other, 1.5*mm2, current, coolCopper) && both < drop(t, one+other, 2.5*mm2, current, warmCopper) &&
			both < drop(t, one+other, 2.5*mm2, current+1, coolCopper)
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
	for i := 1; i < len(conductors); i++ {
		if a, b := conductors[i-1], conductors[i]; a.area >= b.area || a.resistance <= b.resistance {
			t.Errorf("%g mm² and %g mm² are out of order", float64(a.area/mm2), float64(b.area/mm2))
		}
	}
}

func TestLeadRefuses(t *testing.T) {
	refused := func(what string, err error) {
		t.Helper()
		if !errors.Is(err, calc.ErrOutside) {
			t.Errorf("%s gives %v", what, err)
		}
	}
	for _, v := range bad {
		_, err := LeadDrop(quantity.Metres(v), 2.5*mm2, 16, coolCopper)
		refused("length", err)
		_, err = LeadDrop(25, quantity.SquareMetres(v), 16, coolCopper)
		refused("area", err)
		_, err = LeadDrop(25, 2.5*mm2, quantity.Amperes(v), coolCopper)
		refused("current", err)
		_, err = LeadDrop(25, 2.5*mm2, 16, quantity.Kelvins(v))
		refused("temperature", err)
		_, err = LeadHeat(quantity.Volts(v), 16)
		refused("volts", err)
		_, err = LeadHeat(6, quantity.Amperes(v))
		refused("current of the heat", err)
		_, err = Thinnest(quantity.Amperes(v))
		refused("current of the copper", err)
	}
	_, err := LeadDrop(25, 2*mm2, 16, coolCopper)
	refused("a size that is not made", err)
	_, err = LeadDrop(25, 2.5*mm2, 16, warmCopper+1)
	refused("hot copper", err)
	_, err = LeadDrop(25, 2.5*mm2, 16, coldCopper-1)
	refused("cold copper", err)
	_, err = Thinnest(30.1)
	refused("more than a pitch gives", err)
}
