package electrics

import (
	"fmt"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

const (
	minute quantity.Seconds = 60
	hour   quantity.Seconds = 3600
	day    quantity.Seconds = 24 * 3600
)

// habit is for how long a thing on 12 volts is on in a typical day.
type habit struct {
	system, fact string
	aDay         quantity.Seconds
	unless       string // a fact of the same system that says it better
	feed         string // a fact of the same system that says where the 12 volts come from
	driving      string // the option of it, or "always", with which the engine feeds it
}

// habits lists everything on 12 volts that the library knows, for two people on
// a cool day away from the hook-up. A van may state its own hours in a fact with
// role use-a-day. What only the engine feeds takes nothing from the leisure
// battery and is not counted.
//
// A compressor fridge states its mean over a day, or only what it takes while
// the compressor runs, which is two fifths of the time (common practice).
//
// Source: common practice.
var habits = []habit{
	{system: "electrics/lights", fact: "all_on", aDay: 3 * hour},
	{system: "electrics/awning-light", fact: "power", aDay: hour},
	{system: "electrics/tv", fact: "dc_power", aDay: 2 * hour},
	{system: "electrics/satellite-dish", fact: "power", aDay: 2 * hour},
	{system: "electrics/inverter", fact: "idle", aDay: 2 * hour},
	{system: "electrics/control-panel", fact: "idle", aDay: day},
	{system: "electrics/sockets-12v", fact: "devices", aDay: 3 * hour, feed: "live", driving: "with-ignition"},
	{system: "gas/gas-alarm", fact: "dc_power", aDay: day},
	{system: "heating/air-heater-with-boiler", fact: "fan_power", aDay: 8 * hour},
	{system: "heating/diesel-heater", fact: "fan_power", aDay: 8 * hour},
	{system: "heating/radiator-heating", fact: "pump_power", aDay: 8 * hour},
	{system: "heating/floor-heating", fact: "battery_mat", aDay: 2 * hour},
	{system: "kitchen/compressor-fridge", fact: "dc_mean", aDay: day},
	{system: "kitchen/compressor-fridge", fact: "dc_power", aDay: day * 2 / 5, unless: "dc_mean"},
	{system: "kitchen/extractor", fact: "dc_power", aDay: 30 * minute},
	{system: "kitchen/three-way-fridge", fact: "dc_power", driving: "always"},
	{system: "openings/powered-roof-light", fact: "fan_power", aDay: 2 * hour},
	{system: "toilet/cassette-toilet", fact: "power", aDay: 5 * minute},
	{system: "toilet/dry-toilet", fact: "power", aDay: day},
	{system: "toilet/macerator-toilet", fact: "power", aDay: 5 * minute},
	{system: "water/can-filling", fact: "power", aDay: 5 * minute},
	{system: "water/pump", fact: "power", aDay: 20 * minute},
}

// habitOf finds the habit for a fact. It is not counted where counts is false.
func habitOf(s table.Stated) (aDay quantity.Seconds, counts bool, err error) {
	for _, h := range habits {
		if h.system != s.Fitted.System || h.fact != s.Fact.Name {
			continue
		}
		if h.skips(s.Fitted) {
			return 0, false, nil
		}
		own := s.Fitted.WithRole("use-a-day")
		if len(own) == 0 {
			return h.aDay, true, nil
		}
		aDay, err = calc.Take[quantity.Seconds](own[0].Fact)
		if err == nil && aDay > day {
			err = calc.Outside("%s is more than a day", own[0].Fact.Name)
		}
		return aDay, err == nil, err
	}
	return 0, false, fmt.Errorf("nobody knows for how long a day %s of %s is on", s.Fact.Name, s.Fitted.System)
}

func (h habit) skips(f table.Fitted) bool {
	if h.driving == "always" {
		return true
	}
	if feed, ok := f.Fact(h.feed); ok && feed.Option == h.driving {
		return true
	}
	_, better := f.Fact(h.unless)
	return better
}

// consumer is something on 12 volts with its typical day.
type consumer struct {
	use     table.Use
	current quantity.Amperes
	aDay    quantity.Seconds
}

// charge is what it takes in a day.
func (c consumer) charge() quantity.Coulombs {
	return quantity.Coulombs(float64(c.current) * float64(c.aDay))
}

// consumers lists what the leisure battery feeds, in the order of the van, and
// what cannot be reckoned with.
func consumers(in table.Input) ([]consumer, []table.Lack) {
	var all []consumer
	var lacks []table.Lack
	for _, stated := range in.WithRole("dc-power") {
		c, counts, err := newConsumer(stated)
		switch {
		case err != nil:
			lacks = append(lacks, table.Lack{Use: stated.Use(), Reason: err.Error()})
		case counts:
			all = append(all, c)
		}
	}
	return all, lacks
}

func newConsumer(stated table.Stated) (consumer, bool, error) {
	aDay, counts, err := habitOf(stated)
	if err != nil || !counts {
		return consumer{}, false, err
	}
	power, err := calc.Take[quantity.Watts](stated.Fact)
	if err != nil {
		return consumer{}, false, err
	}
	current, err := Current(power, houseVoltage)
	return consumer{use: stated.Use(), current: current, aDay: aDay}, err == nil, err
}
