package sample_test

import (
	"flag"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/problem"
)

var update = flag.Bool("update", false, "rewrite the golden warnings")

const goldenIncomplete = "../../testdata/golden/incomplete.txt"

// embedded is the library that comes with the program, read once.
var embedded = sync.OnceValues(func() (*components.Library, problem.List) { return components.Load(components.Embedded()) })

// told holds what was said before: many tests stumble over one mistake, and it
// is worth reading once.
var told sync.Map

// library is free of errors, or the test ends. Which they are is said once.
func library(t *testing.T) *components.Library {
	t.Helper()
	lib, found := embedded()
	if found.HasErrors() {
		fatal(t, "the library is wrong", found)
	}
	return lib
}

// fatal ends a test, with the problems that no test has told yet.
func fatal(t *testing.T, what string, found problem.List) {
	t.Helper()
	found.Dedupe()
	fresh := slices.DeleteFunc(slices.Clone(found), func(p problem.Problem) bool {
		_, known := told.LoadOrStore(p.Text(problem.Style{}), true)
		return known || p.Severity != problem.Error
	})
	if len(fresh) == 0 {
		t.Fatalf("%s, as was said before", what)
	}
	t.Fatalf("%s:\n%s", what, text(t, fresh))
}

// warning is what a rule says of a tiny van: one warning or none.
func warning(t *testing.T, lib *components.Library, van sample.Tiny, rule *components.Rule, complete string) problem.List {
	t.Helper()
	_, found := spec.Load(van.Fleet(complete), "", lib)
	if found.HasErrors() {
		fatal(t, "rule "+rule.Name+": the van is wrong", found)
	}
	name := "(" + rule.Name + ")"
	return slices.DeleteFunc(found, func(p problem.Problem) bool {
		return p.Code != spec.IncompleteCode || !strings.HasSuffix(p.Summary, name)
	})
}

// lacking gives a tiny van for each way in which the rule's signs come about,
// save those that bring the wanted thing along: a control panel that draws
// power at 12 V wants no control panel.
func lacking(t *testing.T, lib *components.Library, rule *components.Rule) []sample.Tiny {
	t.Helper()
	var vans []sample.Tiny
	for _, has := range rule.Has {
		before := len(vans)
		for _, van := range sample.NewTiny(lib).Ways(has) {
			if found := warning(t, lib, van, rule, ""); len(found) == 1 {
				vans = append(vans, van)
			} else if len(found) > 1 {
				t.Errorf("rule %s warns %d times", rule.Name, len(found))
			} else if !brings(lib, van, rule) {
				t.Errorf("rule %s: %q alone gives no warning:\n%s", rule.Name, has.Text, van.Fleet("")["vans/tiny.toml"].Data)
			}
		}
		if len(vans) == before {
			t.Errorf("rule %s: nothing that %q means ever lacks what the rule wants", rule.Name, has.Text)
		}
	}
	return vans
}

// brings reports whether one of the van's own systems is a wanted one, so that
// it may rightly lack nothing.
func brings(lib *components.Library, van sample.Tiny, rule *components.Rule) bool {
	return slices.ContainsFunc(van.Systems(), func(id string) bool {
		return slices.ContainsFunc(slices.Concat(rule.Wants, rule.Unless), func(s components.Sign) bool {
			system := lib.System(id)
			return s.System == id && id != components.BodySystem || s.Family == system.Family ||
				s.Role != "" && slices.ContainsFunc(system.Facts, func(d fact.Decl) bool { return d.Role == s.Role })
		})
	})
}

// Every rule warns of a van that has a thing and lacks what belongs to it, and
// of none that has that too, or what excuses it, or whose operator has looked.
func TestRules(t *testing.T) {
	lib := library(t)
	for _, rule := range lib.Rules {
		t.Run(rule.Name, func(t *testing.T) {
			for _, van := range lacking(t, lib, rule) {
				if found := warning(t, lib, van, rule, "complete = [\""+rule.Name+"\"]"); len(found) > 0 {
					t.Errorf("it warns although somebody has looked")
				}
				for _, enough := range slices.Concat(rule.Wants, rule.Unless) {
					for _, fuller := range van.Ways(enough) {
						if found := warning(t, lib, fuller, rule, ""); len(found) > 0 {
							t.Errorf("it warns although there is %q:\n%s", enough.Text, fuller.Fleet("")["vans/tiny.toml"].Data)
						}
					}
				}
			}
		})
	}
}

// What each rule says, to be read by eye when it changes.
func TestGoldenRules(t *testing.T) {
	lib := library(t)
	var b strings.Builder
	for _, rule := range lib.Rules {
		vans := lacking(t, lib, rule)
		if len(vans) == 0 {
			t.Fatalf("rule %s never warns", rule.Name)
		}
		b.WriteString("=== " + rule.Name + "\n" + text(t, warning(t, lib, vans[0], rule, "")))
	}
	if *update {
		if err := os.WriteFile(goldenIncomplete, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(goldenIncomplete)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(b.String(), "\n")); diff != "" {
		t.Errorf("the warnings changed; look at them, then run with -update:\n%s", diff)
	}
}
