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

func TestGaugeReadingPublished(t *testing.T) {
	checks := published.Read(t, "vehicle")
	for _, id := range []string{"tyre-cooled", "tyre-heated-psi", "tyre-heated-kpa"} {
		c := published.Get(t, checks, id)
		outside := published.Value[quantity.Pascals](t, c.Values, "outside")
		set := Air{Inside: published.Value[quantity.Kelvins](t, c.Values, "from"), Outside: outside}
		now := Air{Inside: published.Value[quantity.Kelvins](t, c.Values, "to"), Outside: outside}
		got, err := GaugeReading(set, now, published.Value[quantity.Pascals](t, c.Values, "set"))
		if err != nil {
			t.Errorf("%s: %v", id, err)
		}
		c.Same(t, "reading", float64(got), float64(published.Value[quantity.Pascals](t, c.Values, "shows")))
	}
}

// A van's tyre gains more than the pound for ten degrees that is said of cars.
func TestGaugeReadingOfTenFahrenheit(t *testing.T) {
	c := published.Get(t, published.Read(t, "vehicle"), "five-bar-ten-fahrenheit")
	pressure := published.Value[quantity.Pascals](t, c.Values, "set")
	for name, cold := range map[string]quantity.Kelvins{"at-15": 288.15, "at-20": 293.15} {
		set := Air{Inside: cold, Outside: seaLevelPressure}
		got, err := GaugeReading(set, Air{Inside: cold + 10.0/1.8, Outside: seaLevelPressure}, pressure)
		if err != nil {
			t.Fatal(err)
		}
		c.Same(t, name, float64(got-pressure), float64(published.Value[quantity.Pascals](t, c.Values, name)))
	}
}

func TestAirPressurePublished(t *testing.T) {
	c := published.Get(t, published.Read(t, "vehicle"), "standard-atmosphere")
	for _, row := range c.Rows {
		got, err := AirPressure(published.Value[quantity.Metres](t, row, "height"))
		if err != nil {
			t.Fatal(err)
		}
		c.Same(t, row["height"], float64(got), float64(published.Value[quantity.Pascals](t, row, "pressure")))
	}
}

// Any air, tyre and height that the functions are made for.
func anyAir(a uint16) Air {
	return Air{
		Inside:  coldestTyre + (hottestTyre-coldestTyre)*quantity.Kelvins(a)/math.MaxUint16,
		Outside: thinnestOutside + (densestOutside-thinnestOutside)*quantity.Pascals(a%251)/250,
	}
}

func anyPressure(a uint16) quantity.Pascals { return 2e5 + 6e5*quantity.Pascals(a)/math.MaxUint16 }

// Warmer air shows more, denser air outside shows less by as much, and the way
// back gives the pressure back.
func TestGaugeReadingProperties(t *testing.T) {
	check := func(a, b, p uint16) bool {
		set, now, pressure := anyAir(a), anyAir(b), anyPressure(p)
		shows, err := GaugeReading(set, now, pressure)
		if err != nil {
			return errors.Is(err, calc.ErrOutside) && shows == 0 // nothing would be left
		}
		if same, err := GaugeReading(set, set, pressure); err != nil || math.Abs(float64(same-pressure)) > 1e-6 {
			return false
		}
		if back, err := GaugeReading(now, set, shows); shows <= hardestTyre && (err != nil || math.Abs(float64(back-pressure)) > 1e-3) {
			return false
		}
		warmer := Air{Inside: min(now.Inside+1, hottestTyre), Outside: now.Outside}
		if more, err := GaugeReading(set, warmer, pressure); err != nil || more < shows {
			return false
		}
		denser := Air{Inside: now.Inside, Outside: now.Outside - 1000}
		if denser.Outside < thinnestOutside {
			return true
		}
		more, err := GaugeReading(set, denser, pressure)
		return err == nil && math.Abs(float64(more-shows-1000)) < 1e-6
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func TestAirPressureFalls(t *testing.T) {
	last := seaLevelPressure + 1
	for height := quantity.Metres(0); height <= highestRoad; height += 100 {
		p, err := AirPressure(height)
		if err != nil || !(p < last) {
			t.Fatalf("%g m: %g Pa after %g Pa, %v", float64(height), float64(p), float64(last), err)
		}
		last = p
	}
}

func TestTyreAirRefuses(t *testing.T) {
	good := Air{Inside: 288.15, Outside: seaLevelPressure}
	for _, c := range []struct {
		set, now Air
		pressure quantity.Pascals
	}{
		{good, good, 0}, {good, good, -1}, {good, good, hardestTyre + 1}, {good, good, quantity.Pascals(math.NaN())},
		{Air{0, seaLevelPressure}, good, 5e5}, {good, Air{15, seaLevelPressure}, 5e5}, {good, Air{400, seaLevelPressure}, 5e5},
		{Air{288.15, 0}, good, 5e5}, {good, Air{288.15, 2e5}, 5e5}, {good, Air{quantity.Kelvins(math.NaN()), seaLevelPressure}, 5e5},
		{Air{hottestTyre, seaLevelPressure}, Air{coldestTyre, seaLevelPressure}, 1000}, // nothing would be left
	} {
		if got, err := GaugeReading(c.set, c.now, c.pressure); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("%+v gives %g, %v", c, float64(got), err)
		}
	}
	for _, h := range []quantity.Metres{-1, highestRoad + 1, quantity.Metres(math.NaN()), quantity.Metres(math.Inf(1))} {
		if got, err := AirPressure(h); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("AirPressure(%g) gives %g, %v", float64(h), float64(got), err)
		}
	}
}
