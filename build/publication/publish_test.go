package publication_test

import (
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/publication"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"

	"github.com/google/go-cmp/cmp"
)

// Publishing twice gives the same bytes, whatever the time zone and the number
// of processors.
func TestPublishIsReproducible(t *testing.T) {
	first := files(t, publishDemo(t))
	t.Setenv("TZ", "Pacific/Auckland")
	t.Setenv("GOMAXPROCS", "1")
	second := files(t, publishDemo(t))
	if diff := cmp.Diff(slices.Sorted(maps.Keys(first)), slices.Sorted(maps.Keys(second))); diff != "" {
		t.Fatal(diff)
	}
	for name := range first {
		if first[name] != second[name] {
			t.Errorf("%s differs", name)
		}
	}
}

// Days of the calendar are the same on every page wherever a fleet is
// published. The time zone is read once a process, so each runs its own.
func TestDatesDoNotMoveWithTheTimeZone(t *testing.T) {
	if dir := os.Getenv("PUBLISH_INTO"); dir != "" {
		if _, err := publication.Publish(demoFleet(t), dir, "test"); err != nil {
			t.Fatal(err)
		}
		return
	}
	var trees []map[string]string
	for _, zone := range []string{"Etc/GMT-13", "Etc/GMT+11"} {
		dir := filepath.Join(t.TempDir(), "site")
		cmd := exec.Command(os.Args[0], "-test.run=^TestDatesDoNotMoveWithTheTimeZone$")
		cmd.Env = append(os.Environ(), "PUBLISH_INTO="+dir, "TZ="+zone)
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		trees = append(trees, files(t, dir))
	}
	if diff := cmp.Diff(trees[0], trees[1]); diff != "" {
		t.Error(diff)
	}
}

// What only staff may see is in no byte of the hirers' tree.
func TestStaffDataStaysWithStaff(t *testing.T) {
	canary := "CANARY-7Q4"
	lib, _ := components.Load(components.Embedded())
	fleetFiles := sample.Everything(lib, 0)
	van := string(fleetFiles["vans/ev.toml"].Data)
	van += "\n[staff]\n"
	for _, key := range spec.StaffTexts {
		van += key + " = \"" + canary + " " + key + "\"\n"
	}
	for i, key := range lib.StaffDates() {
		van += fmt.Sprintf("%s = 2093-01-%02d\n", key, 11+i)
	}
	van += "[staff.own]\n" + canary + " = \"" + canary + " own\"\n# " + canary + " in a comment\n"
	// Own routines and steps for staff are theirs alone, wherever they are written.
	list := "[routine.own-list]\nfor = \"staff\"\nbegin = \"inside\"\ntitle = \"" + canary + " list\"\nabout = \"" + canary + " about\"\nwords = [\"" + canary + "\"]\n"
	step := func(id, routines string) string {
		return "[[step]]\nid = \"" + id + "\"\nroutine = [" + routines + "]\ntext = \"" + canary + " step\"\n"
	}
	van += step("of-the-van", `"own-list", "handover"`)
	fleetFiles["vans/ev.toml"] = &fstest.MapFile{Data: []byte(van)}
	fleetFiles["fleet.toml"] = &fstest.MapFile{Data: []byte(sample.FleetTOML + list + step("of-the-fleet", `"check-in", "prepare", "monthly"`))}
	fleet, found := spec.Load(fleetFiles, "", lib)
	if found.HasErrors() {
		t.Fatal(found)
	}
	target := filepath.Join(t.TempDir(), "site")
	if _, err := publication.Publish(fleet, target, "test"); err != nil {
		t.Fatal(err)
	}
	seen := false
	all := files(t, target)
	for _, id := range []string{"handover", "check-in", "prepare", "monthly", "own-list"} {
		if _, ok := all["hirers/EV/do/"+id+"/index.html"]; ok {
			t.Errorf("hirers can read the list %s, which is for staff", id)
		}
		if page := all["staff/EV/do/"+id+"/index.html"]; !strings.Contains(page, canary+" step") {
			t.Errorf("the staff's list %s lacks the operator's own step", id)
		}
	}
	for name, data := range all {
		for _, secret := range []string{canary, "2093"} {
			if !strings.Contains(data, secret) {
				continue
			}
			if strings.HasPrefix(name, "hirers/") {
				t.Errorf("%s holds %s", name, secret)
			}
			seen = seen || strings.HasPrefix(name, "staff/")
		}
	}
	if !seen {
		t.Error("the staff tree does not hold the canary either: the test proves nothing")
	}
}
