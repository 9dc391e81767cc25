package heating_test

import (
	"testing"

	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// body is one of 6 m that needs 2.1 kW at 35 K, 60 W for each kelvin, or one
// whose need is estimated from its grade.
func body(t *testing.T, more ...table.Fact) table.Fitted {
	t.Helper()
	size := func(name, text string) table.Fact { return sample.Fact(t, name, "", quantity.Length, text) }
	return table.Fitted{Name: "body", System: "vehicle/body", Facts: append([]table.Fact{size("length", "6 m"), size("width", "2.2 m"), size("height", "2.8 m")}, more...)}
}

func needs(t *testing.T, text string) table.Fact {
	t.Helper()
	return sample.Fact(t, "heat_need", "", quantity.Power, text)
}

// facts is a fitted system with powers and rates that are pairs of fact and
// text.
func facts(t *testing.T, system string, pairs ...string) table.Fitted {
	t.Helper()
	f := table.Fitted{Name: "heater", System: "heating/" + system}
	for i := 0; i < len(pairs); i += 2 {
		name, dim, role := pairs[i], quantity.Power, ""
		switch name {
		case "gas_high":
			dim, role = quantity.MassFlow, "gas-rate"
		case "fuel_high":
			dim, role = quantity.VolumeFlow, "fuel-rate"
		case "boiler":
			dim, role = quantity.Volume, "boiler-volume"
		case "flow":
			dim = quantity.VolumeFlow
		}
		f.Facts = append(f.Facts, sample.Fact(t, name, role, dim, pairs[i+1]))
	}
	return f
}

func balance(t *testing.T, fitted ...table.Fitted) []string {
	t.Helper()
	return sample.Shown(t, "heating/heat-balance", sample.Van(t, "heater", fitted...))
}

func TestHeatBalanceTable(t *testing.T) {
	gas := facts(t, "air-heater-with-boiler", "heat_gas", "4 kW", "gas_high", "335 g/h", "mains_low", "900 W", "mains_high", "1.8 kW")
	sample.Same(t, balance(t, body(t, needs(t, "2.1 kW")), gas), []string{
		"-15 °C | 2,100 W | gas | 4.3 kg |  | 44 kWh", // 60 x 35; 335 g/h x 24 h x 2.1/4 = 4.221 kg; 1.8 kW x 24 h = 43.2 kWh
		"-10 °C | 1,800 W | gas-or-mains | 3.7 kg |  | 44 kWh",
		"-5 °C | 1,500 W | gas-or-mains | 3.1 kg |  | 36 kWh",
		"0 °C | 1,200 W | gas-or-mains | 2.5 kg |  | 29 kWh", // 28.8
		"5 °C | 900 W | gas-or-mains | 1.9 kg |  | 22 kWh",
		"10 °C | 600 W | gas-or-mains | 1.3 kg |  | 15 kWh",
		"15 °C | 300 W | gas-or-mains | 0.7 kg |  | 8 kWh",
	})
	diesel := facts(t, "diesel-heater", "heat_high", "2 kW", "fuel_high", "0.24 L/h")
	sample.Same(t, balance(t, body(t, needs(t, "2.8 kW")), diesel)[:3], []string{ // 80 W/K
		"-15 °C | 2,800 W | nothing |  | 5.8 L | ", // runs without a pause: 0.24 x 24 = 5.76
		"-10 °C | 2,400 W | nothing |  | 5.8 L | ",
		"-5 °C | 2,000 W | diesel |  | 5.8 L | ",
	})
}

// An estimate counts only what gives a third more as enough.
func TestHeatBalanceOfAnEstimate(t *testing.T) {
	// 1.2 W/(m² K) x 64.12 m² + 0.335 Wh/(m³ K) x 30.36 m³ = 87.1 W/K
	gas := facts(t, "air-heater-with-boiler", "heat_gas", "3.5 kW", "gas_high", "300 g/h", "mains_high", "1.8 kW")
	sample.Same(t, balance(t, body(t, sample.Choice("insulation", "grade-3")), gas)[:4], []string{
		"-15 °C | 3,050 W | gas-and-mains | 6.3 kg |  | 44 kWh", // 3049 W, wanted 4066 W
		"-10 °C | 2,650 W | gas | 5.4 kg |  | 44 kWh",           // 2614 W, wanted 3485 W of 3500
		"-5 °C | 2,200 W | gas | 4.5 kg |  | 44 kWh",
		"0 °C | 1,750 W | gas | 3.6 kg |  | 42 kWh",
	})
}

// A heat that nobody states comes from the fuel; radiators give no more than
// they can; a page without a heater takes the strongest of the van.
func TestHeatBalanceOfOtherHeaters(t *testing.T) {
	warm := body(t, needs(t, "2.1 kW"))
	// 400 g/h x 45.72 MJ/kg x 0.8 = 4064 W, down to 4050 W; 2100/4050 x 9.6 kg = 4.98 kg
	sample.Same(t, balance(t, warm, facts(t, "air-heater-with-boiler", "gas_high", "400 g/h"))[:1], []string{"-15 °C | 2,100 W | gas | 5.0 kg |  | "})
	radiators := facts(t, "radiator-heating", "gas_high", "400 g/h", "mains_low", "1 kW", "mains_middle", "2 kW", "mains_high", "3 kW", "heat", "2 kW")
	sample.Same(t, balance(t, warm, radiators)[:2], []string{
		"-15 °C | 2,100 W | nothing | 4.8 kg |  | 48 kWh", // 2000/4050 x 9.6 = 4.74
		"-10 °C | 1,800 W | gas-or-mains | 4.3 kg |  | 44 kWh",
	})
	sample.Same(t, balance(t, warm, facts(t, "thermostat")), nil)
	strongest := facts(t, "diesel-heater", "heat_high", "4 kW", "fuel_high", "0.5 L/h")
	strongest.Name = "strongest"
	element := facts(t, "roof-air-conditioner", "mains_heat", "1 kW")
	element.Name, element.Facts = "roof", append(element.Facts, sample.Choice("heats", "element"))
	sample.Same(t, balance(t, warm, facts(t, "thermostat"), element, strongest)[:1], []string{"-15 °C | 2,100 W | diesel |  | 6.3 L | "})
}

func TestHeatBalanceLacks(t *testing.T) {
	heater := facts(t, "air-heater-with-boiler", "heat_gas", "4 kW", "gas_high", "335 g/h")
	sample.Same(t, balance(t, body(t), heater),
		[]string{"lacks body:insulation: neither heat_need nor insulation is stated, so nobody knows how much heat the van loses"})
	sample.Same(t, balance(t, body(t, needs(t, "0 W")), heater),
		[]string{"lacks body:heat_need: heat_need is 0 W, which must be above zero: outside what the formula holds for"})
	flat := body(t, needs(t, "2.1 kW"))
	flat.Facts[2] = sample.Fact(t, "height", "", quantity.Length, "")
	sample.Same(t, balance(t, flat, heater), []string{"lacks body:length: height is not stated"})
	// 6 kW from 335 g/h is more than the gas holds: 4.68 kW
	sample.Same(t, balance(t, body(t, needs(t, "2.1 kW")), facts(t, "air-heater-with-boiler", "heat_gas", "6 kW", "gas_high", "335 g/h", "mains_high", "3 kW"))[6:],
		[]string{"15 °C | 300 W | mains |  |  | 8 kWh", "lacks heater:heat_gas: a heat output of 6000 W is more than the 4683 W in the gas: outside what the formula holds for"})
	sample.Same(t, balance(t, body(t, needs(t, "2.1 kW")), facts(t, "air-heater-with-boiler", "heat_gas", "0 W", "mains_high", "3 kW"))[7:],
		[]string{"lacks heater:heat_gas: heat_gas is 0 W, which must be above zero: outside what the formula holds for"})
}

func TestWarmUpTable(t *testing.T) {
	shown := func(fitted ...table.Fitted) []string {
		return sample.Shown(t, "heating/warm-up", sample.Van(t, "heater", fitted...))
	}
	gas := facts(t, "air-heater-with-boiler", "heat_gas", "4 kW", "gas_high", "335 g/h", "mains_low", "0.9 kW", "mains_high", "1.8 kW")
	// C = 10 kJ/(m² K) x 64.12 m² = 641 kJ/K, K = 60 W/K, C/K = 10 687 s
	sample.Same(t, shown(body(t, needs(t, "2.1 kW")), gas), []string{
		"mains-low | 900 W | 3 h 20 min |  | ",              // 10 687 s x ln(900/300) = 196 min; 1200 W are lost at 0 °C
		"mains-high | 1,800 W | 1 h 20 min | 3 h 20 min | ", // x ln(1800/1200) = 72 min, x ln(1800/600) = 196 min; at -10 °C just as much is lost
		"gas | 4,000 W | 30 min | 1 h 10 min | 1 h 50 min",  // x ln(4/3.4) = 29 min, x ln(4/2.8) = 64 min, x ln(4/2.2) = 106 min
		"together | 5,800 W | 20 min | 50 min | 1 h 10 min", // x ln(5.8/5.2) = 19 min, x ln(5.8/4.6) = 41 min, x ln(5.8/4) = 66 min
	})
	sample.Same(t, shown(body(t), gas), []string{"lacks body:insulation: neither heat_need nor insulation is stated, so nobody knows how much heat the van loses"})
	sample.Same(t, shown(body(t, needs(t, "2.1 kW")), facts(t, "thermostat")), nil)
}

func TestShowerWaterTable(t *testing.T) {
	shown := func(self string, fitted ...table.Fitted) []string {
		return sample.Shown(t, "heating/shower-water", sample.Van(t, self, fitted...))
	}
	named := func(f table.Fitted, name, system string) table.Fitted {
		f.Name, f.System = name, system
		return f
	}
	big := facts(t, "air-heater-with-boiler", "boiler", "10 L")
	small := named(facts(t, "", "boiler", "6 L"), "small", "heating/water-boiler")
	shower := named(facts(t, "", "flow", "5 L/min"), "shower", "toilet/shower")
	ofBig := []string{
		"10 °C | 38 °C | 17 L | 5.5 min | 2.5 min | 3.5 min", // 10 x 50/28 = 17.86 L; 5.95, 2.98 and 3.57 min
		"10 °C | 40 °C | 16 L | 5.5 min | 2.5 min | 3 min",   // 10 x 50/30 = 16.67
		"15 °C | 38 °C | 19 L | 6.5 min | 3 min | 3.5 min",   // 10 x 45/23 = 19.57
		"15 °C | 40 °C | 18 L | 6 min | 3 min | 3.5 min",     // 10 x 45/25 = 18
	}
	sample.Same(t, shown("heater", big, small, shower), ofBig)
	sample.Same(t, shown("shower", big, small, shower)[:1], []string{"10 °C | 38 °C | 10 L | 3.5 min | 1.5 min | 2 min"}) // the smallest
	sample.Same(t, shown("shower", big, named(facts(t, ""), "shower", "toilet/shower"))[:1], []string{"10 °C | 38 °C | 17 L | 5.5 min | 2.5 min | "})
	cold := table.Fitted{Name: "outside", System: "water/outside-shower", Facts: []table.Fact{sample.Choice("supply", "cold-only")}}
	sample.Same(t, shown("outside", cold, big), nil)
	sample.Same(t, shown("shower", shower), nil)
	broken := named(facts(t, "", "flow", "0 L/min"), "shower", "toilet/shower")
	sample.Same(t, shown("heater", big, broken)[4:],
		[]string{"lacks shower:flow: the minutes at the flow of the shower are left out: flow is 0 L/min, which must be above zero: outside what the formula holds for"})
	sample.Same(t, shown("heater", facts(t, "air-heater-with-boiler", "boiler", ""), shower), []string{"lacks heater:boiler: boiler is not stated"})
}
