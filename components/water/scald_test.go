package water

import (
	"errors"
	"math"
	"testing"
	"testing/quick"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func burns2(t *testing.T, at quantity.Kelvins) (skin, whole float64) {
	t.Helper()
	s, err := BurnTime(at)
	if err != nil {
		t.Fatal(err)
	}
	w, err := DeepBurnTime(at)
	if err != nil {
		t.Fatal(err)
	}
	return float64(s), float64(w)
}

func TestBurnTimePublished(t *testing.T) {
	c := published.Get(t, published.Read(t, "water"), "scald-adult")
	for _, row := range c.Rows {
		skin, whole := burns2(t, published.Value[quantity.Kelvins](t, row, "at"))
		c.Same(t, "skin at "+row["at"], skin, float64(published.Value[quantity.Seconds](t, row, "second")))
		c.Same(t, "whole skin at "+row["at"], whole, float64(published.Value[quantity.Seconds](t, row, "third")))
	}
}

// No other list gives a shorter time than ours for a burn through the skin.
func TestBurnTimeIsNeverLongerThanOthers(t *testing.T) {
	checks := published.Read(t, "water")
	rows := append(published.Get(t, checks, "scald-hospital").Rows, published.Get(t, checks, "scald-pharmacy").Values)
	for _, row := range rows {
		at, longest := published.Value[quantity.Kelvins](t, row, "at"), published.Value[quantity.Seconds](t, row, "to")
		got, err := DeepBurnTime(at)
		if err != nil || got > longest {
			t.Errorf("%s: %g s, %v; a list says %g s at most", row["at"], got, err, longest)
		}
	}
}

// The most that rules allow at a tap leaves minutes, and is where the table
// begins.
func TestTapLimitLeavesMinutes(t *testing.T) {
	c := published.Get(t, published.Read(t, "water"), "tap-limit")
	limit := published.Value[quantity.Kelvins](t, c.Values, "at")
	if skin, _ := burns2(t, limit); skin < float64(published.Value[quantity.Seconds](t, c.Values, "least")) {
		t.Errorf("at %s the skin burns after %g s (%s)", c.Values["at"], skin, c.Source)
	}
	if math.Abs(float64(hotWaters[0]-limit)) > 1e-9 {
		t.Errorf("the table begins at %g K, the limit is %g K", float64(hotWaters[0]), float64(limit))
	}
}

func TestBurnTimeProperties(t *testing.T) {
	check := func(a, b uint16) bool {
		low := zeroCelsius + 45 + quantity.Kelvins(a%1500)/100
		high := min(low+quantity.Kelvins(b%1500)/100, zeroCelsius+60)
		skin, whole := burns2(t, low)
		hotSkin, hotWhole := burns2(t, high)
		return skin < whole && hotSkin <= skin && hotWhole <= whole // hotter never burns later
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

func TestBurnTimeRefuses(t *testing.T) {
	nan := quantity.Kelvins(math.NaN())
	for _, at := range []quantity.Kelvins{nan, 0, -300, 45, 60, zeroCelsius + 44.9, zeroCelsius + 60.1, zeroCelsius + 100, quantity.Kelvins(math.Inf(1)), quantity.Kelvins(math.Inf(-1))} {
		if got, err := BurnTime(at); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("skin at %g K: %g, %v", at, got, err)
		}
	}
	for _, at := range []quantity.Kelvins{nan, 0, 60, zeroCelsius + 44.9, zeroCelsius + 68.4, quantity.Kelvins(math.Inf(1)), quantity.Kelvins(math.Inf(-1))} {
		if got, err := DeepBurnTime(at); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("whole skin at %g K: %g, %v", at, got, err)
		}
	}
}
