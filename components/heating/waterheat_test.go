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

// bath is the water of a published check.
type bath struct {
	volume   quantity.CubicMetres
	from, to quantity.Kelvins
}

func bathOf(t *testing.T, c published.Check) bath {
	t.Helper()
	return bath{
		published.Value[quantity.CubicMetres](t, c.Values, "volume"),
		published.Value[quantity.Kelvins](t, c.Values, "from"),
		published.Value[quantity.Kelvins](t, c.Values, "to"),
	}
}

func (b bath) heat(t *testing.T) float64 {
	t.Helper()
	got, err := HeatEnergy(b.volume, b.from, b.to)
	if err != nil {
		t.Fatal(err)
	}
	return float64(got)
}

func (b bath) time(t *testing.T, power quantity.Watts) float64 {
	t.Helper()
	got, err := HeatTime(b.volume, b.from, b.to, power)
	if err != nil {
		t.Fatal(err)
	}
	return float64(got)
}

func TestHeatEnergyPublished(t *testing.T) {
	checks := published.Read(t, "heat")
	for _, id := range []string{"ten-litres", "two-litres", "twenty-litres", "kettle", "school-kettle"} {
		c := published.Get(t, checks, id)
		c.Same(t, "heat", bathOf(t, c).heat(t), float64(published.Value[quantity.Joules](t, c.Values, "heat")))
	}
}

func TestHeatTimePublished(t *testing.T) {
	checks := published.Read(t, "heat")
	for _, id := range []string{"ten-litres-850-w", "ten-litres-1300-w", "twenty-litres", "kettle", "school-kettle", "wrong-answer-put-right"} {
		c := published.Get(t, checks, id)
		got := bathOf(t, c).time(t, published.Value[quantity.Watts](t, c.Values, "power"))
		c.Same(t, "time", got, float64(published.Value[quantity.Seconds](t, c.Values, "time")))
	}
}

// What the table assumes gives what everybody knows of such a boiler.
func TestHeatTimeCommonPractice(t *testing.T) {
	checks := published.Read(t, "heat")
	time := func(c published.Check) float64 {
		b := bath{published.Value[quantity.CubicMetres](t, c.Values, "volume"), ColdWater, HotWater}
		return b.time(t, published.Value[quantity.Watts](t, c.Values, "power"))
	}
	low := published.Get(t, checks, "boiler-750-w")
	low.Same(t, "time", time(low), float64(published.Value[quantity.Seconds](t, low.Values, "time")))
	high := published.Get(t, checks, "boiler-1850-w")
	if got, under := time(high), float64(published.Value[quantity.Seconds](t, high.Values, "under")); got >= under {
		t.Errorf("%s: %g s, expected under %g s", high.What, got, under)
	}
	both := published.Get(t, checks, "together")
	power := func(name string) quantity.Watts { return published.Value[quantity.Watts](t, both.Values, name) }
	b := bath{published.Value[quantity.CubicMetres](t, both.Values, "volume"), ColdWater, HotWater}
	part := float64(published.Value[quantity.Fraction](t, both.Values, "part"))
	if got, alone := b.time(t, power("gas")+power("mains")), b.time(t, max(power("gas"), power("mains"))); got > part*alone {
		t.Errorf("%s: %g s, and %g s on the stronger alone", both.What, got, alone)
	}
}

// The constants never make water warm sooner than its properties do, but for
// 0.2 %, and are nowhere 4 % too slow.
func TestHeatOfWaterProperties(t *testing.T) {
	list := published.Get(t, published.Read(t, "heat"), "water-properties")
	ours := heatCapacity * waterDensity / 1000 // one litre, one kelvin
	for _, row := range list.Rows {
		printed := float64(published.Value[quantity.Joules](t, row, "heat"))
		if ours < printed*0.998 || ours > printed*1.04 {
			t.Errorf("at %s the list has %g J, the formula %g J (%s)", row["at"], printed, ours, list.Source)
		}
	}
}

func TestHeatTimeProperties(t *testing.T) {
	check := func(litres, low, rise uint8, a, b uint16) bool {
		from := freezing + quantity.Kelvins(low%50)
		w := bath{quantity.CubicMetres(litres%40+1) / 1000, from, from + quantity.Kelvins(rise%49) + 1}
		one, other := quantity.Watts(a)+1, quantity.Watts(b)+1
		both := w.time(t, one+other)
		bigger, hotter, warmer := w, w, w
		bigger.volume *= 2
		hotter.to += 0.5
		warmer.from += 0.5
		return both < w.time(t, one) && both < w.time(t, other) && // both are faster than either
			near(1/both, 1/w.time(t, one)+1/w.time(t, other)) && // powers add up
			near(bigger.time(t, one), 2*w.time(t, one)) &&
			hotter.time(t, one) > w.time(t, one) &&
			warmer.time(t, one) < w.time(t, one) &&
			near(w.time(t, one)*float64(one), w.heat(t)) // all of the power goes into the water
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-12*math.Max(math.Abs(a), math.Abs(b)) }

func TestHeatTimeRefuses(t *testing.T) {
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		refused(t, quantity.CubicMetres(v), ColdWater, HotWater, 1000)
		refused(t, 0.01, ColdWater, HotWater, quantity.Watts(v))
	}
	kelvins := func(v float64) quantity.Kelvins { return quantity.Kelvins(v) }
	for _, c := range []struct{ from, to quantity.Kelvins }{
		{HotWater, ColdWater},
		{ColdWater, ColdWater},
		{freezing - 1, HotWater}, // ice
		{ColdWater, boiling + 1}, // steam
		{kelvins(math.NaN()), HotWater},
		{ColdWater, kelvins(math.NaN())},
		{kelvins(math.Inf(-1)), HotWater},
		{ColdWater, kelvins(math.Inf(1))},
		{15, 60}, // °C taken for K
	} {
		refused(t, 0.01, c.from, c.to, 1000)
	}
}

func refused(t *testing.T, volume quantity.CubicMetres, from, to quantity.Kelvins, power quantity.Watts) {
	t.Helper()
	got, err := HeatTime(volume, from, to, power)
	if !errors.Is(err, calc.ErrOutside) || got != 0 {
		t.Errorf("HeatTime(%g, %g, %g, %g) gives %g, %v", float64(volume), float64(from), float64(to), float64(power), float64(got), err)
	}
}
