package site_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/site"
)

// Until Finish the old site is untouched, and Discard leaves no trace.
func TestDiscardLeavesTheOldSite(t *testing.T) {
	parent := t.TempDir()
	target := filepath.Join(parent, "site")
	publish(t, target, first)
	before := tree(t, parent)
	s := open(t, target)
	st := stage(t, s, true)
	write(t, st, site.Fleet, second)
	if diff := cmp.Diff(before, tree(t, parent)); !strings.Contains(diff, "-new-") {
		t.Error("nothing is written beside the site")
	}
	if diff := cmp.Diff(tree(t, target), inside(before)); diff != "" {
		t.Errorf("the site changed before Finish:\n%s", diff)
	}
	if err := st.Discard(); err != nil {
		t.Fatal(err)
	}
	shut(t, s)
	if diff := cmp.Diff(before, tree(t, parent)); diff != "" {
		t.Errorf("Discard leaves:\n%s", diff)
	}
}

// inside is the part of a tree that lies in site/.
func inside(all map[string]string) map[string]string {
	part := map[string]string{}
	for path, data := range all {
		if rest, ok := strings.CutPrefix(path, "site/"); ok && rest != "" {
			part[rest] = data
		}
	}
	return part
}

// Half a site never takes the place of a whole one.
func TestFinishRefusesHalfASite(t *testing.T) {
	for name, spoil := range map[string]func(folder string) error{
		"all files gone":          os.RemoveAll,
		"one file gone":           func(folder string) error { return os.Remove(folder + "/tree/hirers/index.html") },
		"record spoilt":           func(folder string) error { return os.WriteFile(folder+"/tree/ledger/fleet.json", []byte("{"), 0o644) },
		"record gone":             func(folder string) error { return os.Remove(folder + "/tree/ledger/fleet.json") },
		"gone, then written more": func(folder string) error { return os.RemoveAll(folder + "/tree/hirers") },
	} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			target := filepath.Join(parent, "site")
			publish(t, target, first)
			before := tree(t, target)
			s := open(t, target)
			defer shut(t, s)
			st := stage(t, s, true)
			write(t, st, site.Fleet, second)
			seal(t, st, site.Fleet)
			if err := spoil(staging(t, parent)); err != nil {
				t.Fatal(err)
			}
			if strings.Contains(name, "more") {
				write(t, st, "RW", map[string]string{"hirers/RW/more.html": "x"})
				seal(t, st, "RW")
			}
			if err := st.Finish(); err == nil {
				t.Error("no error")
			}
			if diff := cmp.Diff(before, tree(t, target)); diff != "" {
				t.Errorf("the old site changed:\n%s", diff)
			}
		})
	}
}

// staging finds the folder in which a site is being written.
func staging(t *testing.T, parent string) string {
	t.Helper()
	found, err := filepath.Glob(filepath.Join(parent, ".site-new-*"))
	if err != nil || len(found) != 1 {
		t.Fatalf("staging folders %v %v", found, err)
	}
	return found[0]
}

// Where two folders cannot change places at once, a publish can be interrupted
// with the old site aside and the new one not in place: the next one puts the
// new one there.
func TestInterruptedBetweenTwoRenames(t *testing.T) {
	parent := t.TempDir()
	target := filepath.Join(parent, "site")
	folder := filepath.Join(parent, ".site-new-123")
	publish(t, target, first)
	publish(t, filepath.Join(folder, "tree"), second)
	put(t, filepath.Join(folder, "doorpocket-staging"), "x")
	want := tree(t, filepath.Join(folder, "tree"))
	if err := os.Rename(target, filepath.Join(folder, "old")); err != nil {
		t.Fatal(err)
	}
	shut(t, open(t, target))
	if diff := cmp.Diff(want, tree(t, target)); diff != "" {
		t.Errorf("not put in place:\n%s", diff)
	}
	if entries, err := os.ReadDir(parent); err != nil || len(entries) != 1 {
		t.Errorf("left beside: %v", entries)
	}
}

// What interrupted publishes left is cleared away, what is not ours stays.
func TestLeftoversAreClearedAway(t *testing.T) {
	parent := t.TempDir()
	target := filepath.Join(parent, "site")
	for _, name := range []string{
		".site-new-123",
		".site-new-notes", // no name of ours
		".site-new-",
		".other-new-123",      // of another site
		".site-new-1-new-123", // of a site called site-new-1
		"site-new-123",
	} {
		put(t, filepath.Join(parent, name, "tree", "index.html"), "x")
		put(t, filepath.Join(parent, name, "doorpocket-staging"), "x")
	}
	put(t, filepath.Join(parent, ".site-new-456", "photo.jpg"), "x") // without our mark
	put(t, filepath.Join(parent, ".site-new-789"), "a file")
	if err := os.Mkdir(filepath.Join(parent, ".site-new-1"), 0o700); err != nil { // made and never filled
		t.Fatal(err)
	}
	publish(t, target, first)
	entries, err := os.ReadDir(parent)
	if err != nil {
		t.Fatal(err)
	}
	var left []string
	for _, e := range entries {
		left = append(left, e.Name())
	}
	want := []string{".other-new-123", ".site-new-", ".site-new-1-new-123", ".site-new-456", ".site-new-789", ".site-new-notes", "site", "site-new-123"}
	if diff := cmp.Diff(want, left); diff != "" {
		t.Error(diff)
	}
}

// Two publishes of one site at a time: the second is told of the first.
func TestTwoPublishesAtOnce(t *testing.T) {
	parent := t.TempDir()
	target := filepath.Join(parent, "site")
	one := open(t, target)
	_, err := site.Open(target)
	if err == nil || !strings.Contains(err.Error(), "another publish") || !strings.Contains(err.Error(), "--out") {
		t.Errorf("got %v, want who is at work and what to do", err)
	}
	shut(t, one)
	publish(t, target, first)
	put(t, filepath.Join(parent, ".site-lock"), "99999999\n") // of a publish that was killed
	publish(t, target, second)
	if got := tree(t, target)["hirers/index.html"]; got != "two" {
		t.Errorf("the site holds %q", got)
	}
}
