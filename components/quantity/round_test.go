package quantity

import "testing"

func TestRounding(t *testing.T) {
	for _, c := range []struct {
		x        float64
		decimals int
		rounding Rounding
		want     int64
	}{
		{4.999999999, 0, Up, 5}, {4.999999999, 0, Down, 5}, {5.000000001, 0, Up, 5}, {5.000000001, 0, Down, 5},
		{4.99999, 0, Up, 5}, {4.99999, 0, Down, 4}, {5.00001, 0, Up, 6}, {5.00001, 0, Down, 5},
		{0.1 + 0.2, 1, Up, 3}, {0.3, 1, Down, 3}, {1.1 * 1.1, 2, Up, 121}, {2.3 * 100, 0, Down, 230},
		{1.005, 2, Nearest, 101}, {2.5, 0, Nearest, 3}, {-2.5, 0, Nearest, -3}, {0.5, 0, Nearest, 1},
		{2.4999999999, 0, Nearest, 3}, {2.49, 0, Nearest, 2}, {0.49999, 0, Nearest, 0}, {-0.5, 0, Nearest, -1},
		{-4.2, 0, Up, -4}, {-4.2, 0, Down, -5}, {-0.2, 0, Up, 0}, {-4.999999999999, 0, Up, -5},
		{1e-17, 0, Up, 0}, {-1e-17, 0, Down, 0}, {1e-5, 0, Up, 1}, {-1e-5, 0, Down, -1},
		{79.770755751615084, 1, Nearest, 798}, {79.770755751615084, 1, Down, 797}, {79.770755751615084, 0, Up, 80},
		{123456789.25, 1, Nearest, 1234567893}, {99999999999.5, 0, Up, 100000000000}, {99999999999.5, 0, Down, 99999999999},
	} {
		got, ok := c.rounding.scaled(c.x, c.decimals)
		if !ok || got != c.want {
			t.Errorf("%v %s at %d decimals: %d, expected %d", c.x, c.rounding, c.decimals, got, c.want)
		}
	}
	for _, x := range []float64{1e15, -1e15, 1e300} {
		if n, ok := Nearest.scaled(x, 0); ok {
			t.Errorf("%v counts as %d", x, n)
		}
	}
}

func TestSensibleDecimals(t *testing.T) {
	kg, bar, mm := mustUnit(t, Mass, "kg"), mustUnit(t, Pressure, "bar"), mustUnit(t, Length, "mm")
	for _, c := range []struct {
		x    float64
		unit Unit
		want int
	}{
		{123.4, kg, 1}, {5, kg, 1}, {0.5, kg, 2}, {0.05, kg, 3}, {0.0000000001, kg, 6}, {0, kg, 1},
		{5.516, bar, 2}, {0.03, bar, 3}, {1.6, mm, 1}, {16, mm, 0}, {-1.6, mm, 1}, {0.1, mm, 2},
	} {
		if got := sensibleDecimals(c.x, c.unit); got != c.want {
			t.Errorf("%v %s has %d decimals, expected %d", c.x, c.unit, got, c.want)
		}
	}
}
