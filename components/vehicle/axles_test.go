package vehicle

import (
	"errors"
	"math"
	"testing"
	"testing/quick"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func TestOnAxlesPublished(t *testing.T) {
	checks := published.Read(t, "vehicle")
	mass := func(c published.Check, name string) quantity.Kilograms {
		return published.Value[quantity.Kilograms](t, c.Values, name)
	}
	length := func(values map[string]string, name string) quantity.Metres {
		return published.Value[quantity.Metres](t, values, name)
	}
	put := func(load quantity.Kilograms, behind, wheelbase quantity.Metres) Axles {
		got, err := OnAxles(load, behind, wheelbase)
		if err != nil {
			t.Fatal(err)
		}
		return got
	}

	c := published.Get(t, checks, "axles-behind")
	got := Axles{mass(c, "front"), mass(c, "rear")}.Plus(put(mass(c, "load"), length(c.Values, "behind"), length(c.Values, "wheelbase")))
	c.Same(t, "front", float64(got.Front), float64(mass(c, "front-then")))
	c.Same(t, "rear", float64(got.Rear), float64(mass(c, "rear-then")))

	c = published.Get(t, checks, "axles-between")
	got = put(mass(c, "load"), length(c.Values, "behind"), length(c.Values, "wheelbase"))
	c.Same(t, "front", float64(got.Front), float64(mass(c, "front")))
	c.Same(t, "rear", float64(got.Rear), float64(mass(c, "rear")))

	c = published.Get(t, checks, "axles-many")
	got = Axles{}
	wheelbase := length(c.Values, "wheelbase")
	for _, row := range c.Rows {
		got = got.Plus(put(published.Value[quantity.Kilograms](t, row, "load"), length(row, "behind"), wheelbase))
	}
	c.Same(t, "front", float64(got.Front), float64(mass(c, "front")))
	c.Same(t, "rear", float64(got.Rear), float64(mass(c, "rear")))
}

// What a load puts on both axles is the load; two loads at one place are their
// sum; further back is more on the rear axle; over an axle all is on it.
func TestOnAxlesProperties(t *testing.T) {
	check := func(a, b, at, base uint16) bool {
		m, n := quantity.Kilograms(a)/100, quantity.Kilograms(b)/100
		wheelbase := 2 + quantity.Metres(base)/1e4
		behind := quantity.Metres(at)/5000 - 3
		one, err := OnAxles(m, behind, wheelbase)
		two, err2 := OnAxles(n, behind, wheelbase)
		both, err3 := OnAxles(m+n, behind, wheelbase)
		back, err4 := OnAxles(m, behind+0.5, wheelbase)
		over, err5 := OnAxles(m, wheelbase, wheelbase)
		if errors.Join(err, err2, err3, err4, err5) != nil {
			return false
		}
		sum := one.Plus(two)
		return near(one.Total(), m) && near(sum.Front, both.Front) && near(sum.Rear, both.Rear) && back.Rear >= one.Rear &&
			near(over.Rear, m) && near(over.Front, 0)
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func near(a, b quantity.Kilograms) bool { return math.Abs(float64(a-b)) < 1e-6 }

func TestChassis(t *testing.T) {
	size := Size{Length: 7, Wheelbase: 4.2, FrontOverhang: 1}
	for _, c := range []struct {
		gap  quantity.Metres
		want Chassis
	}{{0, Chassis{1, 4.2}}, {0.8, Chassis{1, 3.8}}} {
		if got, err := ChassisOf(size, c.gap); err != nil || math.Abs(float64(got.Wheelbase-c.want.Wheelbase)) > 1e-12 || got.Front != c.want.Front {
			t.Errorf("a gap of %g m gives %+v, %v", float64(c.gap), got, err)
		}
	}
	got, err := Chassis{Front: 1, Wheelbase: 4}.Load(100, 6) // 5 m behind the front axle, 1 m behind the rear one
	if err != nil || !near(got.Front, -25) || !near(got.Rear, 125) {
		t.Errorf("100 kg behind the rear axle give %+v, %v", got, err)
	}
}

func TestAxlesRefuse(t *testing.T) {
	for _, c := range [][3]float64{{-1, 1, 3}, {math.NaN(), 1, 3}, {math.Inf(1), 1, 3}, {100, 1, 0}, {100, 1, -3}, {100, math.NaN(), 3}, {100, math.Inf(1), 3}} {
		got, err := OnAxles(quantity.Kilograms(c[0]), quantity.Metres(c[1]), quantity.Metres(c[2]))
		if !errors.Is(err, calc.ErrOutside) || got != (Axles{}) {
			t.Errorf("OnAxles%v gives %+v, %v", c, got, err)
		}
	}
	for _, c := range []struct {
		size Size
		gap  quantity.Metres
	}{
		{Size{Length: 7, Wheelbase: 4}, 0},                     // no front overhang
		{Size{Length: 7, Wheelbase: 7, FrontOverhang: 1}, 0},   // longer than the van
		{Size{Length: 7, Wheelbase: 6.5, FrontOverhang: 1}, 0}, // the last axle behind the van
		{Size{Length: 7, Wheelbase: 4, FrontOverhang: 1}, 4},   // the axles of the pair further apart than all
		{Size{Length: 7, Wheelbase: 4, FrontOverhang: 1}, -0.1},
	} {
		if got, err := ChassisOf(c.size, c.gap); !errors.Is(err, calc.ErrOutside) || got != (Chassis{}) {
			t.Errorf("%+v with a gap of %g m gives %+v, %v", c.size, float64(c.gap), got, err)
		}
	}
}
