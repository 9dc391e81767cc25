package gas

import (
	"errors"
	"testing"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func mass(t *testing.T, capacity quantity.CubicMetres, gas string) float64 {
	t.Helper()
	got, err := TankMass(capacity, gas)
	if err != nil {
		t.Fatal(err)
	}
	return float64(got)
}

func TestTankMassPublished(t *testing.T) {
	checks := published.Read(t, "gas")

	trade := published.Get(t, checks, "tank-of-trade-densities")
	capacity := published.Value[quantity.CubicMetres](t, trade.Values, "capacity")
	for _, gas := range []string{"propane", "butane"} {
		trade.Same(t, gas, mass(t, capacity, gas), float64(published.Value[quantity.Kilograms](t, trade.Values, gas)))
	}

	american := published.Get(t, checks, "american-cylinder")
	got := mass(t, published.Value[quantity.CubicMetres](t, american.Values, "capacity"), "propane")
	want := float64(published.Value[quantity.Kilograms](t, american.Values, "mass"))
	american.Same(t, "mass", got, want)
	if got > want {
		t.Errorf("80 %% of the volume holds %g kg, more than the %g kg that %s allows", got, want, american.Source)
	}

	atlas := published.Get(t, checks, "tank-of-atlas-densities")
	for _, row := range atlas.Rows {
		got := mass(t, published.Value[quantity.CubicMetres](t, row, "capacity"), row["gas"])
		least, most := published.Value[quantity.Kilograms](t, row, "least"), published.Value[quantity.Kilograms](t, row, "most")
		if got <= float64(least) || got >= float64(most) {
			t.Errorf("%s: %g kg, expected between %g and %g (%s)", row["gas"], got, least, most, atlas.Source)
		}
	}
}

func TestTankMassProperties(t *testing.T) {
	for _, litres := range []quantity.CubicMetres{5, 25, 60, 200} {
		v := litres / 1000
		if mass(t, v, "mixture") > mass(t, v, "propane") || mass(t, v, "mixture") > mass(t, v, "butane") {
			t.Errorf("%g L of a mixture are not the lightest", float64(litres))
		}
		if !near(mass(t, 2*v, "propane"), 2*mass(t, v, "propane")) {
			t.Errorf("two tanks of %g L do not hold twice as much as one", float64(litres))
		}
	}
}

func TestTankMassRefuses(t *testing.T) {
	for _, v := range bad {
		if got, err := TankMass(quantity.CubicMetres(v), "propane"); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("TankMass(%v) gives %v, %v", v, got, err)
		}
	}
	for _, gas := range []string{"", "Propane", "methane"} {
		if got, err := TankMass(0.06, gas); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("TankMass of %q gives %v, %v", gas, got, err)
		}
	}
}
