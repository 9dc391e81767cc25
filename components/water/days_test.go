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

func lasts(t *testing.T, tank quantity.CubicMetres, people int, each quantity.CubicMetres) quantity.Seconds {
	t.Helper()
	got, err := Lasts(tank, people, each)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// What the table counts for a person lies where the published needs put it: with
// care and as usual within the basic need, with a shower between that of a house
// at the least and with good hygiene.
func TestUsePublished(t *testing.T) {
	checks := published.Read(t, "water")
	litres := func(id, name string) quantity.CubicMetres {
		return published.Value[quantity.CubicMetres](t, published.Get(t, checks, id).Values, name)
	}
	if least, most := litres("basic-need", "least"), litres("basic-need", "most"); sparing < least || sparing >= usual || usual > most {
		t.Errorf("%g m³ with care and %g m³ as usual, expected within %g and %g m³", sparing, usual, least, most)
	}
	if least, most := litres("house", "least"), litres("house", "hygiene"); showers < least || showers > most {
		t.Errorf("%g m³ with a shower, expected within %g and %g m³", showers, least, most)
	}
	shower := published.Get(t, checks, "short-shower")
	shower.Same(t, "a shower", float64(showers-usual), float64(litres("short-shower", "water")))
	flow := published.Value[quantity.CubicMetresPerSecond](t, shower.Values, "flow")
	time := published.Value[quantity.Seconds](t, shower.Values, "time")
	shower.Same(t, "flow times time", float64(flow)*float64(time), float64(litres("short-shower", "water")))
	flows := published.Get(t, checks, "shower-flow").Values
	if flow < published.Value[quantity.CubicMetresPerSecond](t, flows, "least") || flow > published.Value[quantity.CubicMetresPerSecond](t, flows, "most") {
		t.Errorf("a shower of %g m³/s is none of a van", flow)
	}
}

func TestLastsPublished(t *testing.T) {
	checks := published.Read(t, "water")
	c, need := published.Get(t, checks, "tank-for-basic-need"), published.Get(t, checks, "basic-need")
	tank := published.Value[quantity.CubicMetres](t, c.Values, "tank")
	for use, want := range map[string]string{"most": "least", "least": "most"} { // the more one uses, the shorter
		days := calc.StepDown(lasts(t, tank, 2, published.Value[quantity.CubicMetres](t, need.Values, use)), day)
		if expected := published.Value[quantity.Seconds](t, c.Values, want); math.Abs(float64(days-expected)) > 1e-6 {
			t.Errorf("%g s, expected %g s (%s)", days, expected, c.Source)
		}
	}
}

func TestLastsAgainstGNUUnits(t *testing.T) {
	for _, c := range []struct {
		sum    string
		tank   quantity.CubicMetres
		people int
		each   quantity.CubicMetres
	}{
		{"100 liter / (2 * 15 liter/day)", 100 * litre, 2, 15 * litre},
		{"25 brgallon / (3 * 2 usgallon/day)", 25 * 4.54609 * litre, 3, 2 * 3.785411784 * litre},
		{"0.4 m^3 / (1 * 7.5 liter/day)", 0.4, 1, 7.5 * litre},
	} {
		want := gnuunits.Number(t, c.sum, "s")
		if got := float64(lasts(t, c.tank, c.people, c.each)); math.Abs(got-want) > 1e-9*want {
			t.Errorf("%s: %g s, GNU units says %g s", c.sum, got, want)
		}
	}
}

func TestLastsProperties(t *testing.T) {
	check := func(a, b uint16, n uint8) bool {
		tank, each, people := quantity.CubicMetres(a%400+5)*litre, quantity.CubicMetres(b%50+1)*litre, int(n%6)+1
		time := float64(lasts(t, tank, people, each))
		return near(float64(lasts(t, 2*tank, people, each)), 2*time) &&
			near(float64(lasts(t, tank, 2*people, each)), time/2) &&
			near(float64(lasts(t, tank, people, 3*each)), time/3) &&
			near(1/float64(lasts(t, tank, people+1, each)), 1/time+1/float64(lasts(t, tank, 1, each))) // people add up
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(math.Abs(a), math.Abs(b)) }

func TestLastsRefuses(t *testing.T) {
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		for what, ask := range map[string]func() (quantity.Seconds, error){
			"tank": func() (quantity.Seconds, error) { return Lasts(quantity.CubicMetres(v), 2, usual) },
			"use":  func() (quantity.Seconds, error) { return Lasts(0.1, 2, quantity.CubicMetres(v)) },
		} {
			if got, err := ask(); !errors.Is(err, calc.ErrOutside) || got != 0 {
				t.Errorf("%s of %g: %g, %v", what, v, got, err)
			}
		}
	}
	for _, people := range []int{0, -1} {
		if got, err := Lasts(0.1, people, usual); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("%d people: %g, %v", people, got, err)
		}
	}
}
