package gas

import (
	"errors"
	"testing"

	"doorpocket/components/heating"
	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func heatMass(t *testing.T, heat quantity.Joules, part quantity.Fraction, gas string) quantity.Kilograms {
	t.Helper()
	m, err := HeatMass(heat, part, gas)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestHeatMassPublished(t *testing.T) {
	checks := published.Read(t, "gas_heat")
	rule := published.Get(t, checks, "trade-rule")
	for _, gas := range []string{"propane", "butane"} {
		got := heatMass(t, published.Value[quantity.Joules](t, rule.Values, "heat"), 1, gas)
		rule.Same(t, gas, float64(got), float64(published.Value[quantity.Kilograms](t, rule.Values, "gas")))
	}
	net := published.Get(t, checks, "net-heat")
	for _, row := range net.Rows {
		net.Same(t, row["gas"], float64(heatMass(t, published.Value[quantity.Joules](t, row, "heat"), 1, row["gas"])), 1)
	}
	heater := published.Get(t, checks, "heater-of-five-kilowatts")
	output := published.Value[quantity.Watts](t, heater.Values, "output")
	rate := published.Value[quantity.KilogramsPerSecond](t, heater.Values, "rate")
	heat := quantity.Joules(float64(output) * float64(hour))
	want := float64(rate) * float64(hour)
	heater.Same(t, "by the part used", float64(heatMass(t, heat, published.Value[quantity.Fraction](t, heater.Values, "efficiency"), "propane")), want)
	if got := heatMass(t, heat, heating.GasUsed, "propane"); float64(got) < want {
		t.Errorf("the usual part gives %g kg, less than the %g kg of %s", float64(got), want, heater.Source)
	}
	run, err := RunMass(heat, rate, output, "propane")
	if err != nil {
		t.Fatal(err)
	}
	heater.Same(t, "by the plate", float64(run), want)
}

func TestHeatMassProperties(t *testing.T) {
	base := heatMass(t, 1e7, 0.5, "propane")
	if !near(float64(heatMass(t, 2e7, 0.5, "propane")), 2*float64(base)) || !near(float64(heatMass(t, 1e7, 1, "propane")), float64(base)/2) {
		t.Error("twice the heat does not take twice the gas, or twice the efficiency not half of it")
	}
	if heatMass(t, 1e7, 0.5, "mixture") < base || heatMass(t, 1e7, 0.5, "mixture") < heatMass(t, 1e7, 0.5, "butane") {
		t.Error("a mixture takes less gas than one of its parts")
	}
	for gas := range netHeat {
		if grossHeat[gas] <= netHeat[gas] || grossHeat[gas] > 1.11*netHeat[gas] {
			t.Errorf("%s: %g J/kg gross and %g J/kg net", gas, grossHeat[gas], netHeat[gas])
		}
	}
}

func TestHeatMassRefuses(t *testing.T) {
	for _, v := range bad {
		for i, err := range []error{
			second(HeatMass(quantity.Joules(v), 0.8, "propane")),
			second(HeatMass(1e6, quantity.Fraction(v), "propane")),
			second(RunMass(quantity.Joules(v), 1e-4, 1000, "propane")),
			second(RunMass(1e6, quantity.KilogramsPerSecond(v), 1000, "propane")),
			second(RunMass(1e6, 1e-4, quantity.Watts(v), "propane")),
		} {
			if !errors.Is(err, calc.ErrOutside) {
				t.Errorf("case %d of %g gives %v", i, v, err)
			}
		}
	}
	for i, err := range []error{
		second(HeatMass(1e6, 1.01, "propane")), second(HeatMass(1e6, 0.8, "steam")), second(RunMass(1e6, 1e-4, 1000, "")),
		second(RunMass(1e6, 1e-4, 5100, "propane")), // 5033 W are in the gas
	} {
		if !errors.Is(err, calc.ErrOutside) {
			t.Errorf("case %d gives %v", i, err)
		}
	}
}

func second(_ quantity.Kilograms, err error) error { return err }
