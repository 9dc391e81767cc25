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

func shown(t *testing.T, id string, loads ...table.Fitted) []string {
	t.Helper()
	return sample.Shown(t, id, sample.Van(t, "inlet", append(loads, pitch("230-v"))...))
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
	sample.Same(t, shown(t, "electrics/hook-up-load", usual(t)...), []string{
		"boiler:mains_high | 1,850 W | 10 A",
		"boiler:mains_low | 750 W | 6 A",
		"sockets:hair_dryer | 1,200 W | 6 A",
		"sockets:kettle | 1,000 W | 6 A",
		"charger:mains_power | 300 W | 6 A",
		"fridge:mains_power | 125 W | 6 A",
	})
	sample.Same(t, shown(t, "electrics/hook-up-load"), nil)
	hob := fitted(t, "hob", "kitchen/induction-hob", "power_low", "power", "", "power_high", "power", "7.4 kW")
	sample.Same(t, shown(t, "electrics/hook-up-load", hob), []string{
		"hob:power_high | 7,400 W | ",
		"lacks hob:power_low: power_low is not stated",
	})
}

// What runs by itself comes first and is part of every other row.
func TestHookUpTogether(t *testing.T) {
	const on, later, may, hour, now = "stays-on", "may-trip-after-hour", "may-trip-within-hour", "trips-within-hour", "trips-within-minute-now"
	verdicts := func(words ...string) string { return strings.Join(words, " | ") }
	sample.Same(t, shown(t, "electrics/hook-up-together", usual(t)...), []string{
		"charger:mains_power + fridge:mains_power + nothing-else | " + verdicts(on, on, on, on), // 425 W
		"boiler:mains_low | " + verdicts(on, on, on, on),                                        // 1175 W
		"sockets:kettle | " + verdicts(later, on, on, on),                                       // 1425 W
		"sockets:hair_dryer | " + verdicts(may, on, on, on),                                     // 1625 W
		"boiler:mains_low + sockets:kettle | " + verdicts(hour, on, on, on),                     // 2175 W
		"boiler:mains_high | " + verdicts(hour, on, on, on),                                     // 2275 W
		"boiler:mains_low + sockets:hair_dryer | " + verdicts(hour, later, on, on),              // 2375 W
		"sockets:hair_dryer + sockets:kettle | " + verdicts(hour, may, on, on),                  // 2625 W
		"boiler:mains_high + sockets:kettle | " + verdicts(hour, may, later, on),                // 3275 W
		"boiler:mains_low + sockets:hair_dryer + sockets:kettle | " + verdicts(hour, hour, later, on),
		"boiler:mains_high + sockets:hair_dryer | " + verdicts(hour, hour, may, on),
		"boiler:mains_high + sockets:hair_dryer + sockets:kettle | " + verdicts(now, hour, hour, may),
	})
}

func TestHookUpTogetherOfFewAppliances(t *testing.T) {
	stays := "stays-on | stays-on | stays-on | stays-on"
	charger := fitted(t, "charger", "electrics/charger", "mains_power", "always", "300 W")
	sample.Same(t, shown(t, "electrics/hook-up-together"), nil)
	sample.Same(t, shown(t, "electrics/hook-up-together", charger), []string{"charger:mains_power + nothing-else | " + stays})
	tv := fitted(t, "tv", "electrics/tv", "mains_power", "power", "40 W")
	sample.Same(t, shown(t, "electrics/hook-up-together", tv, charger), []string{"charger:mains_power + tv:mains_power + nothing-else | " + stays})
	kettle := fitted(t, "sockets", "electrics/mains-sockets", "kettle", "appliance", "1 kW")
	sample.Same(t, shown(t, "electrics/hook-up-together", kettle), []string{"sockets:kettle | " + stays})
}

// A choice of which a part trips on every pitch has no row: the part says it.
func TestHookUpTogetherLeavesOutWhatIsKnown(t *testing.T) {
	hob := fitted(t, "hob", "kitchen/induction-hob", "power_high", "power", "7 kW")
	kettle := fitted(t, "sockets", "electrics/mains-sockets", "kettle", "appliance", "1 kW")
	sample.Same(t, shown(t, "electrics/hook-up-together", hob, kettle), []string{
		"sockets:kettle | stays-on | stays-on | stays-on | stays-on",
		"hob:power_high | trips-within-minute-now | trips-within-minute-now | trips-within-hour | trips-within-hour",
		"everything | trips-within-minute-now | trips-within-minute-now | trips-within-minute | trips-within-hour",
	})
}

// What cannot be reckoned with leaves no row that counts too little.
func TestHookUpTogetherLacks(t *testing.T) {
	boiler := fitted(t, "boiler", "heating/water-boiler", "mains_low", "power", "750 W", "mains_high", "power", "0 W")
	sockets := fitted(t, "sockets", "electrics/mains-sockets", "kettle", "appliance", "1 kW", "toaster", "appliance", "")
	sample.Same(t, shown(t, "electrics/hook-up-together", boiler, sockets), []string{
		"lacks boiler:mains_high: mains_high is 0 W, which must be above zero: outside what the formula holds for; the whole table is left out, because every row would count too little",
		"lacks sockets:toaster: toaster is not stated; the whole table is left out, because every row would count too little",
	})
}

// A van has the table of its own supply and no other.
func TestHookUpOfAnotherSupply(t *testing.T) {
	kettle := fitted(t, "sockets", "electrics/mains-sockets", "kettle", "appliance", "1.5 kW")
	charger := fitted(t, "charger", "electrics/charger", "mains_power", "always", "600 W")
	for option, want := range map[string]map[string][]string{
		"230-v": {"electrics/hook-up-together-120-v": nil},
		"120-v": {
			"electrics/hook-up-together": nil,
			"electrics/hook-up-together-120-v": {
				"charger:mains_power + nothing-else | stays-on | stays-on | stays-on",
				"sockets:kettle | may-trip-within-hour | may-trip-after-hour | stays-on",
			},
			"electrics/hook-up-load": {"sockets:kettle | 1,500 W | 20 A", "charger:mains_power | 600 W | 15 A"},
		},
	} {
		for id, lines := range want {
			sample.Same(t, sample.Shown(t, id, sample.Van(t, "inlet", kettle, charger, pitch(option))), lines)
		}
	}
}

// A van with everything has so many combinations and no more.
func TestHookUpTogetherStaysShort(t *testing.T) {
	var loads []table.Fitted
	for i := range 9 {
		loads = append(loads, fitted(t, fmt.Sprintf("load-%d", i), "kitchen/microwave", "power_in", "power", fmt.Sprintf("%d W", 500+i*i*35)))
	}
	lines := shown(t, "electrics/hook-up-together", loads...)
	if len(lines) != 16+1 || !strings.HasPrefix(lines[len(lines)-1], "everything | ") {
		t.Fatalf("%d rows, expected 17 with everything last:\n%s", len(lines), strings.Join(lines, "\n"))
	}
	sample.Same(t, shown(t, "electrics/hook-up-together", loads...), lines) // the same every time
}

// Ticked rows add up to what the rows of combinations say.
func TestTicksAgreeWithRows(t *testing.T) {
	for _, s := range []struct {
		option   string
		together table.Func
	}{{"230-v", electrics.HookUpTogetherTable}, {"120-v", electrics.HookUpTogether120VTable}} {
		in := sample.Van(t, "inlet", append(usual(t), pitch(s.option))...)
		parts, err := electrics.HookUpLoadTable(in)
		if err != nil || parts.Tick == nil {
			t.Fatal(parts.Tick, err)
		}
		power, groups := map[table.Use]float64{}, map[string]bool{}
		for _, row := range parts.Rows {
			watts, _ := quantity.As[quantity.Watts](row[1].Quantity)
			power[row[0].Uses[0]], groups[row[0].Tick] = float64(watts), true
		}
		if len(groups) != 5 {
			t.Errorf("%d appliances can be ticked, expected 5: %v", len(groups), groups)
		}
		result, err := s.together(in)
		if err != nil {
			t.Fatal(err)
		}
		for i, row := range result.Rows {
			sum := 425.0 // charger and fridge
			for _, use := range row[0].Uses {
				if i > 0 {
					sum += power[use]
				}
			}
			for k, limit := range parts.Tick.Limits {
				if got := step(t, limit, quantity.Of(quantity.Watts(sum))); got.Word != row[1+k].Word || got.Tone != row[1+k].Tone {
					t.Errorf("%g W on %s adds up to %s, and the row says %s", sum, limit.Word, got.Word, row[1+k].Word)
				}
			}
		}
	}
}

// A sum at a limit means what the breaker does there.
func TestTicksAtTheLimits(t *testing.T) {
	parts, err := electrics.HookUpLoadTable(sample.Van(t, "inlet", append(usual(t), pitch("230-v"))...))
	if err != nil {
		t.Fatal(err)
	}
	six := parts.Tick.Limits[0]
	for watts, want := range map[quantity.Watts]string{
		1: "stays-on", 1380: "stays-on", 1381: "may-trip-after-hour", 1559: "may-trip-after-hour", 1560: "may-trip-within-hour",
		2000: "may-trip-within-hour", 2001: "trips-within-hour", 3518: "trips-within-hour", 3519: "trips-within-minute",
		4140: "trips-within-minute", 4141: "trips-within-minute-now", 13_799: "trips-within-minute-now", 13_800: "trips-at-once",
	} {
		if got := step(t, six, quantity.Of(watts)).Word; got != want {
			t.Errorf("%g W on 6 A: %s, expected %s", float64(watts), got, want)
		}
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

func benchmarkHookUp(b *testing.B, option string, work table.Func) {
	in := sample.Van(b, "inlet", append(usual(b), pitch(option))...)
	for b.Loop() {
		if _, err := work(in); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHookUpLoadTable(b *testing.B) { benchmarkHookUp(b, "230-v", electrics.HookUpLoadTable) }

func BenchmarkHookUpTogetherTable(b *testing.B) {
	benchmarkHookUp(b, "230-v", electrics.HookUpTogetherTable)
}

func BenchmarkHookUpTogether120VTable(b *testing.B) {
	benchmarkHookUp(b, "120-v", electrics.HookUpTogether120VTable)
}
