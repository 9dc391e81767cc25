package gas

import (
	"errors"
	"math"
	"testing"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func pressure(t testing.TB, part quantity.Fraction, at quantity.Kelvins) float64 {
	t.Helper()
	p, err := VapourPressure(part, at)
	if err != nil {
		t.Fatal(err)
	}
	return float64(p)
}

func limit(t testing.TB, part quantity.Fraction, need quantity.Pascals) float64 {
	t.Helper()
	at, err := CoolLimit(part, need)
	if err != nil {
		t.Fatal(err)
	}
	return float64(at)
}

// parts of propane in the pure gases.
var parts = map[string]quantity.Fraction{"propane": 1, "butane": 0}

func TestVapourPressurePublished(t *testing.T) {
	checks := published.Read(t, "gas_cold")
	table := published.Get(t, checks, "equations-of-state")
	for _, row := range table.Rows {
		at := published.Value[quantity.Kelvins](t, row, "at")
		for name, part := range parts {
			table.Same(t, name+" at "+row["at"], pressure(t, part, at), float64(published.Value[quantity.Pascals](t, row, name)))
		}
	}
	atlas := published.Get(t, checks, "heat-atlas")
	for _, row := range atlas.Rows {
		got := pressure(t, parts[row["gas"]], published.Value[quantity.Kelvins](t, row, "at"))
		atlas.Same(t, row["gas"]+" at "+row["at"], got, float64(published.Value[quantity.Pascals](t, row, "pressure")))
	}
	chart := published.Get(t, checks, "american-chart")
	for _, row := range chart.Rows {
		at := published.Value[quantity.Kelvins](t, row, "at")
		if at > propane.high { // 110 °F
			continue
		}
		chart.Same(t, row["at"], pressure(t, 1, at), float64(Atmosphere+published.Value[quantity.Pascals](t, row, "above")))
	}
	sold := published.Get(t, checks, "commercial-limits")
	for name, part := range parts {
		above := pressure(t, part, published.Value[quantity.Kelvins](t, sold.Values, "at")) - float64(Atmosphere)
		if most := published.Value[quantity.Pascals](t, sold.Values, name); above >= float64(most) {
			t.Errorf("%s has %g Pa, more than the %g Pa of %s", name, above, float64(most), sold.Source)
		}
	}
}

func TestCoolLimitPublished(t *testing.T) {
	checks := published.Read(t, "gas_cold")
	stops := published.Get(t, checks, "butane-stops")
	got := limit(t, 0, published.Value[quantity.Pascals](t, stops.Values, "need"))
	stops.Same(t, "at", got, float64(published.Value[quantity.Kelvins](t, stops.Values, "at")))
	if handbook := published.Value[quantity.Kelvins](t, stops.Values, "handbook"); got > float64(handbook) {
		t.Errorf("butane stops at %g K, above the limit of handbooks", got)
	}

	cold := published.Get(t, checks, "propane-stops")
	at := published.Value[quantity.Kelvins](t, cold.Values, "at")
	above := published.Value[quantity.Pascals](t, cold.Values, "above")
	cold.Same(t, "above", pressure(t, 1, at)-float64(Atmosphere), float64(above))
	if got := limit(t, 1, above); math.Abs(got-float64(at)) > 0.1 {
		t.Errorf("propane has %g Pa above the air at %g K", float64(above), got)
	}

	boils := published.Get(t, checks, "boiling-points")
	const little quantity.Pascals = 1 // propane's range ends a little above its boiling point
	boils.Same(t, "butane", limit(t, 0, little), float64(published.Value[quantity.Kelvins](t, boils.Values, "butane")))
	at = published.Value[quantity.Kelvins](t, boils.Values, "propane")
	boils.Same(t, "propane", pressure(t, 1, at), float64(published.Value[quantity.Pascals](t, boils.Values, "pressure")))
}

// A mixture lies between the pure gases, the nearer to propane the more of it
// there is; it is their mean where half of the molecules are propane.
func TestVapourPressureOfMixtures(t *testing.T) {
	for at := quantity.Kelvins(231.1); at < 313; at += 9.1 {
		last := pressure(t, 0, at)
		for part := quantity.Fraction(0.02); part < 1; part += 0.07 {
			p := pressure(t, part, at)
			if p <= last || p >= pressure(t, 1, at) {
				t.Errorf("a part of %g at %g K has %g Pa after %g Pa", float64(part), float64(at), p, last)
			}
			last = p
		}
		half := quantity.Fraction(propane.molar / (propane.molar + butane.molar))
		if mean := (pressure(t, 0, at) + pressure(t, 1, at)) / 2; !near(pressure(t, half, at), mean) {
			t.Errorf("at %g K half of the molecules give %g Pa and not %g Pa", float64(at), pressure(t, half, at), mean)
		}
	}
}

func TestVapourPressureRises(t *testing.T) {
	for _, part := range []quantity.Fraction{0, 0.3, 1} {
		last := 0.0
		for at := quantity.Kelvins(231.1); at < 313; at += 1.3 {
			p := pressure(t, part, at)
			if p <= last {
				t.Errorf("%g propane at %g K has %g Pa, not more than when colder", float64(part), float64(at), p)
			}
			last = p
		}
	}
}

// The limit is where the pressure meets the need, and lower with more propane.
func TestCoolLimitIsTheEdge(t *testing.T) {
	for _, need := range []quantity.Pascals{3_000, 30_000, 100_000} {
		last := math.Inf(1)
		for _, part := range []quantity.Fraction{0, 0.2, 0.5, 0.8, 1} {
			at := limit(t, part, need)
			if at >= last {
				t.Errorf("with %g of propane %g Pa are met at %g K, not below %g K", float64(part), float64(need), at, last)
			}
			last = at
			p := pressure(t, part, quantity.Kelvins(at)) - float64(Atmosphere)
			below := pressure(t, part, quantity.Kelvins(at-0.002)) - float64(Atmosphere)
			if p < float64(need) || below >= float64(need) {
				t.Errorf("%g Pa are needed; at the limit there are %g Pa, below it %g Pa", float64(need), p, below)
			}
		}
	}
}

func TestVapourPressureRefuses(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct{ part, at float64 }{
		{1, 231}, {1, 313.2}, {0, 224.9}, {0, 313.2}, {0.5, 230}, {0.5, 400}, {0.5, nan}, {nan, 280}, {-0.1, 280}, {1.1, 280}, {1, 0}, {0, math.Inf(1)},
	} {
		if p, err := VapourPressure(quantity.Fraction(c.part), quantity.Kelvins(c.at)); !errors.Is(err, calc.ErrOutside) || p != 0 {
			t.Errorf("VapourPressure(%g, %g) gives %v, %v", c.part, c.at, p, err)
		}
	}
}

func TestCoolLimitRefuses(t *testing.T) {
	for _, v := range append(bad, 2e6) { // no butane has 20 bar at 40 °C
		if at, err := CoolLimit(0, quantity.Pascals(v)); !errors.Is(err, calc.ErrOutside) || at != 0 {
			t.Errorf("CoolLimit(0, %g) gives %v, %v", v, at, err)
		}
	}
	for _, part := range []quantity.Fraction{-1, 2, quantity.Fraction(math.NaN())} {
		if at, err := CoolLimit(part, 3000); !errors.Is(err, calc.ErrOutside) || at != 0 {
			t.Errorf("CoolLimit(%g, 3000) gives %v, %v", float64(part), at, err)
		}
	}
	if at, err := CoolLimit(1, 1); !errors.Is(err, calc.ErrOutside) {
		t.Errorf("a need met in all of the range gives %v, %v", at, err)
	}
}
