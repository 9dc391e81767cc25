package spec_test

import (
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
)

// What each rule warns of is tested in build/sample, where vans are made from
// the rules. Here is what a fleet says to them.

// completenessLibrary is read once for the tests that leave it as it is.
var completenessLibrary = sync.OnceValue(func() *components.Library {
	lib, _ := components.Load(components.Embedded())
	return lib
})

const completenessHead = "code = \"RW\"\nname = \"Rowan\"\nspec_date = 2026-10-02\n"

// completenessFleet is a fleet of the given files.
func completenessFleet(files map[string]string) fstest.MapFS {
	tree := fstest.MapFS{"fleet.toml": {Data: []byte(sample.FleetTOML)}}
	for name, text := range files {
		tree[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return tree
}

// completenessProblems gives, of what is said of a fleet, the errors and the
// warnings whose summaries are asked for.
func completenessProblems(t *testing.T, files map[string]string, warnings ...string) []string {
	t.Helper()
	_, found := spec.Load(completenessFleet(files), "", completenessLibrary())
	var said []string
	for _, p := range found {
		if p.Severity == problem.Error || slices.Contains(warnings, p.Summary) {
			said = append(said, p.String())
		}
	}
	return said
}

func TestCompleteness(t *testing.T) {
	const hob = "[fitted.hob]\nsystem = \"kitchen/hob\"\nburners = 2\nlighting = \"spark-button\"\ngas_all = \"300 g/h\"\n"
	const noAlarm, noTaps = "Something that burns fuel, without a carbon monoxide alarm (carbon-monoxide-alarm)", "Gas without isolation taps (gas-taps)"
	tests := []struct {
		name  string
		files map[string]string
		want  []string
	}{
		{"warned of", map[string]string{"vans/a.toml": completenessHead + sample.Body + hob},
			[]string{"vans/a.toml: warning: " + noTaps, "vans/a.toml: warning: " + noAlarm}},
		{"looked at in the spec", map[string]string{"vans/a.toml": completenessHead + "complete = [\"gas-taps\"]\n" + sample.Body + hob},
			[]string{"vans/a.toml: warning: " + noAlarm}},
		{"looked at in the build sheet and the one below it", map[string]string{
			"vans/a.toml":     completenessHead + "build = \"one\"\n",
			"builds/one.toml": "build = \"two\"\ncomplete = [\"gas-taps\"]\n" + hob,
			"builds/two.toml": "complete = [\"carbon-monoxide-alarm\"]\n" + sample.Body,
		}, nil},
		{"looked at in a sheet and in the spec", map[string]string{
			"vans/a.toml":     completenessHead + "build = \"one\"\ncomplete = [\"carbon-monoxide-alarm\"]\n",
			"vans/b.toml":     strings.ReplaceAll(completenessHead, "RW", "RX") + "build = \"one\"\n",
			"builds/one.toml": "complete = [\"gas-taps\"]\n" + sample.Body + hob,
		}, []string{"vans/b.toml: warning: " + noAlarm}},
		{"unknown rules, said once, before the warnings", map[string]string{
			"vans/a.toml":     completenessHead + "build = \"one\"\ncomplete = [\"gas-taps\", \"gas-tap\"]\n",
			"vans/b.toml":     strings.ReplaceAll(completenessHead, "RW", "RX") + "build = \"one\"\n",
			"builds/one.toml": "complete = [\"everything\", \"carbon-monoxide\"]\n" + sample.Body + hob,
		}, []string{
			`builds/one.toml:1:13: error: Nothing to look at under the name "everything"`,
			`builds/one.toml:1:27: error: Nothing to look at under the name "carbon-monoxide"`,
			`vans/a.toml:5:25: error: Nothing to look at under the name "gas-tap"`,
			"vans/a.toml: warning: " + noAlarm,
			"vans/b.toml: warning: " + noTaps,
			"vans/b.toml: warning: " + noAlarm,
		}},
		{"not a list", map[string]string{"vans/a.toml": completenessHead + "complete = true\n" + sample.Body + hob}, []string{
			`vans/a.toml:4:12: error: Wrong type for "complete"`,
			"vans/a.toml: warning: " + noTaps, "vans/a.toml: warning: " + noAlarm,
		}},
		{"a system that is not known may be the missing one", map[string]string{
			"vans/a.toml": completenessHead + sample.Body + hob + "[fitted.taps]\nsystem = \"gas/isolation-tap\"\n",
		}, []string{`vans/a.toml:25:10: error: Unknown system "gas/isolation-tap"`}},
		{"so may one of a sheet that is not known", map[string]string{
			"vans/a.toml": completenessHead + "build = \"one\"\n" + sample.Body + hob,
		}, []string{`vans/a.toml:4:9: error: Unknown build sheet "one"`}},
		{"or one behind a line that cannot be read", map[string]string{
			"vans/a.toml":     completenessHead + "build = \"one\"\n" + hob,
			"builds/one.toml": sample.Body + "[fitted.taps\nsystem = \"gas/isolation-taps\"\n",
		}, nil},
		{"a fact wrongly written leaves its rule open", map[string]string{
			"vans/a.toml": completenessHead + "complete = [\"gas-taps\"]\n" + sample.Body + hob +
				"[fitted.alarm]\nsystem = \"gas/gas-alarm\"\npower = \"own-battery\"\ndetects = [\"carbon-monoxid\"]\n",
		}, nil},
		{"a use of gas that means nothing here is none", map[string]string{
			"vans/a.toml": completenessHead + sample.Body +
				"[fitted.oven]\nsystem = \"kitchen/oven\"\nenergy = \"mains\"\nmains_power = \"2 kW\"\ngas_high = \"150 g/h\"\n",
		}, nil},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got := completenessProblems(t, test.files, noAlarm, noTaps)
			if test.want == nil { // errors that are not the subject
				got = slices.DeleteFunc(got, func(p string) bool { return strings.Contains(p, ": error: ") })
			}
			if diff := cmp.Diff(test.want, got); diff != "" && len(test.want)+len(got) > 0 {
				t.Error(diff)
			}
		})
	}
}

// An unknown rule is answered with the nearest, or with where names come from.
func TestCompletenessHints(t *testing.T) {
	_, found := spec.Load(completenessFleet(map[string]string{
		"vans/a.toml": completenessHead + "complete = [\"gas-tap\", \"everything\"]\n" + sample.Body,
	}), "", completenessLibrary())
	var details []string
	for _, p := range found {
		if p.Code == "unknown-rule" {
			details = append(details, p.Detail)
		}
	}
	want := []string{`Did you mean "gas-taps"?`, "Write the name that the warning gives, or remove it."}
	if diff := cmp.Diff(want, details); diff != "" {
		t.Error(diff)
	}
}

// Warnings speak the main language of the fleet where the library does.
func TestCompletenessLanguage(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	lib.Rule("tyres").Words["xx"] = components.RuleWords{Missing: "Xtyres", Reason: "Xreason."}
	files := completenessFleet(map[string]string{"vans/a.toml": completenessHead + sample.Body})
	files["fleet.toml"].Data = []byte(strings.Replace(sample.FleetTOML, `["en"]`, `["xx", "en"]`, 1))
	_, found := spec.Load(files, "", lib)
	for _, summary := range []string{"Xtyres (tyres)", "Nothing about the keys (keys)"} {
		if !slices.ContainsFunc(found, func(p problem.Problem) bool { return p.Summary == summary }) {
			t.Errorf("no warning says %q", summary)
		}
	}
}
