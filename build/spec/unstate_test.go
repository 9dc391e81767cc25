package spec_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components/problem"
)

// A van takes away what its build sheet states and it does not have.
func TestUnstate(t *testing.T) {
	const sheet = sample.Body + `[fitted.pump]
system = "water/pump"
label = "W1"
note = "It hums."
title = "The pump"
at = { side = "inside", along = "2 m" }
kind = "pressure"
switch = "own-switch"
lamp = true
switch_place = "by the door"
pump_place = "under the bench"
`
	load := func(van string) (*spec.Van, []string) {
		fleet, found := spec.Load(completenessFleet(map[string]string{
			"builds/b.toml": sheet, "vans/a.toml": completenessHead + "build = \"b\"\n" + van,
			"vans/b.toml": strings.Replace(completenessHead, "RW", "RX", 1) + "build = \"b\"\n", // the same sheet, whole
		}), "", completenessLibrary())
		var errors []string
		for _, p := range found {
			if p.Severity == problem.Error {
				errors = append(errors, p.String()+" | "+p.Detail)
			}
		}
		if whole := fleet.Vans[1].Named("pump"); whole.Label != "W1" || whole.Values["switch_place"].Text != "by the door" {
			t.Fatalf("another van lost something too: %+v", whole)
		}
		return fleet.Vans[0], errors
	}
	stated := func(v *spec.Van, of string) []string {
		var names []string
		for name := range v.Named(of).Values {
			names = append(names, name)
		}
		slices.Sort(names)
		return names
	}

	v, errors := load("[body]\nwithout = [\"berths\"]\n[fitted.pump]\nwithout = [\"switch_place\", \"lamp\", \"label\", \"note\", \"title\", \"at\"]\nflow = \"10 L/min\"\n")
	if len(errors) > 0 {
		t.Fatal(errors)
	}
	pump := v.Named("pump")
	if diff := cmp.Diff([]string{"flow", "kind", "lamp", "pump_place", "strainer", "switch"}, stated(v, "pump")); diff != "" {
		t.Error(diff)
	}
	if pump.Values["lamp"].Yes {
		t.Error("a fact that is taken away falls back to its default")
	}
	if pump.Label+pump.Note+pump.Title+pump.Place.Side != "" {
		t.Errorf("left: %+v", pump)
	}
	if slices.Contains(stated(v, "body"), "berths") {
		t.Error("the body still has berths")
	}

	for _, c := range []struct{ name, van, want string }{
		{"misspelt", "without = [\"pump_palce\"]\n", `vans/a.toml:6:12: error: Nothing is stated under the name "pump_palce" | Did you mean "pump_place"?`},
		{"not stated", "without = [\"flow\"]\n", `vans/a.toml:6:12: error: Nothing is stated under the name "flow" | Only what the build sheet states can be taken away: it states at, kind, label, lamp, note, pump_place, switch, switch_place, title.`},
		{"stated here", "without = [\"lamp\"]\nlamp = true\n", `vans/a.toml:6:12: error: lamp is stated and taken away | Remove the name here, or the line that states it.`},
		{"no list", "without = \"lamp\"\n", `vans/a.toml:6:11: error: Wrong type for "without"`},
		{"needed", "without = [\"kind\"]\n", `vans/a.toml:5:1: error: [fitted.pump] lacks kind | It is this: kind of pump. Add kind = "pressure" or "submersible".`},
		{"no sheet", "[fitted.other]\nsystem = \"vehicle/paint-code\"\ncode = \"Grey\"\nwithout = [\"label\"]\n", `Only what a build sheet states can be taken away, and none states anything here.`},
	} {
		_, errors := load("[fitted.pump]\n" + c.van)
		if len(errors) != 1 || !strings.Contains(errors[0], c.want) {
			t.Errorf("%s: %q, want %q", c.name, errors, c.want)
		}
	}
}
