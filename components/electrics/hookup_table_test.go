package electrics_test

import (
	"fmt"
	"strings"
	"testing"

	"doorpocket/components/electrics"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// fitted is a system whose mains loads are the triples of fact, role and power.
func fitted(t testing.TB, name, system string, loads ...string) table.Fitted {
	t.Helper()
	f := table.Fitted{Name: name, System: system}
	for i := 0; i < len(loads); i += 3 {
		f.Facts = append(f.Facts, sample.Fact(t, loads[i], "mains-"+loads[i+1], quantity.Power, loads[i+2]))
	}
	return f
}

// pitch is the van's inlet, made for a supply.
func pitch(option string) table.Fitted {
	supply := sample.Choice("supply", option)
	supply.Role = "mains-supply"
	return table.Fitted{Name: "inlet", System: "electrics/hook-up-inlet", Facts: []table.Fact{supply}}
}

func shown(t *testing.T, loads ...table.Fitted) []string {
	t.Helper()
	return sample.Shown(t, "electrics/hook-up-load", sample.Van(t, "inlet", append(loads, pitch("230-v"))...))
}

// The usual four: a boiler with two settings, a kettle, a hair dryer, and what
// runs by itself.
func usual(t testing.TB) []table.Fitted {
	return []table.Fitted{
		fitted(t, "fridge", "kitchen/three-way-fridge", "mains_power", "power", "125 W"),
		fitted(t, "charger", "electrics/charger", "mains_power", "always", "300 W"),
		fitted(t, "sockets", "electrics/mains-sockets", "kettle", "appliance", "1000 W", "hair_dryer", "appliance", "1.2 kW"),
		fitted(t, "boiler", "heating/water-boiler", "mains_low", "power", "750 W", "mains_high", "power", "1.85 kW"),
	}
}

func TestHookUpLoad(t *testing.T) {
	const on, later, may, hour = "stays-on", "may-trip-after-hour", "may-trip-within-hour", "trips-within-hour"
	verdicts := func(words ...string) string { return strings.Join(words, " | ") }
	sample.Same(t, shown(t, usual(t)...), []string{
		"boiler:mains_high | 1,850 W | " + verdicts(may, on, on, on),
		"boiler:mains_low | 750 W | " + verdicts(on, on, on, on),
		"sockets:hair_dryer | 1,200 W | " + verdicts(on, on, on, on),
		"sockets:kettle | 1,000 W | " + verdicts(on, on, on, on),
		"charger:mains_power | 300 W | " + verdicts(on, on, on, on),
		"fridge:mains_power | 125 W | " + verdicts(on, on, on, on),
		// What runs by itself is part of all that follows.
		"charger:mains_power + fridge:mains_power | 425 W | " + verdicts(on, on, on, on),
		"boiler:mains_low + by-itself | 1,175 W | " + verdicts(on, on, on, on),
		"sockets:kettle + by-itself | 1,425 W | " + verdicts(later, on, on, on),
		"sockets:hair_dryer + by-itself | 1,625 W | " + verdicts(may, on, on, on),
		"boiler:mains_low + sockets:kettle + by-itself | 2,175 W | " + verdicts(hour, on, on, on),
		"boiler:mains_high + by-itself | 2,275 W | " + verdicts(hour, on, on, on),
		"boiler:mains_low + sockets:hair_dryer + by-itself | 2,375 W | " + verdicts(hour, later, on, on),
		"sockets:hair_dryer + sockets:kettle + by-itself | 2,625 W | " + verdicts(hour, may, on, on),
		"boiler:mains_high + sockets:kettle + by-itself | 3,275 W | " + verdicts(hour, may, later, on),
		"boiler:mains_low + sockets:hair_dryer + sockets:kettle + by-itself | 3,375 W | " + verdicts(hour, hour, later, on),
		"boiler:mains_high + sockets:hair_dryer + by-itself | 3,475 W | " + verdicts(hour, hour, may, on),
		"boiler:mains_high + sockets:hair_dryer + sockets:kettle + by-itself | 4,475 W | " + verdicts("trips-within-minute-now", hour, hour, may),
	})
}

func TestHookUpLoadOfFewAppliances(t *testing.T) {
	stays := "stays-on | stays-on | stays-on | stays-on"
	charger := fitted(t, "charger", "electrics/charger", "mains_power", "always", "300 W")
	sample.Same(t, shown(t), nil)
	sample.Same(t, shown(t, charger), []string{"charger:mains_power | 300 W | " + stays})
	tv := fitted(t, "tv", "electrics/tv", "mains_power", "power", "40 W")
	sample.Same(t, shown(t, tv, charger), []string{
		"charger:mains_power | 300 W | " + stays,
		"tv:mains_power | 40 W | " + stays,
		"charger:mains_power + tv:mains_power | 340 W | " + stays,
	})
}

// What cannot be reckoned with leaves no row that counts too little.
func TestHookUpLoadLacks(t *testing.T) {
	boiler := fitted(t, "boiler", "heating/water-boiler", "mains_low", "power", "750 W", "mains_high", "power", "0 W")
	sockets := fitted(t, "sockets", "electrics/mains-sockets", "kettle", "appliance", "1 kW", "toaster", "appliance", "")
	sample.Same(t, shown(t, boiler, sockets), []string{
		"lacks boiler:mains_high: mains_high is 0 W, which must be above zero: outside what the formula holds for; the whole table is left out, because every row would count too little",
		"lacks sockets:toaster: toaster is not stated; the whole table is left out, because every row would count too little",
	})
}

// A van has the table of its own supply and no other.
func TestHookUpLoadOfAnotherSupply(t *testing.T) {
	kettle := fitted(t, "sockets", "electrics/mains-sockets", "kettle", "appliance", "1.5 kW")
	charger := fitted(t, "charger", "electrics/charger", "mains_power", "always", "600 W")
	for option, want := range map[string]map[string][]string{
		"230-v": {"electrics/hook-up-load-120-v": nil},
		"120-v": {
			"electrics/hook-up-load": nil,
			"electrics/hook-up-load-120-v": {
				"sockets:kettle | 1,500 W | may-trip-after-hour | stays-on | stays-on",
				"charger:mains_power | 600 W | stays-on | stays-on | stays-on",
				"sockets:kettle + charger:mains_power | 2,100 W | may-trip-within-hour | may-trip-after-hour | stays-on",
			},
		},
	} {
		for id, lines := range want {
			sample.Same(t, sample.Shown(t, id, sample.Van(t, "inlet", kettle, charger, pitch(option))), lines)
		}
	}
}

// A van with everything has so many combinations and no more, and they say more
// the further down they stand.
func TestHookUpLoadStaysShort(t *testing.T) {
	var loads []table.Fitted
	for i := range 9 {
		loads = append(loads, fitted(t, fmt.Sprintf("load-%d", i), "kitchen/microwave", "power_in", "power", fmt.Sprintf("%d W", 500+i*i*35)))
	}
	lines := shown(t, loads...)
	if len(lines) != 9+16+1 || !strings.HasPrefix(lines[len(lines)-1], "everything | ") {
		t.Fatalf("%d rows, expected 26 with everything last:\n%s", len(lines), strings.Join(lines, "\n"))
	}
	sample.Same(t, shown(t, loads...), lines) // the same every time
}

// Ticked rows add up to what the rows of combinations say.
func TestHookUpTicksAgreeWithRows(t *testing.T) {
	in := sample.Van(t, "inlet", append(usual(t), pitch("230-v"))...)
	result, err := electrics.HookUpLoadTable(in)
	if err != nil || result.Tick == nil {
		t.Fatal(result.Tick, err)
	}
	groups := map[string]bool{}
	for _, row := range result.Rows {
		if row[0].Tick != "" {
			groups[row[0].Tick] = true
		}
		for i, limit := range result.Tick.Limits {
			if got := step(t, limit, row[1].Quantity); got.Word != row[2+i].Word || got.Tone != row[2+i].Tone {
				t.Errorf("%s on %s adds up to %s, and the row says %s", row[1].Quantity, limit.Word, got.Word, row[2+i].Word)
			}
		}
	}
	if len(groups) != 5 {
		t.Errorf("%d appliances can be ticked, expected 5: %v", len(groups), groups)
	}
}

func step(t *testing.T, limit table.Limit, power quantity.Quantity) table.Step {
	t.Helper()
	for _, s := range limit.Steps {
		if s.Upto.IsZero() {
			return s
		}
		if order, err := quantity.Compare(power, s.Upto); err != nil {
			t.Fatal(err)
		} else if order <= 0 {
			return s
		}
	}
	t.Fatalf("%s has no last step", limit.Word)
	return table.Step{}
}

func BenchmarkHookUpLoadTable(b *testing.B) {
	in := sample.Van(b, "inlet", append(usual(b), pitch("230-v"))...)
	for b.Loop() {
		if _, err := electrics.HookUpLoadTable(in); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHookUpLoad120VTable(b *testing.B) {
	in := sample.Van(b, "inlet", append(usual(b), pitch("120-v"))...)
	for b.Loop() {
		if _, err := electrics.HookUpLoad120VTable(in); err != nil {
			b.Fatal(err)
		}
	}
}
