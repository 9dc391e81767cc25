package calc

import (
	"errors"
	"math"
	"testing"

	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func TestPositive(t *testing.T) {
	for _, v := range []float64{0, math.Copysign(0, -1), -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got, err := Positive("power", quantity.Watts(v)); !errors.Is(err, ErrOutside) || got != 0 {
			t.Errorf("Positive(%v) gives %v, %v; expected a refusal", v, got, err)
		}
	}
	for _, v := range []float64{math.SmallestNonzeroFloat64, 1, math.MaxFloat64} {
		if got, err := Positive("power", quantity.Watts(v)); err != nil || float64(got) != v {
			t.Errorf("Positive(%v) gives %v, %v", v, got, err)
		}
	}
}

func TestTake(t *testing.T) {
	for _, c := range []struct {
		name string
		fact table.Fact
		want string // of the error, empty for none
	}{
		{"stated", table.Fact{Name: "power", Quantity: quantity.Of(quantity.Watts(750))}, ""},
		{"absent", table.Fact{Name: "power"}, "power is not stated"},
		{"another dimension", table.Fact{Name: "power", Quantity: quantity.Of(quantity.Kilograms(1))}, "power: expected power, got mass"},
		{"nothing", table.Fact{Name: "power", Quantity: quantity.Of(quantity.Watts(0))},
			"power is 0 W, which must be above zero: outside what the formula holds for"},
		{"negative", table.Fact{Name: "power", Quantity: quantity.Of(quantity.Watts(-5))},
			"power is -5 W, which must be above zero: outside what the formula holds for"},
	} {
		v, err := Take[quantity.Watts](c.fact)
		switch {
		case c.want == "" && (err != nil || v != 750):
			t.Errorf("%s: %v, %v", c.name, v, err)
		case c.want != "" && (err == nil || err.Error() != c.want || v != 0):
			t.Errorf("%s: %v, %v; expected %q", c.name, v, err, c.want)
		}
	}
}
