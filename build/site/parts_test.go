package site_test

import (
	"errors"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/site"
)

// van is the files of a van's part.
func van(code, words string) map[string]string {
	return map[string]string{"hirers/" + code + "/index.html": words, "hirers/" + code + "/G1/index.html": words + " gas", "staff/" + code + "/index.html": words + " keys"}
}

// putParts puts several parts into a site, whole or beside what is there.
func putParts(t *testing.T, target string, whole bool, gone []string, parts map[string]map[string]string) {
	t.Helper()
	if err := tryParts(target, whole, gone, parts); err != nil {
		t.Fatal(err)
	}
}

// tryParts is that where it may be refused.
func tryParts(target string, whole bool, gone []string, parts map[string]map[string]string) error {
	s, err := site.Open(target)
	if err != nil {
		return err
	}
	st, err := s.Stage(whole)
	if err != nil {
		return errors.Join(err, s.Close())
	}
	if err = writeParts(st, parts); err != nil {
		return errors.Join(err, st.Discard(), s.Close())
	}
	for _, part := range gone {
		st.Remove(part)
	}
	return errors.Join(st.Finish(), s.Close())
}

// writeParts writes parts with a picture each; Fleet is the last, as in a publish.
func writeParts(st *site.Staging, parts map[string]map[string]string) error {
	order := slices.Sorted(maps.Keys(parts))
	if i := slices.Index(order, site.Fleet); i >= 0 {
		order = append(slices.Delete(order, i, i+1), site.Fleet)
	}
	for _, part := range order {
		files := parts[part]
		for path, data := range files {
			if _, err := st.Write(part, path, []byte(data)); err != nil {
				return err
			}
		}
		if part != site.Fleet {
			picture := "hirers/pictures/" + files["hirers/"+part+"/index.html"] + ".jpg"
			stamp, err := st.Share(picture, []byte("picture"))
			if err != nil {
				return err
			}
			st.Use(part, picture, stamp)
		}
		if err := st.Seal(part, nil); err != nil {
			return err
		}
	}
	return nil
}

// A van changed, one came, one went: the site is as if it had been made anew.
func TestPartsChangePlaces(t *testing.T) {
	grown, clean := filepath.Join(t.TempDir(), "site"), filepath.Join(t.TempDir(), "site")
	putParts(t, grown, true, nil, map[string]map[string]string{
		site.Fleet: {"hirers/index.html": "one", "hirers/parts/a.js": "a"}, "AA": van("AA", "old"), "BB": van("BB", "bee"), "DD": van("DD", "dee")})
	before, err := os.Stat(filepath.Join(grown, "hirers/DD/index.html"))
	if err != nil {
		t.Fatal(err)
	}
	putParts(t, grown, false, []string{"BB"}, map[string]map[string]string{
		site.Fleet: {"hirers/index.html": "two", "hirers/parts/b.js": "b"}, "AA": van("AA", "new"), "CC": van("CC", "cee")})
	putParts(t, clean, true, nil, map[string]map[string]string{
		site.Fleet: {"hirers/index.html": "two", "hirers/parts/b.js": "b"}, "AA": van("AA", "new"), "CC": van("CC", "cee"), "DD": van("DD", "dee")})
	if diff := cmp.Diff(tree(t, clean), tree(t, grown)); diff != "" {
		t.Error(diff)
	}
	after, err := os.Stat(filepath.Join(grown, "hirers/DD/index.html"))
	if err != nil || !os.SameFile(before, after) {
		t.Error("a van that stays was written again")
	}
	if entries, err := os.ReadDir(filepath.Dir(grown)); err != nil || len(entries) != 1 {
		t.Errorf("left beside: %v", entries)
	}
}

// What does not change is not written.
func TestSamePartsWriteNothing(t *testing.T) {
	target := filepath.Join(t.TempDir(), "site")
	files := map[string]string{"hirers/index.html": "one", "hirers/parts/a.js": "a"}
	putParts(t, target, true, nil, map[string]map[string]string{site.Fleet: files, "AA": van("AA", "old")})
	times := func() []string {
		var all []string
		for path := range tree(t, target) {
			info, err := os.Stat(filepath.Join(target, path))
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, path+info.ModTime().String())
		}
		slices.Sort(all)
		return all
	}
	before := times()
	putParts(t, target, false, nil, map[string]map[string]string{site.Fleet: files})
	if diff := cmp.Diff(before, times()); diff != "" {
		t.Error(diff)
	}
}

func TestIntact(t *testing.T) {
	for name, spoil := range map[string]func(folder string) error{
		"": func(string) error { return nil },
		"touched": func(folder string) error {
			later := time.Now().Add(time.Hour)
			return os.Chtimes(folder+"/hirers/AA/index.html", later, later)
		},
		"file removed":    func(folder string) error { return os.Remove(folder + "/hirers/AA/G1/index.html") },
		"picture removed": func(folder string) error { return os.Remove(folder + "/hirers/pictures/old.jpg") },
		"longer": func(folder string) error {
			return os.WriteFile(folder+"/staff/AA/index.html", []byte("longer than that"), 0o644)
		},
		"of the same size": func(folder string) error {
			later := time.Now().Add(time.Hour)
			if err := os.WriteFile(folder+"/hirers/AA/index.html", []byte("OLD"), 0o644); err != nil {
				return err
			}
			return os.Chtimes(folder+"/hirers/AA/index.html", later, later)
		},
		"record damaged": func(folder string) error { return os.WriteFile(folder+"/ledger/AA.json", []byte("{"), 0o644) },
		"other format": func(folder string) error {
			return os.WriteFile(folder+"/ledger/AA.json", []byte(`{"format": 99}`), 0o644)
		},
		"paths that escape": func(folder string) error {
			return os.WriteFile(folder+"/ledger/AA.json", []byte(`{"format": 1, "files": {"../../x": "0-0"}}`), 0o644)
		},
	} {
		t.Run(name, func(t *testing.T) {
			target := filepath.Join(t.TempDir(), "site")
			putParts(t, target, true, nil, map[string]map[string]string{site.Fleet: {"hirers/index.html": "one"}, "AA": van("AA", "old")})
			tick(t, filepath.Dir(target))
			if err := spoil(target); err != nil {
				t.Fatal(err)
			}
			s := open(t, target)
			defer shut(t, s)
			if got, want := s.Intact("AA"), name == "" || name == "touched"; got != want {
				t.Errorf("intact: %v", got)
			}
		})
	}
}

// A record that cannot be read costs no more than a new site; what it no longer
// tells of is left alone.
func TestDamagedRecords(t *testing.T) {
	target := filepath.Join(t.TempDir(), "site")
	parts := map[string]map[string]string{site.Fleet: {"hirers/index.html": "one"}, "AA": van("AA", "old")}
	putParts(t, target, true, nil, parts)
	want := tree(t, target)
	for _, damage := range []string{"", "{", `{"format": 99}`, "\x00\x01", want["ledger/AA.json"][:60]} {
		put(t, target+"/ledger/AA.json", damage)
		putParts(t, target, true, nil, parts)
		if diff := cmp.Diff(want, tree(t, target)); diff != "" {
			t.Errorf("%q:\n%s", damage, diff)
		}
		put(t, target+"/ledger/AA.json", damage)
		putParts(t, target, false, nil, map[string]map[string]string{"AA": parts["AA"]})
		if diff := cmp.Diff(want, tree(t, target)); diff != "" {
			t.Errorf("%q, part by part:\n%s", damage, diff)
		}
	}
	put(t, target+"/ledger/AA.json", "{")
	put(t, target+"/hirers/AA/photo.jpg", "x")
	s := open(t, target)
	defer shut(t, s)
	st := stage(t, s, true)
	write(t, st, site.Fleet, parts[site.Fleet])
	seal(t, st, site.Fleet)
	write(t, st, "AA", parts["AA"])
	seal(t, st, "AA")
	if err := st.Finish(); err == nil || !strings.Contains(err.Error(), "photo.jpg") || !strings.Contains(err.Error(), "damaged") {
		t.Errorf("got %v", err)
	}
}

// A stranger in the folder of a van that is to be swapped is not lost.
func TestStrangersInSwappedFolders(t *testing.T) {
	target := filepath.Join(t.TempDir(), "site")
	putParts(t, target, true, nil, map[string]map[string]string{site.Fleet: {"hirers/index.html": "one"}, "AA": van("AA", "old"), "BB": van("BB", "bee")})
	put(t, target+"/hirers/AA/G1/notes.txt", "x")
	before := tree(t, target)
	for _, gone := range [][]string{nil, {"AA"}} {
		s := open(t, target)
		st := stage(t, s, false)
		if gone == nil {
			write(t, st, "AA", van("AA", "new"))
			seal(t, st, "AA")
		} else {
			st.Remove("AA")
		}
		if err := st.Finish(); err == nil || !strings.Contains(err.Error(), "notes.txt") {
			t.Errorf("got %v", err)
		}
		shut(t, s)
		if diff := cmp.Diff(before, tree(t, target)); diff != "" {
			t.Error(diff)
		}
	}
	putParts(t, target, false, nil, map[string]map[string]string{"BB": van("BB", "other")}) // which leaves AA alone
}
