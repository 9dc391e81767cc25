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

// uValue reads a U-value, which stands as the heat through one square metre for
// one kelvin.
func uValue(t *testing.T, c published.Check, name string) Transmittance {
	t.Helper()
	return Transmittance(published.Value[quantity.Watts](t, c.Values, name))
}

func TestLossPublished(t *testing.T) {
	checks := published.Read(t, "heat_loss")

	van := published.Get(t, checks, "van-of-r-5")
	space := Space{Surface: published.Value[quantity.SquareMetres](t, van.Values, "surface"), Volume: 1}
	loss, err := LossCoefficient(space, uValue(t, van, "u"), 0)
	if err != nil {
		t.Fatal(err)
	}
	difference := published.Value[quantity.KelvinDifference](t, van.Values, "difference")
	need, err := HeatNeed(loss, freezing+quantity.Kelvins(difference), freezing)
	if err != nil {
		t.Fatal(err)
	}
	van.Same(t, "heat needed", float64(need), float64(published.Value[quantity.Watts](t, van.Values, "need")))

	steel := published.Get(t, checks, "bare-steel")
	steel.Same(t, "U-value", float64(bareSteel), float64(uValue(t, steel, "u")))

	air := published.Get(t, checks, "air")
	volume := published.Value[quantity.CubicMetres](t, air.Values, "volume")
	with, err := LossCoefficient(Space{Surface: 1, Volume: volume}, 1, 1)
	if err != nil {
		t.Fatal(err)
	}
	without, err := LossCoefficient(Space{Surface: 1, Volume: volume}, 1, 0)
	if err != nil {
		t.Fatal(err)
	}
	air.Same(t, "loss with the air", float64(with-without), float64(published.Value[quantity.Watts](t, air.Values, "loss")))
}

// A house that is built to stay warm loses less than any van may, even with
// two fifths of its walls of glass.
func TestGradesAgainstParkHome(t *testing.T) {
	c := published.Get(t, published.Read(t, "heat_loss"), "park-home")
	walls, roof, windows := uValue(t, c, "walls"), uValue(t, c, "roof"), uValue(t, c, "windows")
	home := 0.4*windows + 0.4*walls + 0.2*roof
	for name, u := range grades {
		if u <= home || u >= bareSteel {
			t.Errorf("%s: %g W/(m² K) does not lie between a park home, %g, and bare steel, %g", name, u, home, bareSteel)
		}
	}
	if grades["grade-3"] >= grades["grade-2"] || grades["grade-2"] > grades["grade-1"] {
		t.Error("a better grade loses more")
	}
}

func TestHardFrostIsTheTestOfGradeThree(t *testing.T) {
	checks := published.Read(t, "heat_loss")
	test := published.Get(t, checks, "grade-3")
	inside, outside := published.Value[quantity.Kelvins](t, test.Values, "inside"), published.Value[quantity.Kelvins](t, test.Values, "outside")
	difference := published.Value[quantity.KelvinDifference](t, published.Get(t, checks, "difference-of-grade-3").Values, "difference")
	if math.Abs(float64(inside-Warm)) > 1e-9 || math.Abs(float64(outside-HardFrost)) > 1e-9 || math.Abs(float64(inside-outside)-float64(difference)) > 1e-9 {
		t.Errorf("the need is stated for %g K inside and %g K outside, the test is %g K and %g K", Warm, HardFrost, inside, outside)
	}
}

func loss(t *testing.T, space Space, u Transmittance, n AirChanges) WattsPerKelvin {
	t.Helper()
	k, err := LossCoefficient(space, u, n)
	if err != nil {
		t.Fatal(err)
	}
	return k
}

func need(t *testing.T, k WattsPerKelvin, inside, outside quantity.Kelvins) float64 {
	t.Helper()
	p, err := HeatNeed(k, inside, outside)
	if err != nil {
		t.Fatal(err)
	}
	return float64(p)
}

func TestLossProperties(t *testing.T) {
	check := func(area, room, u, n, cold uint16) bool {
		space := Space{Surface: quantity.SquareMetres(area%200) + 1, Volume: quantity.CubicMetres(room%100) + 1}
		value, changes := Transmittance(u%500+1)/100, AirChanges(n%190)/10
		k := loss(t, space, value, changes)
		larger := Space{Surface: space.Surface * 2, Volume: space.Volume * 2}
		outside := freezing - quantity.Kelvins(cold%30)
		from, back := need(t, k, Warm, outside), WattsPerKelvin(0)
		back, err := LossFromNeed(quantity.Watts(from), Warm, outside)
		return err == nil && near(float64(back), float64(k)) && // one undoes the other
			near(float64(loss(t, larger, value, changes)), 2*float64(k)) && // twice the van loses twice as much
			loss(t, space, value+0.1, changes) > k &&
			loss(t, space, value, changes+0.1) > k &&
			near(from+need(t, k, Warm+5, Warm), need(t, k, Warm+5, outside)) && // differences add up
			need(t, k, Warm, outside-1) > from
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func TestBox(t *testing.T) {
	space, err := Box(5, 2, 2.5)
	if err != nil || !near(float64(space.Surface), 48) || !near(float64(space.Volume), 20) { // 5 x 2 x 2
		t.Errorf("a box of 5 x 2 x 2 m has %v, %v", space, err)
	}
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		m := quantity.Metres(v)
		for _, size := range [][3]quantity.Metres{{m, 2, 3}, {5, m, 3}, {5, 2, m}} {
			if space, err := Box(size[0], size[1], size[2]); !errors.Is(err, calc.ErrOutside) {
				t.Errorf("Box%v gives %v, %v", size, space, err)
			}
		}
	}
	if _, err := Box(5, 2, floorHeight); !errors.Is(err, calc.ErrOutside) {
		t.Error("a van that ends at its floor is taken")
	}
}

// Two negative sizes make a positive product and are no van all the same.
func TestBoxOfNegatives(t *testing.T) {
	if space, err := Box(-5, -2, 3); !errors.Is(err, calc.ErrOutside) {
		t.Errorf("a box of negative sides: %v, %v", space, err)
	}
}

func TestLossRefuses(t *testing.T) {
	good := Space{Surface: 70, Volume: 30}
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		cases := map[string]func() (WattsPerKelvin, error){
			"surface": func() (WattsPerKelvin, error) {
				return LossCoefficient(Space{Surface: quantity.SquareMetres(v), Volume: 30}, 1.2, 1)
			},
			"volume": func() (WattsPerKelvin, error) {
				return LossCoefficient(Space{Surface: 70, Volume: quantity.CubicMetres(v)}, 1.2, 1)
			},
			"U-value": func() (WattsPerKelvin, error) { return LossCoefficient(good, Transmittance(v), 1) },
			"need":    func() (WattsPerKelvin, error) { return LossFromNeed(quantity.Watts(v), Warm, HardFrost) },
		}
		if v != 0 {
			cases["air"] = func() (WattsPerKelvin, error) { return LossCoefficient(good, 1.2, AirChanges(v)) }
		}
		for what, ask := range cases {
			if got, err := ask(); !errors.Is(err, calc.ErrOutside) || got != 0 {
				t.Errorf("%s of %g: %g, %v", what, v, got, err)
			}
		}
		if got, err := HeatNeed(WattsPerKelvin(v), Warm, HardFrost); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("a loss of %g W/K: %g, %v", v, got, err)
		}
	}
	if _, err := LossCoefficient(good, bareSteel+0.01, 1); !errors.Is(err, calc.ErrOutside) {
		t.Error("worse than bare steel is taken")
	}
	if _, err := LossCoefficient(good, 1.2, mostChanges+0.01); !errors.Is(err, calc.ErrOutside) {
		t.Error("a gale is taken")
	}
	for _, c := range [][2]quantity.Kelvins{
		{Warm, Warm}, {freezing, Warm}, {hottest + 1, freezing}, {Warm, coldest - 1}, {20, -15}, // °C taken for K
		{quantity.Kelvins(math.NaN()), freezing}, {Warm, quantity.Kelvins(math.NaN())}, {quantity.Kelvins(math.Inf(1)), freezing},
	} {
		if got, err := HeatNeed(100, c[0], c[1]); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("%g K inside and %g K outside: %g, %v", c[0], c[1], got, err)
		}
	}
}
