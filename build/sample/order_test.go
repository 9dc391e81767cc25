package sample_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"doorpocket/build/guide"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/quantity"
	"doorpocket/content"
)

// What a technician knows of the order of steps, one chain a line: whatever
// stands left of a < comes before whatever stands right of it, on every van
// that has both. Steps are named as in system.toml: "gas:close-valve" is that
// step of any system of the family. All of it is common practice.
var knownOrder = map[string]string{
	"arriving": `
		safety/overnight-rules:read-board, safety/storm:outlook < vehicle/levelling:level < vehicle/keys:engine-off < vehicle/levelling:chock
		electrics/electric-step:out < electrics/hook-up-inlet:uncoil, gas/cylinder-locker:open-valve, kitchen/fridge-vents:keep-clear, heating/flue-and-vents:look-clear
		vehicle/levelling:chock < vehicle/stabilisers:down, electrics/hook-up-inlet:connect-van, gas:open-valve, electrics/electric-step:out
		electrics/consumer-unit:main-off < electrics/hook-up-inlet:connect-van
		electrics/hook-up-inlet:uncoil < electrics/hook-up-inlet:inspect-lead < electrics/hook-up-inlet:connect-van < electrics/hook-up-inlet:lay-lead
		electrics/hook-up-inlet:lay-lead, electrics/hook-up-inlet:ask-amps < electrics/hook-up-inlet:connect-post
		electrics/hook-up-inlet:connect-van < electrics/hook-up-inlet:connect-post < electrics/consumer-unit:main-on < electrics/consumer-unit:test-rcd
		electrics/consumer-unit:test-rcd < electrics/consumer-unit:reset-rcd < electrics/hook-up-inlet:polarity
		electrics/hook-up-inlet:polarity < electrics/charger:switch-on < electrics/charger:look-charging
		electrics/hook-up-inlet:polarity < heating:on, kitchen/three-way-fridge:to-mains, kitchen/three-way-fridge:look-what-it-chose, kitchen/induction-hob:low-first
		electrics/control-panel:master-on < safety/carbon-monoxide-alarm:test, gas/gas-alarm:test, electrics/control-panel:read-panel, water/level-gauge:read
		electrics/control-panel:master-on < water/pump:on, heating:on, kitchen/compressor-fridge:look-at-sign, toilet/dry-toilet:fan-on
		electrics/control-panel:master-on < electrics/tv-aerial:raise, electrics/satellite-dish:raise, vehicle/stabilisers:down
		safety/carbon-monoxide-alarm:test, gas/gas-alarm:test, gas/drop-vents:clear-below < gas:open-valve
		safety/carbon-monoxide-alarm:test < heating:on, kitchen/three-way-fridge:to-gas
		gas:open-valve < gas/changeover-regulator:open-second, gas/changeover-regulator:point-at-open, gas/regulator-and-hose:press-guard < gas/isolation-taps:open-taps
		gas/isolation-taps:open-taps < kitchen/hob:light-one < heating/water-boiler:on, kitchen/three-way-fridge:to-gas, kitchen/three-way-fridge:look-what-it-chose
		kitchen/hob:light-one < heating/air-heater-with-boiler:on, heating/radiator-heating:on
		kitchen/glass-lid:open < kitchen/hob:light-one
		kitchen/fridge-vents:keep-clear < kitchen/three-way-fridge:to-gas
		heating/flue-and-vents:look-clear, heating/flue-and-vents:cover-off, heating/flue-and-vents:close-window, openings/roof-vents:look-open < heating:on
		heating/diesel-heater:look-underneath < heating/diesel-heater:on
		toilet/plug-holes:open-valve < water/pump:on < heating/air-heater-with-boiler:on, heating/water-boiler:on, heating:hot-water-on
		heating:on < heating/thermostat:set`,
	"leaving": `
		kitchen/hob:off < electrics/hook-up-inlet:disconnect-post
		gas/outside-gas-point:disconnect < vehicle/levelling:off-ramps
		kitchen:off, heating:mains-off, heating/floor-heating:off, heating/roof-air-conditioner:off < electrics/consumer-unit:main-off
		electrics/consumer-unit:main-off < electrics/hook-up-inlet:disconnect-post < electrics/hook-up-inlet:disconnect-van < electrics/hook-up-inlet:coil
		electrics/hook-up-inlet:coil, electrics/site-tv-inlet:disconnect, vehicle/stabilisers:up < vehicle/levelling:off-ramps < water/waste-tank:empty
		toilet/cassette-toilet:shut-blade < toilet/cassette:empty < toilet/cassette:dose < toilet/cassette:slide-in < vehicle/levelling:off-ramps
		toilet/portable-toilet:empty < toilet/portable-toilet:dose < vehicle/levelling:off-ramps
		toilet/dry-toilet:empty < toilet/dry-toilet:new-bag, toilet/dry-toilet:new-litter < vehicle/levelling:off-ramps
		vehicle/levelling:off-ramps < toilet/macerator-toilet:empty < toilet/macerator-toilet:valve-shut < toilet/macerator-toilet:prime-tank
		toilet/macerator-toilet:empty < water/waste-tank:empty < water/waste-tank:shut-drain`,
	"before-driving": `
		gas/outside-gas-point:disconnect, kitchen/hob:off, kitchen/grill:off, kitchen/oven:off, kitchen/three-way-fridge:to-driving < gas/isolation-taps:close-taps-but-heater
		gas/outside-gas-point:disconnect, kitchen/hob:off, kitchen/grill:off, kitchen/oven:off, kitchen/three-way-fridge:to-driving < gas/isolation-taps:close-taps
		heating:off < gas/isolation-taps:close-taps < gas:close-valve < vehicle/keys:walk-round
		gas/isolation-taps:close-taps-but-heater < gas:close-valve < openings/service-lockers:shut
		gas/cylinder-locker:close-valve < gas/cylinder-locker:check-strap < openings/service-lockers:shut
		heating/air-heater-with-boiler:off, heating/water-boiler:off, heating/radiator-heating:off, heating/diesel-heater:off < kitchen:latch, living:stow, toilet/washroom:latch
		kitchen:latch, living:stow, toilet/washroom:latch < electrics/lights:all-off < water/pump:pump-off
		heating:off < heating/flue-and-vents:cover-on
		electrics/tv-aerial:lower, electrics/satellite-dish:lower, openings/powered-roof-light:shut, living/drop-down-bed:stow, openings/awning:shut < water/pump:pump-off
		kitchen/hob:off < kitchen/hob:clear < kitchen/glass-lid:latch
		electrics/mains-sockets:unplug-loose, kitchen/hob:clear, vehicle/masses:heavy-low < kitchen/drawers-and-catches:latch
		openings/blinds-and-screens:stow < openings/crank-roof-light:shut < openings/crank-roof-light:lock
		openings/blinds-and-screens:stow < openings/lift-roof-light:shut, openings/sliding-roof-light:shut, openings/powered-roof-light:shut, openings/hinged-window:shut, openings/sliding-window:shut
		living/lounge-bed:stow < living/table:stow < living/cab-seats:stow
		living/ladder:stow, living/drop-down-bed:strip < living/drop-down-bed:stow < living/travel-seats:fold-out < living/travel-seats:head-restraints
		living/travel-seats:fold-out < living/child-seats:tight
		toilet/shower:stow-head, toilet/shower:latch-screen, toilet/washroom:basin-up, toilet/washroom:wall-back, toilet/washroom:clear-shelves < toilet/washroom:latch
		kitchen:off, kitchen:latch, heating:off, living:stow, toilet:latch, water/pump:pump-off, gas/isolation-taps:close-taps < openings/habitation-door:shut
		openings/hinged-window:shut, openings/sliding-window:shut, openings/lift-roof-light:shut, openings/awning:shut, living/child-seats:tight < openings/habitation-door:shut
		openings/habitation-door:shut < electrics/electric-step:in, vehicle/stabilisers:up, water/waste-tank:shut-drain, electrics/hook-up-inlet:lead-off < vehicle/keys:walk-round
		electrics/solar:panel-away, openings/cab-blinds:cover-off, vehicle/cycle-rack:bikes-tied, openings/garage:lash < openings/garage:shut
		water/level-gauge:read < water/fresh-tank:travel-level
		vehicle/keys:walk-round < vehicle/body:read-height, living/travel-seats:belt-up < vehicle/warning-lamps:lamps-out`,
	"refill": `
		vehicle/masses:water-weight < water/filler:fill
		water/fresh-tank:close-drain, heating:close-drain, water/taps:close-taps, water/whole-van-drain:close-low-drains, water/waste-tank:shut-drain < water/filler:fill
		water/outside-shower:close-outside, water/filter:put-in < water/filler:fill < water/filler:lock-cap
		electrics/control-panel:master-on, water/filler:fill, toilet/plug-holes:open-valve < water/pump:on < water/pump:prime
		water/filler:fill < water/can-filling:by-can < water/pump:prime
		water/can-filling:fill-cans < water/pump:prime
		water/pump:prime < water/taps:hot-through < toilet/shower:run-through, water/outside-shower:prime-outside < heating:on, heating:hot-water-on
		water/pump:prime < water/taps:cold-through, water/filter:rinse-through, toilet:flush-through, toilet/plug-holes:fill-bends`,
	"drain-down": `
		heating:off, heating:off-to-drain < heating/boiler-drain-valve:run-cool < water/pump:pump-off < water/fresh-tank:open-drain
		water/pump:pump-off < heating/boiler-drain-valve:open-drain < heating/boiler-drain-valve:leave-open
		heating/boiler-drain-valve:open-drain, water/fresh-tank:open-drain < water/taps:open-taps < water/pump:clear-pipes
		toilet/shower:head-down, toilet/shower:open-fixed, water/outside-shower:open-drain, water/whole-van-drain:open-low-drains < water/pump:clear-pipes
		water/pump:clear-pipes, toilet/plug-holes:open-plugs, toilet/plug-holes:open-valve-to-drain < water/waste-tank:empty < water/waste-tank:leave-open
		water/waste-tank:leave-open < water/whole-van-drain:look-under < electrics/control-panel:master-off < water/whole-van-drain:hang-note
		heating:off, heating:off-to-drain, kitchen/three-way-fridge:off < gas/isolation-taps:close-taps-lay-up < gas:close-valve, gas:close-valve-lay-up
		gas:close-valve, gas:close-valve-lay-up, heating:off, heating:off-to-drain, heating/diesel-heater:fan-quiet < electrics/control-panel:master-off
		openings/powered-roof-light:shut-to-lay-up, openings/awning:dry, water/pump:clear-pipes, kitchen/compressor-fridge:off < electrics/control-panel:master-off
		toilet/cassette-toilet:flush-dry, toilet/cassette-toilet:drain-flush < toilet/cassette-toilet:shut-blade < toilet/cassette:empty < toilet/cassette:leave-open
		toilet/cassette:leave-open < toilet/washroom:leave-airy
		kitchen/three-way-fridge:empty < kitchen/three-way-fridge:off < kitchen/three-way-fridge:wipe < kitchen/three-way-fridge:door-ajar
		kitchen/compressor-fridge:empty < kitchen/compressor-fridge:off < kitchen/compressor-fridge:wipe < kitchen/compressor-fridge:door-ajar
		heating:off < heating/flue-and-vents:cover-on
		electrics/leisure-battery:charge-full < electrics/control-panel:master-off < electrics/leisure-battery:isolate, vehicle/starter-battery:isolate, vehicle/starter-battery:maintain
		electrics/leisure-battery:isolate, vehicle/starter-battery:isolate, water/whole-van-drain:hang-note, toilet/washroom:leave-airy < openings/habitation-door:lock-to-lay-up
		openings/hinged-window:shut-to-lay-up, openings/lift-roof-light:shut-to-lay-up, living:leave-open < openings/habitation-door:lock-to-lay-up
		openings/habitation-door:lock-to-lay-up < openings/service-lockers:shut-to-lay-up, vehicle/parked-for-weeks:tyres-up`,
	"return": `
		heating:off, heating:off-to-drain < gas/isolation-taps:close-taps-lay-up
		living/storage:empty, toilet/washroom:wipe < openings/habitation-door:sweep < electrics/lights:all-off
		water/pump:pump-off < vehicle/fuel:fill-up, vehicle/fuel:as-found
		kitchen/hob:off, kitchen/grill:off, kitchen/oven:off, kitchen/three-way-fridge:off < gas/isolation-taps:close-taps-lay-up < gas:close-valve, gas:close-valve-lay-up
		gas:close-valve, gas:close-valve-lay-up, water/waste-tank:shut-drain, toilet/cassette:slide-in < vehicle/fuel:fill-up, vehicle/fuel:as-found
		vehicle/fuel:fill-up, vehicle/fuel:as-found < vehicle/warning-lamps:note-lamps < vehicle/body:photograph
		living/storage:empty, toilet/washroom:wipe < electrics/lights:all-off < water/pump:pump-off
		toilet/shower:dry < toilet/washroom:wipe < water/waste-tank:empty < water/waste-tank:shut-drain
		toilet/cassette-toilet:shut-blade < toilet/cassette:empty < toilet/cassette:slide-in`,
	"frost": `
		gas/cylinder-locker:enough-gas, gas/refillable-tank:read-gauge, heating/diesel-heater:fuel-for-night < water/whole-van-drain:decide
		water/whole-van-drain:decide < water/waste-tank:empty-tonight, toilet:empty-tonight, heating:keep-warm, water/fresh-tank:drain-tonight
		heating/flue-and-vents:clear-snow, gas/drop-vents:keep-open, kitchen/fridge-vents:clear-snow < electrics/electric-step:frost-in < heating:keep-warm`,
	"prepare": `
		electrics/inverter:try < electrics/hook-up-inlet:plug-in-at-base < kitchen/induction-hob:heat-water, kitchen/microwave:heat-water, kitchen/electric-hotplate:heats-up
		electrics/control-panel:master-on < electrics/lights:try-each, electrics/charger:look-charging, safety/carbon-monoxide-alarm:test, water/pump:on, electrics/tv-aerial:try
		electrics/hook-up-inlet:inspect-lead < electrics/hook-up-inlet:plug-in-at-base < electrics/consumer-unit:test-rcd < electrics/mains-sockets:test
		electrics/hook-up-inlet:plug-in-at-base < electrics/charger:look-charging, heating:test-mains, heating:heat-high, kitchen/three-way-fridge:cool-before
		gas/regulator-and-hose:bend-hoses, gas/cylinder-locker:look-at-seal, gas/refillable-tank:fill, safety/carbon-monoxide-alarm:test, gas/gas-alarm:test < gas:open-to-try
		gas:open-to-try < gas/isolation-taps:open-taps-to-try < kitchen/hob:light-each, kitchen/grill:light-it, kitchen/oven:light-it, heating:test-gas, heating:heat-high
		kitchen/hob:light-each, kitchen/grill:light-it, kitchen/oven:light-it, heating:test-gas, heating:heat-high < gas/isolation-taps:close-taps-after-try < gas:close-after-try
		water/fresh-tank:close-drain, heating/boiler-drain-valve:close-drain < water/filler:fill < water/pump:on < water/pump:prime < water/taps:hot-through < heating:heat-high
		water/taps:hot-through < heating/boiler-drain-valve:look-drips, heating/water-boiler:test-gas, heating/water-boiler:test-mains
		heating:test-gas, heating:test-mains, heating:heat-high < heating:off-after-try < gas/isolation-taps:close-taps-after-try < gas:close-after-try
		water/filter:rinse-through, toilet/shower:run-through, heating/boiler-drain-valve:look-drips, heating:off-after-try < water/pump:off-after-try`,
	"monthly": `
		electrics/control-panel:master-on < water/pump:on < water/taps:run-off, toilet/shower:run-off, water/outside-shower:run-off, water/pump:holds-pressure
		water/taps:run-off, toilet/shower:run-off, water/pump:holds-pressure < water/pump:clean-strainer
		safety/carbon-monoxide-alarm:test, gas/gas-alarm:test, gas/regulator-and-hose:bend-hoses < gas:open-to-try < gas/regulator-and-hose:soap-joints
		gas:open-to-try < kitchen/hob:light-each, kitchen/three-way-fridge:try-each-supply, heating:run-monthly < gas/isolation-taps:close-taps-after-try < gas:close-after-try
		gas/isolation-taps:turn-each < gas/isolation-taps:open-taps-to-try
		electrics/hook-up-inlet:inspect-lead < electrics/hook-up-inlet:plug-in-at-base < electrics/consumer-unit:test-rcd, kitchen/three-way-fridge:try-each-supply
		water/taps:run-off < heating/water-boiler:heat-high
		heating:run-monthly, heating/water-boiler:heat-high < heating:off-after-try < gas/isolation-taps:close-taps-after-try
		water/outside-shower:run-off, water/tank-disinfection:rinse-out < water/pump:off-after-try < water/pump:clean-strainer < electrics/control-panel:off-after-try
		safety/carbon-monoxide-alarm:test, heating:off-after-try, water/pump:off-after-try < electrics/control-panel:off-after-try
		heating/boiler-drain-valve:work-valve < heating:run-monthly, heating/water-boiler:heat-high`,
	"check-in": `
		electrics/control-panel:master-on < water/pump:on < water/taps:no-drips, water/outside-shower:no-drips, toilet/plug-holes:run-off-well
		electrics/control-panel:master-on < electrics/control-panel:read-panel, water/pump:holds-pressure, electrics/lights:try-each, heating:read-panel
		water/pump:holds-pressure < heating/boiler-drain-valve:look-drips
		water/outside-shower:no-drips, heating/boiler-drain-valve:look-drips, heating:off-after-try < water/pump:off-after-try < electrics/control-panel:off-after-try
		electrics/tv-aerial:try, electrics/lights:try-each, electrics/electric-step:try, heating:read-panel < electrics/control-panel:off-after-try`,
	"away-from-hook-up": `
		toilet/cassette-toilet:shut-blade < toilet/cassette:empty < toilet/cassette:dose < toilet/cassette:slide-in
		water/waste-tank:empty < water/waste-tank:shut-drain < water/filler:fill < electrics/solar:park-in-sun, electrics/solar:panel-out
		toilet/cassette:slide-in < electrics/solar:park-in-sun, electrics/solar:panel-out`,
}

// Of some steps one knows what alone may stand before or after them.
var knownEnds = []struct {
	routine, step string
	before, after []string // all that may stand there; nil for no rule
}{
	{"arriving", "vehicle/keys:engine-off", []string{"vehicle/levelling:level", "safety/overnight-rules:read-board", "safety/storm:outlook"}, nil},
	{"before-driving", "vehicle/keys:walk-round", nil, []string{"vehicle/body:read-height", "vehicle/warning-lamps:lamps-out", "living/travel-seats:belt-up"}},
	{"drain-down", "vehicle/parked-for-weeks:stand-firm", []string{}, nil},
	{"return", "vehicle/keys:hand-back", nil, []string{}},
}

// Every routine of every van stands in an order that a technician would follow.
func TestOrderOfRoutines(t *testing.T) {
	met := map[string]bool{}
	for name, g := range guides(t) {
		for _, r := range forStaff(t, name, g) {
			checkOrder(t, name, r, met)
			checkWhole(t, name, g, r)
			checkPlaces(t, name, r)
		}
		for _, r := range g.Routines {
			checkOrder(t, name, r, met)
			checkEnds(t, name, r)
			checkWhole(t, name, g, r)
			checkPlaces(t, name, r)
			if !strings.HasPrefix(name, "Everything") { // a van whose things are where they would be
				checkLocked(t, name, r)
				checkWaits(t, name, r)
			}
		}
		if g.Van.Aboard("safety/carbon-monoxide-alarm") && !slices.Contains(stepsOf(g, "arriving"), "safety/carbon-monoxide-alarm:test") {
			t.Errorf("%s: the carbon monoxide alarm is not tested on arriving", name)
		}
	}
	for routine, text := range knownOrder {
		for _, chain := range chains(text) {
			for _, name := range slices.Concat(chain...) {
				if !met[routine+" "+name] {
					t.Errorf("%s: no van has the step %s: what is known of it proves nothing", routine, name)
				}
			}
		}
	}
}

// guides are those of vans with everything, each with other options and its
// things in other places, and of the demonstration fleet, whose things stand
// where they would. What must come first must not hang on where things are.
func guides(t *testing.T) map[string]*guide.Guide {
	t.Helper()
	lib, found := components.Load(components.Embedded())
	if found.HasErrors() {
		t.Fatal(text(t, found))
	}
	all := map[string]*guide.Guide{}
	for option := range 6 {
		fleet, found := spec.Load(sample.Everything(lib, option), "", lib)
		if found.HasErrors() {
			t.Fatal(text(t, found))
		}
		build(t, all, fleet, fmt.Sprintf(" with options %d", option))
		for seed := range uint64(3) {
			scatter(fleet.Vans[0], rand.New(rand.NewPCG(seed, uint64(option))))
			build(t, all, fleet, fmt.Sprintf(" with options %d, scattered %d", option, seed))
		}
	}
	fleet, found := spec.Load(content.Fleet(), "content/", lib)
	if found.HasErrors() {
		t.Fatal(text(t, found))
	}
	build(t, all, fleet, "")
	return all
}

// forStaff are the routines for staff on the van of a guide, without anything of
// an operator's own.
func forStaff(t *testing.T, name string, g *guide.Guide) []*guide.Routine {
	t.Helper()
	routines, found := guide.NewKit(g.Operator, "en").StaffRoutines(g, nil, spec.Added{})
	if found.HasErrors() {
		t.Fatal(name, text(t, found))
	}
	return routines
}

// scatter puts the things of a van anywhere.
func scatter(v *spec.Van, random *rand.Rand) {
	sides := []string{"offside", "nearside", "front", "rear", "roof", "under", "inside", ""}
	for _, f := range v.Fitted {
		f.Place.Side = sides[random.IntN(len(sides))]
		f.Place.Along.Quantity, _ = quantity.New(7*random.Float64(), quantity.SI(quantity.Length))
	}
}

func build(t *testing.T, all map[string]*guide.Guide, fleet *spec.Fleet, suffix string) {
	t.Helper()
	kit := guide.NewKit(&fleet.Operator, "en")
	for _, v := range fleet.Vans {
		g, found := kit.Build(v)
		if found.HasErrors() {
			t.Fatal(text(t, found))
		}
		all[v.Name+suffix] = g
	}
}

// chains reads the lines of what is known: sets of names in order.
func chains(text string) [][][]string {
	var all [][][]string
	for line := range strings.Lines(text) {
		var chain [][]string
		for set := range strings.SplitSeq(line, "<") {
			var names []string
			for name := range strings.SplitSeq(set, ",") {
				if name = strings.TrimSpace(name); name != "" {
					names = append(names, name)
				}
			}
			chain = append(chain, names)
		}
		all = append(all, chain)
	}
	return all
}

func checkOrder(t *testing.T, van string, r *guide.Routine, met map[string]bool) {
	t.Helper()
	at := map[string][]int{} // by both forms of a step's name
	for i, s := range r.Steps {
		names := []string{s.Name()}
		if !s.Own {
			names = append(names, s.Page.Fitted.System.Family+":"+s.ID)
		}
		for _, name := range names {
			at[name] = append(at[name], i)
			met[r.ID+" "+name] = true
		}
	}
	for _, chain := range chains(knownOrder[r.ID]) {
		for i, earlier := range chain {
			for _, later := range chain[i+1:] {
				for _, a := range earlier {
					for _, b := range later {
						if len(at[a]) > 0 && len(at[b]) > 0 && slices.Max(at[a]) > slices.Min(at[b]) {
							t.Errorf("%s, %s: %s comes after %s", van, r.ID, a, b)
						}
					}
				}
			}
		}
	}
}

func checkEnds(t *testing.T, van string, r *guide.Routine) {
	t.Helper()
	names := namesOf(r)
	for _, end := range knownEnds {
		i := slices.Index(names, end.step)
		if end.routine != r.ID || i < 0 {
			continue
		}
		for _, name := range names[:i] {
			if end.before != nil && !slices.Contains(end.before, name) {
				t.Errorf("%s, %s: %s comes before %s", van, r.ID, name, end.step)
			}
		}
		for _, name := range names[i+1:] {
			if end.after != nil && !slices.Contains(end.after, name) {
				t.Errorf("%s, %s: %s comes after %s", van, r.ID, name, end.step)
			}
		}
	}
}

// checkLocked looks whether anything is left to do in the living area once its
// door is locked for the road: whoever drives goes in by the cab.
func checkLocked(t *testing.T, van string, r *guide.Routine) {
	t.Helper()
	names := namesOf(r)
	locked := slices.Index(names, "openings/habitation-door:shut")
	if r.ID != "before-driving" || locked < 0 {
		return
	}
	for _, s := range r.Steps[locked+1:] {
		if (s.Place.Side == "inside" || s.Place.Side == "roof") && s.Name() != "living/travel-seats:belt-up" {
			t.Errorf("%s: %s is inside, and the door is locked", van, s.Name())
		}
	}
}

// What was found by reading the lists of the demonstration vans: where a step
// is done, if not at its thing.
var knownPlaces = map[string]string{
	"openings/hinged-window:shut": "inside", "openings/sliding-window:shut": "inside", "electrics/hook-up-inlet:polarity": "inside",
	"vehicle/keys:walk-round": "", "toilet/macerator-toilet:valve-shut": "", "vehicle/cycle-rack:bikes-tied": "", "openings/cab-blinds:cover-off": "",
}

func checkPlaces(t *testing.T, van string, r *guide.Routine) {
	t.Helper()
	for _, s := range r.Steps {
		if side, known := knownPlaces[s.Name()]; known && s.Place.Side != side && s.Page.Fitted.Place.Side != "" {
			t.Errorf("%s, %s: %s is done at %q, not %q", van, r.ID, s.Name(), s.Place.Side, side)
		}
	}
}

// A gas tank that is shut by a switch inside is opened there, wherever it hangs;
// one with a valve at the valve.
func TestPlaceOfTheGasSwitch(t *testing.T) {
	at := map[string][]string{}
	for _, g := range guides(t) {
		for _, r := range g.Routines {
			for _, s := range r.Steps {
				if s.Name() != "gas/refillable-tank:open-valve" {
					continue
				}
				how := g.Van.Value(s.Page.Fitted, "shut_off").Options[0]
				at[how] = append(at[how], s.Place.Side)
			}
		}
	}
	if slices.ContainsFunc(at["switch"], func(side string) bool { return side != "" }) || len(at["switch"]) == 0 {
		t.Errorf("tanks with a switch are opened at %q", at["switch"])
	}
	if !slices.ContainsFunc(at["valve"], func(side string) bool { return side != "" }) {
		t.Errorf("tanks with a valve are opened at %q", at["valve"])
	}
}

// checkWaits looks whether what takes its time is followed by something to do
// meanwhile: on none of these vans need anybody stand about for the heater's fan
// or a drain.
func checkWaits(t *testing.T, van string, r *guide.Routine) {
	t.Helper()
	for _, s := range r.Steps {
		if s.Waits && s.HeldUp > 0 && s.HeldUp <= s.Number+2 {
			t.Errorf("%s, %s: one waits for %s with nothing to do", van, r.ID, s.Name())
		}
	}
}

// checkWhole looks whether a routine has every step that stands on the van,
// once.
func checkWhole(t *testing.T, van string, g *guide.Guide, r *guide.Routine) {
	t.Helper()
	want := 0
	for _, p := range g.Pages {
		for _, s := range p.Fitted.System.Steps {
			if slices.Contains(s.Routines, r.ID) && g.Van.Holds(p.Fitted, s.When) {
				want++
			}
		}
	}
	seen := map[string]bool{}
	for _, s := range r.Steps {
		seen[s.Key()] = true
	}
	if len(r.Steps) != want || len(seen) != want {
		t.Errorf("%s, %s: %d steps, %d of them different, not %d", van, r.ID, len(r.Steps), len(seen), want)
	}
}

func stepsOf(g *guide.Guide, routine string) []string {
	for _, r := range g.Routines {
		if r.ID == routine {
			return namesOf(r)
		}
	}
	return nil
}

func namesOf(r *guide.Routine) []string {
	var names []string
	for _, s := range r.Steps {
		names = append(names, s.Name())
	}
	return names
}
