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

func fills(t *testing.T, tank quantity.CubicMetres, part quantity.Fraction, first quantity.CubicMetres, people int, each quantity.CubicMetres) float64 {
	t.Helper()
	got, err := FillTime(tank, part, first, people, each)
	if err != nil {
		t.Fatal(err)
	}
	return float64(got)
}

func TestFillTimePublished(t *testing.T) {
	c := published.Get(t, published.Read(t, "toilet"), "two-people")
	volume := func(name string) quantity.CubicMetres {
		return published.Value[quantity.CubicMetres](t, c.Values, name)
	}
	c.Same(t, "two people", fills(t, volume("tank"), 1, 0, 2, volume("each")), float64(published.Value[quantity.Seconds](t, c.Values, "time")))
	cassette := fillings["toilet/cassette"]
	c.Same(t, "what the table counts for a person", float64(cassette.each), float64(volume("each")))
}

// For two people the table says what the trade prints for a cassette: a small
// one is never said to last longer, a large one lasts at least the shortest.
func TestFillTimeOfTheTrade(t *testing.T) {
	c := published.Get(t, published.Read(t, "toilet"), "trade-days")
	seconds := func(name string) float64 { return float64(published.Value[quantity.Seconds](t, c.Values, name)) }
	f := fillings["toilet/cassette"]
	for _, size := range []string{"small", "large"} {
		got := fills(t, published.Value[quantity.CubicMetres](t, c.Values, size), 1, f.first, 2, f.each)
		if got > seconds("most") {
			t.Errorf("the %s cassette lasts %.3g d, the trade says %s at most (%s)", size, got/float64(day), c.Values["most"], c.Source)
		}
		if size == "large" && got < seconds("least") {
			t.Errorf("the large cassette lasts %.3g d, the trade says %s at least (%s)", got/float64(day), c.Values["least"], c.Source)
		}
	}
}

func TestFillingPublished(t *testing.T) {
	checks := published.Read(t, "toilet")
	c := published.Get(t, checks, "urine")
	if least, most := published.Value[quantity.CubicMetres](t, c.Values, "least"), published.Value[quantity.CubicMetres](t, c.Values, "most"); urine < least || urine > most {
		t.Errorf("%g m³ a person, expected within %g and %g m³ (%s)", urine, least, most, c.Source)
	}
	part := published.Get(t, checks, "two-thirds")
	part.Same(t, "best emptied at", float64(emptyAt), float64(published.Value[quantity.Fraction](t, part.Values, "part")))
	first := published.Get(t, checks, "first-water")
	first.Same(t, "first water", float64(firstWater), float64(published.Value[quantity.CubicMetres](t, first.Values, "water")))
}

func TestFillTimeAgainstGNUUnits(t *testing.T) {
	for _, c := range []struct {
		sum   string
		tank  quantity.CubicMetres
		part  quantity.Fraction
		first quantity.CubicMetres
		n     int
		each  quantity.CubicMetres
	}{
		{"(2|3 * 18 liter - 2 liter) / (2 * 2.5 liter/day)", 18 * litre, emptyAt, 2 * litre, 2, 2.5 * litre},
		{"(5 usgallon - 0.5 usgallon) / (3 * 1.5 liter/day)", 5 * 3.785411784 * litre, 1, 0.5 * 3.785411784 * litre, 3, 1.5 * litre},
	} {
		want := gnuunits.Number(t, c.sum, "s")
		if got := fills(t, c.tank, c.part, c.first, c.n, c.each); math.Abs(got-want) > 1e-9*want {
			t.Errorf("%s: %g s, GNU units says %g s", c.sum, got, want)
		}
	}
}

func TestFillTimeProperties(t *testing.T) {
	check := func(a, b, c uint16, n uint8) bool {
		tank, first := quantity.CubicMetres(a%290+10)*litre, quantity.CubicMetres(b%5)*litre
		each, people := quantity.CubicMetres(c%60+5)*litre/10, int(n%6)+1
		time := fills(t, tank, 1, first, people, each)
		whole := time // filling the first water too
		if first > 0 {
			whole += fills(t, first, 1, 0, people, each)
		}
		return near(fills(t, tank, 1, 0, people, each), whole) &&
			near(fills(t, tank, 1, first, 2*people, each), time/2) &&
			near(fills(t, tank, 1, first, people, 2*each), time/2) &&
			fills(t, tank, 0.9, first, people, each) < time && // a lower level is reached sooner
			fills(t, tank+litre, 1, first, people, each) > time
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(math.Abs(a), math.Abs(b)) }

func TestFillTimeRefuses(t *testing.T) {
	bad := func(what string, v float64, got quantity.Seconds, err error) {
		t.Helper()
		if !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("%s of %g: %g, %v", what, v, got, err)
		}
	}
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		volume := quantity.CubicMetres(v)
		got, err := FillTime(volume, 1, 0, 2, urine)
		bad("tank", v, got, err)
		got, err = FillTime(0.02, quantity.Fraction(v), 0, 2, urine)
		if v != 1 {
			bad("level", v, got, err)
		}
		got, err = FillTime(0.02, 1, 0, 2, volume)
		bad("each", v, got, err)
		if v != 0 {
			got, err = FillTime(0.02, 1, volume, 2, urine)
			bad("first water", v, got, err)
		}
	}
	got, err := FillTime(0.02, 1.01, 0, 2, urine)
	bad("level", 1.01, got, err)
	got, err = FillTime(0.02, 0.1, 2*litre, 2, urine) // the first water alone is as much
	bad("first water", 0.002, got, err)
	for _, people := range []int{0, -1} {
		got, err := FillTime(0.02, 1, 0, people, urine)
		bad("people", float64(people), got, err)
	}
}
