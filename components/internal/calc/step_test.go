package calc

import (
	"testing"

	"doorpocket/components/quantity"
)

func TestSteps(t *testing.T) {
	for _, c := range []struct{ v, step, up, down quantity.Watts }{
		{1801, 50, 1850, 1800},
		{1800, 50, 1800, 1800},
		{1800.000000001, 50, 1800, 1800}, // noise
		{1799.999999999, 50, 1800, 1800},
		{49, 50, 50, 0},
		{0.3, 0.1, 0.3, 0.3},
	} {
		if up, down := StepUp(c.v, c.step), StepDown(c.v, c.step); !close(up, c.up) || !close(down, c.down) {
			t.Errorf("%v in steps of %v: up %v, down %v; expected %v and %v", c.v, c.step, up, down, c.up, c.down)
		}
	}
}

func TestCellDown(t *testing.T) {
	for v, want := range map[quantity.Watts]string{49: "", 50: "50 W", 99: "50 W", 100: "100 W"} {
		c, got := CellDown(v, 50), ""
		if c.Quantity.Valid() {
			got = c.Quantity.String()
		}
		if got != want {
			t.Errorf("%v in steps of 50: %q, expected %q", v, got, want)
		}
	}
}

func close(a, b quantity.Watts) bool { return a-b < 1e-9 && b-a < 1e-9 }
