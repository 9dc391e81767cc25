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

func TestLeftPublished(t *testing.T) {
	checks := published.Read(t, "vehicle")
	for _, id := range []string{"payload-handbook", "payload-article"} {
		c := published.Get(t, checks, id)
		mass := func(name string) quantity.Kilograms { return published.Value[quantity.Kilograms](t, c.Values, name) }
		left, err := Left(mass("maximum"), mass("running"))
		if err != nil {
			t.Fatal(err)
		}
		c.Same(t, "difference", float64(left), float64(mass("difference")))
		if id == "payload-article" {
			continue
		}
		c.Same(t, "people", float64(3*Person), float64(mass("people")))
		left, err = Left(mass("maximum"), mass("running")+3*Person+mass("fittings"))
		if err != nil {
			t.Fatal(err)
		}
		c.Same(t, "left", float64(left), float64(mass("left")))
	}
}

// What is loaded is taken off what is left, kilogram for kilogram, and beyond
// nothing.
func TestLeftAddsUp(t *testing.T) {
	check := func(a, b, c uint16) bool {
		maximum, actual, more := quantity.Kilograms(a)+1, quantity.Kilograms(b)+1, quantity.Kilograms(c)
		left, err := Left(maximum, actual)
		then, err2 := Left(maximum, actual+more)
		return err == nil && err2 == nil && near(left-then, more) && (left < 0) == (actual > maximum)
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func TestPayloadRefuses(t *testing.T) {
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		v := quantity.Kilograms(bad)
		if got, err := Left(v, 3000); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("Left(%g, 3000) gives %g, %v", bad, float64(got), err)
		}
		if got, err := Left(3500, v); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("Left(3500, %g) gives %g, %v", bad, float64(got), err)
		}
		if got, err := HouseThings(quantity.Metres(bad)); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("HouseThings(%g) gives %g, %v", bad, float64(got), err)
		}
	}
	if got, err := HouseThings(20.1); !errors.Is(err, calc.ErrOutside) || got != 0 {
		t.Errorf("HouseThings(20.1) gives %g, %v", float64(got), err)
	}
	for _, bad := range []float64{-1, math.NaN(), math.Inf(1)} {
		if got, err := liquid(quantity.CubicMetres(bad), waterDensity); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("liquid(%g) gives %g, %v", bad, float64(got), err)
		}
	}
}
