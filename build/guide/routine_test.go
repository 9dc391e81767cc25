package guide_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/guide"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
)

// ownSystem is a fleet's own system with these steps, each "id after after".
func ownSystem(files fstest.MapFS, name string, steps ...string) {
	system, lines := "family = \"living\"\n", "title = \"Thing\"\nabout = \"A thing.\"\nwords = [\"thing\"]\n[step]\n"
	for _, step := range steps {
		id, after, _ := strings.Cut(step, " after ")
		system += "[[step]]\nid = \"" + id + "\"\nroutine = \"leaving\"\nafter = [\"" + after + "\"]\n"
		lines += id + " = \"Do it.\"\n"
	}
	files["systems/living/"+name+"/system.toml"] = &fstest.MapFile{Data: []byte(system)}
	files["systems/living/"+name+"/lines.en.toml"] = &fstest.MapFile{Data: []byte(lines)}
	files["systems/living/"+name+"/page.en.md"] = &fstest.MapFile{Data: []byte("It is a thing.\n")}
}

// Steps that wait for each other are told with their names and files.
func TestCycleNamesItsSteps(t *testing.T) {
	files := fstest.MapFS{
		"fleet.toml":   {Data: []byte(sample.FleetTOML)},
		"vans/tt.toml": {Data: []byte("code = \"TT\"\nname = \"Test\"\nspec_date = 2026-10-02\n" + sample.Body + "[fitted.one]\nsystem = \"living/one\"\n[fitted.two]\nsystem = \"living/two\"\n")},
	}
	ownSystem(files, "one", "lift after living/two:push")
	ownSystem(files, "two", "push after living/one:lift")
	lib, _ := components.Load(components.Embedded())
	fleet, found := spec.Load(files, "fleet/", lib)
	if found.HasErrors() {
		t.Fatal(found)
	}
	_, found = guide.NewKit(&fleet.Operator, "en").Build(fleet.Vans[0])
	var b strings.Builder
	if err := problem.Write(&b, found, problem.Style{}); err != nil {
		t.Fatal(err)
	}
	got := strings.Join(strings.Fields(b.String()), " ")
	for _, want := range []string{
		"fleet/systems/living/one/system.toml:2:1: error: Steps of routine leaving wait for each other",
		"On Test living/one:lift (fleet/systems/living/one/system.toml:2:1) waits for living/two:push (fleet/systems/living/two/system.toml:2:1) waits for living/one:lift.",
		"this step is in the ring: fleet/systems/living/two/system.toml:2:1",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in %q", want, got)
		}
	}
}
