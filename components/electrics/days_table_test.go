package electrics_test

import (
	"testing"

	"doorpocket/components/electrics"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// consumerOf is a system with one thing on 12 volts.
func consumerOf(t testing.TB, name, system, fact, power string) table.Fitted {
	t.Helper()
	return table.Fitted{Name: name, System: system, Facts: []table.Fact{sample.Fact(t, fact, "dc-power", quantity.Power, power)}}
}

func battery(t testing.TB, chemistry, capacity string, more ...table.Fact) table.Fitted {
	t.Helper()
	return table.Fitted{Name: "battery", System: "electrics/leisure-battery", Facts: append([]table.Fact{
		sample.Choice("chemistry", chemistry), sample.Fact(t, "capacity", "battery-capacity", quantity.Charge, capacity),
	}, more...)}
}

func daysShown(t *testing.T, self table.Fitted, others ...table.Fitted) []string {
	t.Helper()
	return sample.Shown(t, "electrics/days-12v", sample.Van(t, "battery", append(others, self)...))
}

// 100 Ah, exponent 1.15, half of it: 120 W are 10 A and last 20 (100/200)^1.15
// = 9.01 h, of which half; 24 W are 2 A, below the rating, and last 25 h.
func TestDays12V(t *testing.T) {
	lights := consumerOf(t, "lights", "electrics/lights", "all_on", "120 W")
	panel := consumerOf(t, "panel", "electrics/control-panel", "idle", "1.2 W")
	tv := consumerOf(t, "tv", "electrics/tv", "dc_power", "24 W")
	sample.Same(t, daysShown(t, battery(t, "agm", "100 Ah"), tv, panel, lights), []string{
		"typical-day |  | 1.2 d | 36.4 Ah | ",
		"lights:all_on | 3 h | 1.5 d | 30.0 Ah | 4.5 h",
		"tv:dc_power | 2 h | 12.5 d | 4.0 Ah | 25 h",
		"panel:idle | 24 h | 20.8 d | 2.4 Ah | 500 h",
	})
}

// What the van states counts before what is usual.
func TestDays12VOfStatedFacts(t *testing.T) {
	tv := consumerOf(t, "tv", "electrics/tv", "dc_power", "24 W")
	tv.Facts = append(tv.Facts, sample.Fact(t, "hours_a_day", "use-a-day", quantity.Time, "5 h"))
	own := battery(t, "wet", "100 Ah", sample.Fact(t, "usable", "", quantity.Ratio, "40 %"), sample.Fact(t, "rated_hours", "", quantity.Time, "10 h"))
	sample.Same(t, daysShown(t, own, tv), []string{
		"typical-day |  | 4 d | 10.0 Ah | ",
		"tv:dc_power | 5 h | 4 d | 10.0 Ah | 20 h",
	})
}

// What the engine feeds, and what another fact says better, is not counted.
func TestDays12VCountsOnce(t *testing.T) {
	absorption := consumerOf(t, "fridge", "kitchen/three-way-fridge", "dc_power", "170 W")
	compressor := consumerOf(t, "cooler", "kitchen/compressor-fridge", "dc_power", "48 W")
	sockets := consumerOf(t, "usb", "electrics/sockets-12v", "devices", "15 W")
	driving := sockets
	driving.Facts = append(driving.Facts, sample.Choice("live", "with-ignition"))
	self := battery(t, "lithium", "100 Ah")
	sample.Same(t, daysShown(t, self, absorption, driving), nil)
	sample.Same(t, daysShown(t, self, compressor), []string{
		"typical-day |  | 2 d | 38.4 Ah | ",
		"cooler:dc_power | 9 h 36 min | 2 d | 38.4 Ah | 20 h",
	})
	compressor.Facts = append(compressor.Facts, sample.Fact(t, "dc_mean", "dc-power", quantity.Power, "18 W"))
	sample.Same(t, daysShown(t, self, compressor, sockets), []string{
		"typical-day |  | 2 d | 39.8 Ah | ",
		"cooler:dc_mean | 24 h | 2.2 d | 36.0 Ah | 53.3 h",
		"usb:devices | 3 h | 21.3 d | 3.8 Ah | 64 h",
	})
}

func TestDays12VLacks(t *testing.T) {
	lights := consumerOf(t, "lights", "electrics/lights", "all_on", "")
	pump := consumerOf(t, "pump", "water/pump", "power", "60 W")
	heavy := consumerOf(t, "mat", "heating/floor-heating", "battery_mat", "400 W")
	unknown := consumerOf(t, "robot", "living/robot", "power", "10 W")
	sample.Same(t, daysShown(t, battery(t, "gel", "20 Ah"), lights, pump, heavy, unknown), []string{
		"pump:power | 20 min | 4 d | 1.7 Ah | 1.3 h",
		"lacks lights:all_on: all_on is not stated; so the typical day is not worked out either",
		"lacks robot:power: nobody knows for how long a day power of living/robot is on; so the typical day is not worked out either",
		"lacks mat:battery_mat: 33.33 A would empty 20 Ah in less than an hour: outside what the formula holds for; so the typical day is not worked out either",
	})
}

func TestDays12VRefuses(t *testing.T) {
	second := battery(t, "agm", "100 Ah")
	second.Name = "second"
	for name, in := range map[string]table.Input{
		"two batteries": sample.Van(t, "battery", battery(t, "agm", "100 Ah"), second),
		"kind unknown":  sample.Van(t, "battery", battery(t, "nuclear", "100 Ah")),
	} {
		if result, err := electrics.Days12VTable(in); err == nil {
			t.Errorf("%s: %v", name, result)
		}
	}
	panel := table.Fitted{Name: "panel", System: "electrics/control-panel"}
	sample.Same(t, sample.Shown(t, "electrics/days-12v", sample.Van(t, "panel", panel)), nil)
}

func BenchmarkDays12VTable(b *testing.B) {
	in := sample.Van(b, "battery", battery(b, "agm", "100 Ah"), consumerOf(b, "lights", "electrics/lights", "all_on", "40 W"), consumerOf(b, "pump", "water/pump", "power", "60 W"))
	for b.Loop() {
		if _, err := electrics.Days12VTable(in); err != nil {
			b.Fatal(err)
		}
	}
}
