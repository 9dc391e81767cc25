package spec_test

import (
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"doorpocket/build/guide"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
)

const fridge = `
[fitted.fridge]
system = "kitchen/compressor-fridge"
label = "K1"
at = { side = "inside", along = "3 m", up = "1 m", across = "2 m" }
controls = "buttons"
dc_power = "45 W"
`

const ownFleet = sample.FleetTOML + `
[routine.festival]
for = "hirer"
begin = "outside"
title = "At the festival"
about = "Do these on the field."
words = ["festival", "music"]
steps = ["vehicle/keys:engine-off"]

[routine.deep-clean]
for = "staff"
begin = "inside"
title = "Deep clean"
about = "Do these once a season. SECRET-TITLE"

[[step]]
id = "wipe"
routine = ["return", "deep-clean"]
text = "Wipe the shelf with the SECRET cloth."

[[step]]
id = "flag"
routine = "festival"
before = ["own:chairs"]
text = "Put up the flag of {$fleet.name}."

[[step]]
id = "chairs"
routine = "festival"
wait = "5 min"
at = { side = "rear", along = "7 m" }
text = "Take the chairs out."
`

const ownSheet = `
[[step]]
id = "bolt"
routine = "before-driving"
fitted = "fridge"
before = ["kitchen/compressor-fridge:latch"]
text = "Push the bolt of {$own-fridge}."
`

const ownVan = `code = "TT"
name = "Test"
build = "batch"
spec_date = 2026-10-02
`

func loadOwn(t *testing.T, fleet, sheet, van string) (*spec.Fleet, problem.List) {
	t.Helper()
	return spec.Load(fstest.MapFS{
		"fleet.toml":        {Data: []byte(fleet)},
		"builds/batch.toml": {Data: []byte(sheet)},
		"vans/tt.toml":      {Data: []byte(van)},
	}, "", library())
}

var library = sync.OnceValue(func() *components.Library {
	lib, _ := components.Load(components.Embedded())
	return lib
})

func routineOf(all []*guide.Routine, id string) []string {
	var names []string
	for _, r := range all {
		if r.ID == id {
			for _, s := range r.Steps {
				names = append(names, s.Name())
			}
		}
	}
	return names
}

// Own steps join the routines of the library and own ones; those for staff are
// kept apart from the van.
func TestOwnSteps(t *testing.T) {
	sheet := strings.Replace(ownSheet, " of {$own-fridge}", "", 1) + sample.Body + fridge
	van := ownVan + "[[step]]\nid = \"flag\"\nroutine = \"festival\"\nafter = [\"own:chairs\"]\ntext = \"Put up the flag of this van.\"\n" +
		"[fitted.keys]\nsystem = \"vehicle/keys\"\nlabel = \"V1\"\nring = 2\nstart = \"turn-key\"\ncab_lock = \"remote\"\nblade = \"folds-out\"\nliving_lock = \"own-key\"\n" +
		"main_key = [\"starter\"]\nmain_looks = \"It is black.\"\nsecond_key = [\"living-door\"]\nsecond_looks = \"It is long.\"\n"
	fleet, found := loadOwn(t, ownFleet, sheet, van)
	if found.HasErrors() {
		t.Fatal(found)
	}
	kit := guide.NewKit(&fleet.Operator, "en")
	g, found := kit.Build(fleet.Vans[0])
	if found.HasErrors() {
		t.Fatal(found)
	}
	// The van's own flag takes the place of the fleet's, and comes after the chairs.
	if got := strings.Join(routineOf(g.Routines, "festival"), " "); got != "vehicle/keys:engine-off own:chairs own:flag" && got != "own:chairs own:flag vehicle/keys:engine-off" {
		t.Errorf("festival: %s", got)
	}
	driving := routineOf(g.Routines, "before-driving")
	bolt, latch := -1, -1
	for i, name := range driving {
		switch name {
		case "own:bolt":
			bolt = i
		case "kitchen/compressor-fridge:latch":
			latch = i
		}
	}
	if bolt < 0 || latch < bolt {
		t.Errorf("the bolt does not come before the latch: %v", driving)
	}
	staff, found := kit.StaffRoutines(g, fleet.StaffRoutines, fleet.Staff["TT"].Added)
	if got := routineOf(staff, "deep-clean"); len(got) != 1 || got[0] != "own:wipe" || found.HasErrors() {
		t.Errorf("deep-clean: %v, %v", got, found)
	}
	if fleet.Library.Routine("deep-clean") != nil || len(routineOf(g.Routines, "deep-clean")) > 0 {
		t.Error("hirers see a routine for staff")
	}
	for _, s := range fleet.Vans[0].Added.Steps {
		for _, id := range s.Routines {
			if id == "deep-clean" {
				t.Error("a van for hirers knows of a routine for staff")
			}
		}
	}
}

// Mistakes in own steps are told like all others, with their place and the
// nearest name.
func TestMistakesInOwnSteps(t *testing.T) {
	for _, test := range []struct{ name, add, want string }{
		{"routine", "[[step]]\nid = \"a\"\nroutine = \"leavin\"\ntext = \"Do it.\"", `Unknown routine "leavin"`},
		{"constraint", "[[step]]\nid = \"a\"\nroutine = \"leaving\"\nafter = [\"water/waste-tank:emty\"]\ntext = \"Do it.\"", `Did you mean "water/waste-tank:empty"?`},
		{"own constraint", "[[step]]\nid = \"a\"\nroutine = \"leaving\"\nafter = [\"own:b\"]\ntext = \"Do it.\"", `Unknown step "own:b"`},
		{"fitted", "[[step]]\nid = \"a\"\nroutine = \"leaving\"\nfitted = \"frige\"\ntext = \"Do it.\"", `Did you mean "fridge"?`},
		{"no text", "[[step]]\nid = \"a\"\nroutine = \"leaving\"", `Missing key "text"`},
		{"no id", "[[step]]\nroutine = \"leaving\"\ntext = \"Do it.\"", `Missing key "id"`},
		{"twice", "[[step]]\nid = \"a\"\nroutine = \"leaving\"\ntext = \"Do it.\"\n[[step]]\nid = \"a\"\nroutine = \"leaving\"\ntext = \"Do it.\"", `A second step "a"`},
		{"wait", "[[step]]\nid = \"a\"\nroutine = \"leaving\"\nwait = \"5 kg\"\ntext = \"Do it.\"", "time"},
		{"fact", "[[step]]\nid = \"a\"\nroutine = \"leaving\"\ntext = \"Do {$nothing}.\"", `Unknown fact "nothing"`},
		{"condition", "[[step]]\nid = \"a\"\nroutine = \"leaving\"\nwhen = \"kitchen/hobb\"\ntext = \"Do it.\"", `Did you mean "kitchen/hob"?`},
		{"key", "[[step]]\nid = \"a\"\nroutine = \"leaving\"\ntext = \"Do it.\"\nafer = []", `Unknown key "afer"`},
		{"side", "[[step]]\nid = \"a\"\nroutine = \"leaving\"\ntext = \"Do it.\"\nat = { side = \"nearsid\" }", `Did you mean "nearside"?`},
		{"library routine", "[routine.leaving]\nfor = \"hirer\"\ntitle = \"Go\"\nabout = \"Go.\"", `A routine "leaving" stands in the library`},
		{"for", "[routine.mine]\ntitle = \"Go\"\nabout = \"Go.\"", `Missing key "for"`},
		{"for whom", "[routine.mine]\nfor = \"hirers\"\ntitle = \"Go\"\nabout = \"Go.\"", `Did you mean "hirer"?`},
		{"sheet", "[routine.mine]\nfor = \"hirer\"\ntitle = \"Go\"\nabout = \"Go.\"\nsigned_by_hirer = true", `Only lists for staff are sheets`},
		{"marks", "[routine.mine]\nfor = \"hirer\"\ntitle = \"Go\"\nabout = \"Go.\"\nmarks = true", `Only lists for staff are sheets`},
		{"title", "[routine.mine]\nfor = \"hirer\"\nabout = \"Go.\"", `Missing key "title"`},
		{"steps", "[routine.mine]\nfor = \"hirer\"\ntitle = \"Go\"\nabout = \"Go.\"\nsteps = [\"kitchen/hob:of\"]", `Did you mean "kitchen/hob:off"?`},
		{"name", "[routine.My_List]\nfor = \"hirer\"\ntitle = \"Go\"\nabout = \"Go.\"", `A routine cannot be called "My_List"`},
	} {
		for _, file := range []string{"fleet.toml", "builds/batch.toml", "vans/tt.toml"} {
			if file == "vans/tt.toml" && strings.HasPrefix(test.add, "[routine.") {
				test.want = `Unknown table "routine"` // a list is for several vans: it stands in one of the others
			}
			fleet, sheet, van := sample.FleetTOML, sample.Body+fridge, ownVan
			switch file {
			case "fleet.toml":
				fleet += test.add + "\n"
			case "builds/batch.toml":
				sheet += test.add + "\n"
			default:
				van += test.add + "\n"
			}
			_, found := loadOwn(t, fleet, sheet, van)
			var b strings.Builder
			if err := problem.Write(&b, found, problem.Style{}); err != nil {
				t.Fatal(err)
			}
			told := strings.Join(strings.Fields(b.String()), " ")
			if !found.HasErrors() || !strings.Contains(told, test.want) || !strings.Contains(told, file+":") {
				t.Errorf("%s in %s: %q is not told: %s", test.name, file, test.want, told)
			}
		}
	}
}

// Several languages: each has its words.
func TestOwnWordsInEveryLanguage(t *testing.T) {
	two := strings.Replace(sample.FleetTOML, `["en"]`, `["en", "xx"]`, 1)
	_, found := loadOwn(t, two+"[[step]]\nid = \"a\"\nroutine = \"leaving\"\ntext = \"Do it.\"\n", sample.Body, ownVan)
	var b strings.Builder
	_ = problem.Write(&b, found, problem.Style{})
	if !strings.Contains(strings.Join(strings.Fields(b.String()), " "), `write text = { en = "...", xx = "..." }`) {
		t.Error(b.String())
	}
}
