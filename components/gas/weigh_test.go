package gas

import (
	"errors"
	"testing"
	"testing/quick"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func TestWeighPublished(t *testing.T) {
	c := published.Get(t, published.Read(t, "gas_cold"), "stamped-cylinder")
	for _, row := range c.Rows {
		net, tare, full := published.Value[quantity.Kilograms](t, row, "net"), published.Value[quantity.Kilograms](t, row, "tare"), published.Value[quantity.Kilograms](t, row, "full")
		left, err := GasLeft(full, tare)
		if err != nil {
			t.Fatal(err)
		}
		c.Same(t, "gas", float64(left), float64(net))
		reading, err := Reading(net, tare)
		if err != nil {
			t.Fatal(err)
		}
		c.Same(t, "reading", float64(reading), float64(full))
	}
}

// A reading made of a tare and some gas gives the gas back; a kilogram more on
// the scale is a kilogram more of gas.
func TestGasLeftAndReading(t *testing.T) {
	check := func(a, b uint32) bool {
		left, tare := kilograms(a), kilograms(b)
		reading, err := Reading(left, tare)
		if err != nil {
			return false
		}
		back, err := GasLeft(reading, tare)
		more, err2 := GasLeft(reading+1, tare)
		return err == nil && err2 == nil && alike(back, left) && alike(more-back, 1)
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

// alike allows for what a subtraction loses.
func alike(a, b quantity.Kilograms) bool { return a-b < 1e-9 && b-a < 1e-9 }

func TestGasLeftRefuses(t *testing.T) {
	for _, v := range bad {
		for _, pair := range [][2]quantity.Kilograms{{quantity.Kilograms(v), 5}, {11, quantity.Kilograms(v)}} {
			if left, err := GasLeft(pair[0], pair[1]); !errors.Is(err, calc.ErrOutside) || left != 0 {
				t.Errorf("GasLeft%v gives %v, %v", pair, left, err)
			}
			if reading, err := Reading(pair[0], pair[1]); !errors.Is(err, calc.ErrOutside) || reading != 0 {
				t.Errorf("Reading%v gives %v, %v", pair, reading, err)
			}
		}
	}
	for _, reading := range []quantity.Kilograms{4.9, 5} { // empty, or the tare of another
		if left, err := GasLeft(reading, 5); !errors.Is(err, calc.ErrOutside) || left != 0 {
			t.Errorf("GasLeft(%g, 5) gives %v, %v", float64(reading), left, err)
		}
	}
}
