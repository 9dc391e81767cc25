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

func TestRangePublished(t *testing.T) {
	c := published.Get(t, published.Read(t, "vehicle"), "range")
	for _, row := range c.Rows {
		got, err := Range(published.Value[quantity.Fraction](t, row, "level"),
			published.Value[quantity.CubicMetres](t, row, "holds"), published.Value[quantity.CubicMetres](t, row, "uses"))
		if err != nil {
			t.Fatal(err)
		}
		c.Same(t, row["level"], float64(got), float64(published.Value[quantity.Metres](t, row, "way")))
	}
	// The same of a drive battery: 0.9 * 80 kWh / 30 kWh * 100 km.
	if got, err := Range[quantity.Joules](1, 80*3.6e6, 30*3.6e6); err != nil || math.Abs(float64(got)-240e3) > 1e-6 {
		t.Errorf("80 kWh at 30 kWh go %g m, %v", float64(got), err)
	}
}

// A larger tank goes further and a thirstier van less far, in proportion; more on
// the gauge goes further.
func TestRangeProperties(t *testing.T) {
	check := func(a, b, c uint16) bool {
		level := keptBack + (1-keptBack)*quantity.Fraction(float64(a)+1)/(math.MaxUint16+1)
		holds, uses := quantity.CubicMetres(b)/1e5+0.01, quantity.CubicMetres(c)/1e6+0.001
		way, err := Range(level, holds, uses)
		twice, err2 := Range(level, 2*holds, uses)
		half, err3 := Range(level, holds, 2*uses)
		full, err4 := Range(1, holds, uses)
		same := func(x, y quantity.Metres) bool { return math.Abs(float64(x-y)) <= 1e-9*float64(y) }
		return errors.Join(err, err2, err3, err4) == nil && same(twice, 2*way) && same(2*half, way) && full >= way
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func TestRangeRefuses(t *testing.T) {
	for _, c := range [][3]float64{{0, 0.09, 0.01}, {0.1, 0.09, 0.01}, {1.01, 0.09, 0.01}, {math.NaN(), 0.09, 0.01},
		{1, 0, 0.01}, {1, -1, 0.01}, {1, 0.09, 0}, {1, 0.09, math.Inf(1)}} {
		got, err := Range(quantity.Fraction(c[0]), quantity.CubicMetres(c[1]), quantity.CubicMetres(c[2]))
		if !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("Range%v gives %g, %v", c, float64(got), err)
		}
	}
}
