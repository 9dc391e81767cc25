package site_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// Until Finish the old site is untouched, and Discard leaves no trace.
func TestDiscardLeavesTheOldSite(t *testing.T) {
	parent := t.TempDir()
	target := filepath.Join(parent, "site")
	publish(t, target, first)
	before := tree(t, parent)
	s := begin(t, target)
	write(t, s, second)
	if diff := cmp.Diff(before, tree(t, parent)); !strings.Contains(diff, "-new-") {
		t.Error("nothing is written beside the site")
	}
	if diff := cmp.Diff(tree(t, target), inside(before)); diff != "" {
		t.Errorf("the site changed before Finish:\n%s", diff)
	}
	if err := s.Discard(); err != nil {
		t.Fatal(err)
	}
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
		"one file gone":           func(folder string) error { return os.Remove(folder + "/hirers/index.html") },
		"gone, then written more": func(folder string) error { return os.RemoveAll(folder + "/hirers") },
	} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			target := filepath.Join(parent, "site")
			publish(t, target, first)
			before := tree(t, target)
			s := begin(t, target)
			write(t, s, second)
			if err := spoil(staging(t, parent)); err != nil {
				t.Fatal(err)
			}
			if strings.Contains(name, "more") {
				write(t, s, map[string]string{"hirers/more.html": "x"})
			}
			if err := s.Finish(); err == nil {
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

// A publish that was interrupted between its two renames has moved the site
// aside; the next one, or only its beginning, puts it back.
func TestMovedAsideSiteIsPutBack(t *testing.T) {
	parent := t.TempDir()
	target := filepath.Join(parent, "site")
	publish(t, target, first)
	before := tree(t, target)
	if err := os.Rename(target, filepath.Join(parent, ".site-previous")); err != nil {
		t.Fatal(err)
	}
	s := begin(t, target)
	if diff := cmp.Diff(before, tree(t, target)); diff != "" {
		t.Errorf("not put back:\n%s", diff)
	}
	write(t, s, second)
	if err := s.Finish(); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(filepath.Join(parent, ".site-previous")); !os.IsNotExist(err) {
		t.Error("the old site is left")
	}
}

// A publish that was interrupted after its second rename left the old site
// aside: the new one stays.
func TestOldSiteAsideIsNotPutBack(t *testing.T) {
	parent := t.TempDir()
	target := filepath.Join(parent, "site")
	publish(t, target, second)
	publish(t, filepath.Join(parent, ".site-previous"), first)
	s := begin(t, target)
	if got := tree(t, target)["hirers/index.html"]; got != "two" {
		t.Errorf("the site holds %q", got)
	}
	write(t, s, first)
	if err := s.Finish(); err != nil {
		t.Error(err)
	}
}

// What interrupted publishes left is cleared away, what may be in use or is not
// ours stays.
func TestLeftoversAreClearedAway(t *testing.T) {
	parent := t.TempDir()
	target := filepath.Join(parent, "site")
	old := time.Now().Add(-2 * time.Hour)
	for name, age := range map[string]time.Time{
		".site-new-123":       old,
		".site-new-456":       time.Now(), // its folder is old, a page in it is not
		".site-new-notes":     old,        // no name of ours
		".site-new-":          old,
		".other-new-123":      old, // of another site
		".site-new-1-new-123": old, // of a site called site-new-1
		"site-new-123":        old,
	} {
		page := filepath.Join(parent, name, "hirers", "index.html")
		put(t, page, "x")
		for at := page; at != parent; at = filepath.Dir(at) {
			if err := os.Chtimes(at, old, old); err != nil {
				t.Fatal(err)
			}
		}
		if err := os.Chtimes(page, age, age); err != nil {
			t.Fatal(err)
		}
	}
	put(t, filepath.Join(parent, ".site-new-789"), "a file") // no folder
	if err := os.Chtimes(filepath.Join(parent, ".site-new-789"), old, old); err != nil {
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

// Two publishes of one site at a time: the later one wins, whole.
func TestTwoPublishesAtOnce(t *testing.T) {
	parent := t.TempDir()
	target := filepath.Join(parent, "site")
	one, two := begin(t, target), begin(t, target)
	write(t, one, first)
	write(t, two, second)
	if err := one.Finish(); err != nil {
		t.Fatal(err)
	}
	if err := two.Finish(); err != nil {
		t.Fatal(err)
	}
	got := tree(t, target)
	if got["hirers/index.html"] != "two" || got["staff/index.html"] != "" {
		t.Errorf("%v", got)
	}
}
