//go:build linux || darwin

package site_test

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"doorpocket/build/site"
)

// past is a time before anything was written that a test publishes.
var past = time.Date(2020, 1, 2, 3, 4, 5, 0, time.UTC)

// writeAged writes a file with a time of long ago, as one that was kept elsewhere.
func writeAged(t *testing.T, name, data string) {
	t.Helper()
	put(t, name, data)
	if err := os.Chtimes(name, past, past); err != nil {
		t.Fatal(err)
	}
}

func rename(t *testing.T, from, to string) {
	t.Helper()
	if err := os.Rename(from, to); err != nil {
		t.Fatal(err)
	}
}

// Whatever has the size and an older time than what was written is read.
func TestReplacedByWhatIsOlder(t *testing.T) {
	for name, spoil := range map[string]func(t *testing.T, target, kept string){
		"written over, its time set back": func(t *testing.T, target, _ string) {
			writeAged(t, target+"/hirers/AA/index.html", "OLD")
		},
		"a file kept elsewhere": func(t *testing.T, target, kept string) {
			rename(t, kept+"/hirers/AA/index.html", target+"/hirers/AA/index.html")
		},
		"the folder of a van kept elsewhere": func(t *testing.T, target, kept string) {
			rename(t, target+"/hirers/AA", kept+"/AA")
			rename(t, kept+"/hirers/AA", target+"/hirers/AA")
		},
		"the folder of a tree kept elsewhere": func(t *testing.T, target, kept string) {
			rename(t, target+"/hirers", kept+"/h")
			rename(t, kept+"/hirers", target+"/hirers")
		},
		"a shared file": func(t *testing.T, target, _ string) {
			writeAged(t, target+"/hirers/pictures/old.jpg", "PICTURE")
		},
		"written while the clock was ahead": func(t *testing.T, target, _ string) {
			later := time.Now().Add(time.Hour)
			if err := os.Chtimes(target+"/ledger/AA.json", later, later); err != nil {
				t.Fatal(err)
			}
			put(t, target+"/hirers/AA/index.html", "OLD")
		},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			folder := t.TempDir()
			target, kept := filepath.Join(folder, "site"), filepath.Join(folder, "kept")
			for path, data := range van("AA", "OLD") {
				writeAged(t, filepath.Join(kept, path), data)
			}
			writeAged(t, kept+"/hirers/index.html", "one")
			writeAged(t, kept+"/hirers/pictures/old.jpg", "picture")
			tick(t, folder)
			putParts(t, target, true, nil, map[string]map[string]string{site.Fleet: {"hirers/index.html": "one"}, "AA": van("AA", "old")})
			tick(t, folder)
			spoil(t, target, kept)
			for range 2 { // it stays so until the part is written anew
				s := open(t, target)
				if s.Intact("AA") {
					t.Error("it is taken for what was written")
				}
				shut(t, s)
			}
			putParts(t, target, false, nil, map[string]map[string]string{site.Fleet: {"hirers/index.html": "one"}, "AA": van("AA", "old")})
			s := open(t, target)
			defer shut(t, s)
			if !s.Intact("AA") || !s.Intact(site.Fleet) {
				t.Error("what was written anew is not as it was written")
			}
			if got := tree(t, target)["hirers/AA/index.html"]; got != "old" {
				t.Errorf("%q stands there", got)
			}
		})
	}
}
