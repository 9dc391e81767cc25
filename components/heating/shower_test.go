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

func TestMixedWaterPublished(t *testing.T) {
	checks := published.Read(t, "water")
	for _, id := range []string{"shower-mix", "shower-mix-enthalpy"} {
		c := published.Get(t, checks, id)
		kelvins := func(name string) quantity.Kelvins { return published.Value[quantity.Kelvins](t, c.Values, name) }
		got, err := MixedWater(published.Value[quantity.CubicMetres](t, c.Values, "hot"), kelvins("hot_at"), kelvins("cold"), kelvins("mixed"))
		if err != nil {
			t.Fatal(err)
		}
		c.Same(t, "mixed water", float64(got), float64(published.Value[quantity.CubicMetres](t, c.Values, "water")))
	}
}

// What the shower takes up is what the boiler gave.
func TestMixedWaterKeepsTheHeat(t *testing.T) {
	check := func(litres, cold, mixed, hot uint8) bool {
		tc := freezing + quantity.Kelvins(cold%20)
		tm := tc + quantity.Kelvins(mixed%30) + 1
		th := tm + quantity.Kelvins(hot%40)
		volume := quantity.CubicMetres(litres%40+1) / 1000
		water, err := MixedWater(volume, th, tc, tm)
		if err != nil {
			return false
		}
		gave, err := HeatEnergy(volume, tc, th)
		if err != nil {
			return false
		}
		took, err := HeatEnergy(water, tc, tm)
		if err != nil {
			return false
		}
		colder, err := MixedWater(volume, th, tc, tm-0.5)
		return err == nil && near9(float64(gave), float64(took)) && water >= volume && colder > water
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

// The flows of the table are those of common practice.
func TestShowerFlows(t *testing.T) {
	c := published.Get(t, published.Read(t, "water"), "shower-flow")
	least, most := published.Value[quantity.CubicMetresPerSecond](t, c.Values, "least"), published.Value[quantity.CubicMetresPerSecond](t, c.Values, "most")
	if !near9(float64(thinFlow), float64(least)) || !near9(float64(fullFlow), float64(most)) {
		t.Errorf("flows of %g and %g m³/s, expected %g and %g", thinFlow, fullFlow, least, most)
	}
}

func TestFlowTime(t *testing.T) {
	got, err := FlowTime(0.0173, 6*litreAMinute)
	if err != nil || !near9(float64(got), 173) {
		t.Errorf("17.3 L at 6 L/min run %g s, %v", got, err)
	}
}

func TestShowerRefuses(t *testing.T) {
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got, err := MixedWater(quantity.CubicMetres(v), HotWater, ColdWater, freezing+40); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("%g m³ of hot water: %g, %v", v, got, err)
		}
		if got, err := FlowTime(quantity.CubicMetres(v), thinFlow); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("%g m³: %g, %v", v, got, err)
		}
		if got, err := FlowTime(0.01, quantity.CubicMetresPerSecond(v)); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("a flow of %g: %g, %v", v, got, err)
		}
	}
	nan := quantity.Kelvins(math.NaN())
	for _, c := range [][3]quantity.Kelvins{ // hot, cold, mixed
		{HotWater, ColdWater, ColdWater}, {HotWater, ColdWater, HotWater + 1}, {HotWater, freezing - 1, ColdWater}, {boiling + 1, ColdWater, HotWater},
		{nan, ColdWater, HotWater}, {HotWater, nan, HotWater}, {HotWater, ColdWater, nan}, {60, 15, 40}, // °C taken for K
	} {
		if got, err := MixedWater(0.01, c[0], c[1], c[2]); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("%v: %g, %v", c, got, err)
		}
	}
}
