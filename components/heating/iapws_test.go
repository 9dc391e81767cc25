package heating

import (
	"fmt"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

// The constants against the properties of water by the reference equation: at
// 0 °C water takes up 0.8 % more than they say, from 10 °C on less than 0.2 %
// more, and nowhere 4 % less.
func TestHeatOfWaterReference(t *testing.T) {
	c := published.Get(t, published.Read(t, "water"), "iapws")
	for _, row := range c.Rows {
		sameHeat(t, published.Value[quantity.Kelvins](t, row, "at"), float64(published.Value[quantity.Joules](t, row, "heat")))
	}
}

func sameHeat(t *testing.T, at quantity.Kelvins, want float64) {
	t.Helper()
	most := 1.002
	if at < freezing+10 {
		most = 1.008
	}
	ours := heatCapacity * waterDensity / 1000 // one litre, one kelvin
	if want > ours*most || want < ours/1.04 {
		t.Errorf("at %.5g K a litre takes up %g J for each kelvin, the formula says %g J", float64(at), want, ours)
	}
}

// The printed values come out of the library that made them, and all between
// them are as near. It needs the Debian package python3-iapws.
func TestHeatOfWaterIAPWS(t *testing.T) {
	const script = `
from iapws import IAPWS95
for t in range(0, 100, 5):
    w = IAPWS95(T=max(t, 0.01) + 273.15, P=0.101325)
    print(repr(w.rho * w.cp))`
	out, err := python(script)
	if err != nil {
		t.Fatal("python3-iapws is needed for this test, make tools installs it: ", err)
	}
	lines := strings.Fields(out)
	if len(lines) != 20 {
		t.Fatalf("%d answers", len(lines))
	}
	c := published.Get(t, published.Read(t, "water"), "iapws")
	printed := map[string]float64{}
	for _, row := range c.Rows {
		celsius := float64(published.Value[quantity.Kelvins](t, row, "at") - freezing)
		printed[fmt.Sprintf("%.0f", celsius)] = float64(published.Value[quantity.Joules](t, row, "heat"))
	}
	for i, line := range lines {
		celsius := 5 * i
		heat, err := strconv.ParseFloat(line, 64)
		if err != nil {
			t.Fatal(err)
		}
		sameHeat(t, freezing+quantity.Kelvins(celsius), heat)
		if want, ok := printed[strconv.Itoa(celsius)]; ok && (heat-want > 0.01 || want-heat > 0.01) {
			t.Errorf("at %d °C the library says %g J, the printed list %g J", celsius, heat, want)
		}
	}
}

// python runs a script with the Python whose packages Debian installs, which
// need not be the first one found.
func python(script string) (string, error) {
	var out []byte
	var err error
	for _, name := range []string{"/usr/bin/python3", "python3"} {
		if out, err = exec.Command(name, "-c", script).CombinedOutput(); err == nil {
			return string(out), nil
		}
	}
	return "", fmt.Errorf("%w\n%s", err, out)
}
