package spec_test

import (
	"os"
	"regexp"
	"slices"
	"testing"
	"testing/fstest"

	"doorpocket/build/spec"
	"doorpocket/components/problem"
)

// readmeFile finds the listing that follows a file's name in the README.
func readmeFile(t *testing.T, name string) *fstest.MapFile {
	t.Helper()
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile("(?s)\n`" + regexp.QuoteMeta(name) + "`[^\n]*:\n\n```toml\n(.*?)```").FindSubmatch(text)
	if found == nil {
		t.Fatalf("the README does not show %s", name)
	}
	return &fstest.MapFile{Data: found[1]}
}

// The fleet of the README is one, and the only warnings about it are that a van
// has more than two things.
func TestFleetOfTheReadme(t *testing.T) {
	fleet, found := spec.Load(fstest.MapFS{
		"fleet.toml": readmeFile(t, "fleet.toml"), "vans/rowan.toml": readmeFile(t, "vans/rowan.toml"),
	}, "", completenessLibrary())
	for _, p := range found {
		if p.Severity == problem.Error || !slices.Contains([]string{spec.IncompleteCode, "say-complete"}, p.Code) {
			t.Errorf("%s: %s", p, p.Detail)
		}
	}
	if len(fleet.Vans) != 1 || fleet.Vans[0].Named("gas-locker") == nil || fleet.Vans[0].Named("tyres") == nil {
		t.Errorf("%+v", fleet)
	}
}
