package electrics_test

import (
	"fmt"
	"strings"
	"testing"

	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// fitted is a system whose mains loads are the pairs of fact and power.
func fitted(t *testing.T, name, system string, loads ...string) table.Fitted {
	t.Helper()
	f := table.Fitted{Name: name, System: system}
	for i := 0; i < len(loads); i += 2 {
		f.Facts = append(f.Facts, sample.Fact(t, loads[i], "mains-power", quantity.Power, loads[i+1]))
	}
	return f
}

func shown(t *testing.T, loads ...table.Fitted) []string {
	t.Helper()
	inlet := table.Fitted{Name: "inlet", System: "electrics/hook-up-inlet"}
	return sample.Shown(t, "electrics/hook-up-load", sample.Van(t, "inlet", append(loads, inlet)...))
}

func TestHookUpLoad(t *testing.T) {
	boiler := fitted(t, "boiler", "heating/water-boiler", "mains_low", "750 W", "mains_high", "1.85 kW")
	sockets := fitted(t, "sockets", "electrics/mains-sockets", "kettle", "1000 W", "hair_dryer", "1.2 kW")
	fridge := fitted(t, "fridge", "kitchen/three-way-fridge", "mains_power", "125 W")
	sample.Same(t, shown(t, fridge, sockets, boiler), []string{
		"boiler:mains_high | 1,850 W | 8.1 A | may-trip | stays-on | stays-on",
		"boiler:mains_low | 750 W | 3.3 A | stays-on | stays-on | stays-on",
		"sockets:hair_dryer | 1,200 W | 5.3 A | stays-on | stays-on | stays-on",
		"sockets:kettle | 1,000 W | 4.4 A | stays-on | stays-on | stays-on",
		"fridge:mains_power | 125 W | 0.6 A | stays-on | stays-on | stays-on",
		// Worse than their parts: first where both parts stay on, on more pitches.
		"boiler:mains_high + sockets:hair_dryer | 3,050 W | 13.3 A | trips | may-trip | stays-on",
		"boiler:mains_high + sockets:kettle | 2,850 W | 12.4 A | trips | may-trip | stays-on",
		"sockets:hair_dryer + sockets:kettle | 2,200 W | 9.6 A | trips | stays-on | stays-on",
		// No worse than their parts.
		"boiler:mains_high + fridge:mains_power | 1,975 W | 8.6 A | may-trip | stays-on | stays-on",
		"sockets:hair_dryer + fridge:mains_power | 1,325 W | 5.8 A | stays-on | stays-on | stays-on",
		"sockets:kettle + fridge:mains_power | 1,125 W | 4.9 A | stays-on | stays-on | stays-on",
		"everything | 4,175 W | 18.2 A | trips | trips | may-trip",
	})
}

func TestHookUpLoadOfFewAppliances(t *testing.T) {
	charger := fitted(t, "charger", "electrics/charger", "mains_power", "300 W")
	sample.Same(t, shown(t), nil)
	sample.Same(t, shown(t, charger), []string{"charger:mains_power | 300 W | 1.4 A | stays-on | stays-on | stays-on"})
	tv := fitted(t, "tv", "electrics/tv", "mains_power", "40 W")
	sample.Same(t, shown(t, tv, charger), []string{
		"charger:mains_power | 300 W | 1.4 A | stays-on | stays-on | stays-on",
		"tv:mains_power | 40 W | 0.2 A | stays-on | stays-on | stays-on",
		"charger:mains_power + tv:mains_power | 340 W | 1.5 A | stays-on | stays-on | stays-on",
	})
}

// What cannot be reckoned with makes no sum that is too small.
func TestHookUpLoadLacks(t *testing.T) {
	boiler := fitted(t, "boiler", "heating/water-boiler", "mains_low", "750 W", "mains_high", "0 W")
	sockets := fitted(t, "sockets", "electrics/mains-sockets", "kettle", "1 kW", "toaster", "", "fan_heater", "2 kW")
	sample.Same(t, shown(t, boiler, sockets), []string{
		"sockets:fan_heater | 2,000 W | 8.7 A | may-trip | stays-on | stays-on",
		"sockets:kettle | 1,000 W | 4.4 A | stays-on | stays-on | stays-on",
		"boiler:mains_low | 750 W | 3.3 A | stays-on | stays-on | stays-on",
		"sockets:fan_heater + sockets:kettle | 3,000 W | 13.1 A | trips | may-trip | stays-on",
		"lacks boiler:mains_high: mains_high is 0 W, which must be above zero: outside what the formula holds for; so everything at once is not worked out either",
		"lacks sockets:toaster: toaster is not stated; so everything at once is not worked out either",
	})
}

// A van with everything has twelve pairs and no more, and those with news come
// before those without.
func TestHookUpLoadKeepsTwelvePairs(t *testing.T) {
	var loads []table.Fitted
	for i := range 9 {
		loads = append(loads, fitted(t, fmt.Sprintf("load-%d", i), "kitchen/microwave", "power_in", fmt.Sprintf("%d W", 40+i*i*35)))
	}
	lines := shown(t, loads...)
	var pairs []string
	for _, line := range lines {
		if strings.Contains(line, " + ") {
			pairs = append(pairs, line)
		}
	}
	if len(pairs) != 12 || len(lines) != 9+12+1 {
		t.Fatalf("%d pairs in %d rows, expected 12 in 22:\n%s", len(pairs), len(lines), strings.Join(lines, "\n"))
	}
	if !strings.HasPrefix(lines[len(lines)-1], "everything | ") {
		t.Errorf("last is %q", lines[len(lines)-1])
	}
	stays := "stays-on | stays-on | stays-on"
	if !strings.HasPrefix(pairs[0], "load-8:power_in + load-7:power_in | ") || strings.HasSuffix(pairs[0], stays) {
		t.Errorf("first pair is %q", pairs[0])
	}
	sample.Same(t, shown(t, loads...), lines) // the same every time
}
