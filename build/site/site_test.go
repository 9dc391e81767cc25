package site_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/site"
)

// A site is what the last publish wrote and nothing else, and beside it nothing
// is left.
func TestSiteIsOnePublish(t *testing.T) {
	parent := t.TempDir()
	target := filepath.Join(parent, "deep", "site")
	for _, files := range []map[string]string{first, second, first} {
		publish(t, target, files)
		got := tree(t, target)
		for path, want := range files {
			if got[path] != want {
				t.Errorf("%s holds %q, want %q", path, got[path], want)
			}
		}
		for path := range got {
			if _, wrote := files[path]; !wrote && !strings.HasPrefix(path, "ledger/") && !strings.HasSuffix(path, "/") {
				t.Errorf("%s is left of an earlier publish", path)
			}
		}
	}
	entries, err := os.ReadDir(filepath.Dir(target))
	if err != nil || len(entries) != 1 {
		t.Errorf("beside the site: %v %v", entries, err)
	}
	info, err := os.Stat(target)
	if err != nil || info.Mode().Perm() != 0o755 {
		t.Errorf("a web server cannot read the site: %v %v", info.Mode(), err)
	}
}

func TestTwiceTheSameBytes(t *testing.T) {
	one, two := filepath.Join(t.TempDir(), "a"), filepath.Join(t.TempDir(), "b")
	publish(t, one, first)
	publish(t, two, first)
	before := tree(t, one)
	publish(t, one, first)
	if diff := cmp.Diff(before, tree(t, one)); diff != "" {
		t.Errorf("publishing again changed:\n%s", diff)
	}
	if diff := cmp.Diff(before, tree(t, two)); diff != "" {
		t.Errorf("another folder has other bytes:\n%s", diff)
	}
}

// A folder that holds what no publish wrote is left exactly as it is.
func TestForeignFilesAreRefused(t *testing.T) {
	for name, tt := range map[string]struct {
		make func(t *testing.T, target string)
		want string
	}{
		"file in a folder without ledger": {func(t *testing.T, target string) { put(t, target+"/photo.jpg", "x") }, "photo.jpg"},
		"file at the root": {func(t *testing.T, target string) {
			publish(t, target, first)
			put(t, target+"/notes.txt", "x")
		}, "notes.txt"},
		"file deep in the site": {func(t *testing.T, target string) {
			publish(t, target, first)
			put(t, target+"/hirers/RW/G1/notes.txt", "x")
		}, "notes.txt"},
		"hidden file": {func(t *testing.T, target string) {
			publish(t, target, first)
			put(t, target+"/.htaccess", "x")
		}, ".htaccess"},
		"link": {func(t *testing.T, target string) {
			publish(t, target, first)
			if err := os.Symlink("/", target+"/link"); err != nil {
				t.Fatal(err)
			}
		}, "link"},
		"ledger of something else": {func(t *testing.T, target string) {
			put(t, target+"/ledger.json", `{"accounts": []}`)
			put(t, target+"/accounts.txt", "x")
		}, "accounts.txt"},
		"file in the ledger": {func(t *testing.T, target string) {
			publish(t, target, first)
			put(t, target+"/ledger/notes.txt", "x")
		}, "notes.txt"},
		"a site without its ledger": {func(t *testing.T, target string) {
			publish(t, target, first)
			if err := os.RemoveAll(target + "/ledger"); err != nil {
				t.Fatal(err)
			}
		}, "delete the folder if all of it came from publishing"},
		"link that leads nowhere": {func(t *testing.T, target string) {
			if err := os.Symlink(target+"-real", target); err != nil {
				t.Fatal(err)
			}
		}, "where there is nothing"},
		"file in place of the ledger": {func(t *testing.T, target string) { put(t, target+"/ledger", "x") }, "ledger"},
		"file in place of the folder": {func(t *testing.T, target string) { put(t, target, "x") }, "cannot look into"},
		"folder behind a link": {func(t *testing.T, target string) {
			real := target + "-real"
			publish(t, real, first)
			put(t, real+"/notes.txt", "x")
			if err := os.Symlink(real, target); err != nil {
				t.Fatal(err)
			}
		}, "notes.txt"},
	} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			target := filepath.Join(parent, "site")
			tt.make(t, target)
			before := snapshot(t, parent)
			err := attempt(t, target)
			if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.Contains(err.Error(), "site") {
				t.Errorf("got %v, want a refusal that names %s", err, tt.want)
			}
			if diff := cmp.Diff(before, snapshot(t, parent)); diff != "" {
				t.Errorf("something changed:\n%s", diff)
			}
		})
	}
}

// snapshot is every name in a folder with kind and size.
func snapshot(t *testing.T, root string) []string {
	t.Helper()
	var all []string
	err := filepath.Walk(root, func(name string, info os.FileInfo, err error) error {
		if err == nil && !info.IsDir() {
			all = append(all, fmt.Sprint(name, info.Mode(), info.Size()))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func TestFoldersThatCanBeTaken(t *testing.T) {
	for name, prepare := range map[string]func(t *testing.T, target string){
		"none":  func(*testing.T, string) {},
		"empty": func(t *testing.T, target string) { put(t, target+"/x", ""); _ = os.Remove(target + "/x") },
		"a site with an empty folder": func(t *testing.T, target string) {
			publish(t, target, first)
			if err := os.Mkdir(target+"/empty", 0o755); err != nil {
				t.Fatal(err)
			}
		},
		"a site of which files were deleted": func(t *testing.T, target string) {
			publish(t, target, first)
			if err := os.RemoveAll(target + "/hirers"); err != nil {
				t.Fatal(err)
			}
		},
	} {
		t.Run(name, func(t *testing.T) {
			target := filepath.Join(t.TempDir(), "site")
			prepare(t, target)
			publish(t, target, second)
			if got := tree(t, target); got["hirers/index.html"] != "two" || len(got) != 7 {
				t.Errorf("%v", slices.Sorted(maps.Keys(got)))
			}
		})
	}
}

// A link to the site's folder stays a link, and what it leads to is published.
func TestLinkToTheSite(t *testing.T) {
	parent := t.TempDir()
	real, link := filepath.Join(parent, "real"), filepath.Join(parent, "site")
	publish(t, real, first)
	if err := os.Symlink(real, link); err != nil {
		t.Fatal(err)
	}
	publish(t, link, second)
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is gone: %v", err)
	}
	if got := tree(t, real); got["hirers/index.html"] != "two" {
		t.Errorf("%v", got)
	}
}

func TestPathsThatEscapeAreRefused(t *testing.T) {
	parent := t.TempDir()
	s := open(t, filepath.Join(parent, "site"))
	st := stage(t, s, true)
	for _, path := range []string{
		"../x", "..", ".", "", "/x", "/", "a/../../x", "a/../b", "a/./b", "a//b", "a/", `a\b`, `..\x`, `C:\x`, "C:x", "c:/x", "a:stream", "ledger", "ledger/RW.json", "x\x00y",
	} {
		if _, err := st.Write(site.Fleet, path, []byte("x")); err == nil {
			t.Errorf("%q is written", path)
		}
	}
	if err := st.Discard(); err != nil {
		t.Error(err)
	}
	shut(t, s)
	if left := snapshot(t, parent); len(left) > 0 {
		t.Errorf("written: %v", left)
	}
}

func TestTwoPagesOfOnePath(t *testing.T) {
	s := open(t, filepath.Join(t.TempDir(), "site"))
	defer shut(t, s)
	st := stage(t, s, true)
	if _, err := st.Write(site.Fleet, "a/x.html", nil); err != nil {
		t.Fatal(err)
	}
	if _, err := st.Write(site.Fleet, "a/x.html", nil); err == nil || !strings.Contains(err.Error(), "a/x.html") {
		t.Errorf("got %v", err)
	}
}

func TestWritingAtOnce(t *testing.T) {
	target := filepath.Join(t.TempDir(), "site")
	s := open(t, target)
	defer shut(t, s)
	st := stage(t, s, true)
	var group sync.WaitGroup
	for i := range 8 {
		group.Go(func() {
			for j := range 50 {
				if _, err := st.Write(site.Fleet, fmt.Sprintf("v%d/p%d.html", i, j), []byte("x")); err != nil {
					t.Error(err)
				}
			}
		})
	}
	group.Wait()
	if st.Files() != 400 {
		t.Errorf("%d files", st.Files())
	}
	seal(t, st, site.Fleet)
	if err := st.Finish(); err != nil {
		t.Fatal(err)
	}
}

func TestFoldersThatCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "file"), "x")
	for target, want := range map[string]string{
		filepath.Join(dir, "file", "site"):           "not a directory",
		filepath.Join(dir, "file", "deep", "site"):   "not a directory",
		filepath.Join(dir, strings.Repeat("x", 300)): "too long",
		"/":             "--out",
		".":             "--out",
		"../../..":      "--out",
		dir + "/a\x00b": "",
	} {
		err := attempt(t, target)
		if err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "--out") {
			t.Errorf("%q: got %v, want %q and what to do", target, err, want)
		}
		if err != nil && strings.Count(err.Error(), target) > 1 && len(target) > 5 {
			t.Errorf("%q is named twice: %v", target, err)
		}
	}
}
