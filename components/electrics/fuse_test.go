package electrics

import (
	"errors"
	"testing"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func TestBladeColoursPublished(t *testing.T) {
	c := published.Get(t, published.Read(t, "battery"), "blade-colours")
	if len(c.Rows) != len(blades) {
		t.Errorf("%d blade fuses, expected %d", len(blades), len(c.Rows))
	}
	seen := map[string]bool{}
	for _, row := range c.Rows {
		got, err := BladeColour(published.Value[quantity.Amperes](t, row, "rating"))
		if err != nil || got != row["colour"] {
			t.Errorf("%s is %q, %v; expected %q (%s)", row["rating"], got, err, row["colour"], c.Source)
		}
		if seen[got] {
			t.Errorf("two fuses are %s", got)
		}
		seen[got] = true
	}
}

// Between two ratings there is none, and neither neighbour stands in.
func TestBladeColourRefuses(t *testing.T) {
	for _, v := range append([]float64{0.4, 6, 7, 12, 40.1, 50}, bad...) {
		if got, err := BladeColour(quantity.Amperes(v)); !errors.Is(err, calc.ErrOutside) || got != "" {
			t.Errorf("%v A is %q, %v", v, got, err)
		}
	}
}
