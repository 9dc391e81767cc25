package publication_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/publication"
	"doorpocket/build/sample"
)

func part(t *testing.T, text string) publication.Part {
	t.Helper()
	p, err := publication.ParsePart(text)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Parts published apart and copied into one folder, in any order, are the site
// that one publish makes, record for record: a publish of all has nothing to do
// there.
func TestPartsJoin(t *testing.T) {
	lib, _ := theLibrary()
	fleet := sample.Many(lib, 7, 1)
	fleet["pictures/box.jpg"] = file(photo(t, 40, 30, 40))
	bikeBox(fleet)
	for _, name := range []string{"vans/van-0001.toml", "vans/van-0004.toml"} {
		fleet[name] = file(string(fleet[name].Data) + bikes)
	}
	fleet["booklets.toml"] = file(fmt.Sprintf("[booklet]\n%s = { revision = \"AAAAAA\", edition = \"000000000000\", on = 2026-10-05 }\n", sample.Code(5)))
	whole := filepath.Join(t.TempDir(), "site")
	made, found, err := publishFiles(fleet, whole, nil)
	if err != nil || found.HasErrors() {
		t.Fatal(err, found)
	}
	want := files(t, whole)
	for _, parts := range [][]string{{"1/3", "2/3", "3/3"}, {"3/3", "1/3", "2/3"}, {"van-000[0-3]", "van-000[4-9]"}, {"1/1"}, {"1/9", "2/9", "3/9", "4/9", "5/9", "6/9", "7/9", "8/9", "9/9"}} {
		joined := filepath.Join(t.TempDir(), "site")
		vans := 0
		for _, text := range parts {
			apart := filepath.Join(t.TempDir(), "site")
			some, _, err := publishFiles(fleet, apart, func(j *publication.Job) { j.Part = part(t, text) })
			if err != nil {
				t.Fatal(err)
			}
			vans += some.Vans
			if err := copyOver(apart, joined); err != nil {
				t.Fatal(err)
			}
		}
		if vans != made.Vans {
			t.Errorf("%v: %d vans, want %d", parts, vans, made.Vans)
		}
		if diff := cmp.Diff(want, files(t, joined)); diff != "" {
			t.Errorf("%v:\n%s", parts, diff)
		}
		if again, _, err := publishFiles(fleet, joined, nil); err != nil || again.Files != 0 {
			t.Errorf("%v: a publish of all writes %d files, %v: %v", parts, again.Files, err, again.Reasons)
		}
	}
	// One after the other into the same folder.
	grown := filepath.Join(t.TempDir(), "site")
	for _, text := range []string{"2/2", "1/2"} {
		if _, _, err := publishFiles(fleet, grown, func(j *publication.Job) { j.Part = part(t, text) }); err != nil {
			t.Fatal(err)
		}
	}
	if diff := cmp.Diff(want, files(t, grown)); diff != "" {
		t.Errorf("one folder:\n%s", diff)
	}
}

// copyOver copies a tree into a folder as a CI system that joins artifacts does.
func copyOver(from, to string) error {
	if err := os.MkdirAll(to, 0o755); err != nil {
		return err
	}
	return filepath.WalkDir(from, func(name string, e os.DirEntry, err error) error {
		if err != nil {
			return err
		}
		path, err := filepath.Rel(from, name)
		if err != nil {
			return err
		}
		if e.IsDir() {
			return os.MkdirAll(filepath.Join(to, path), 0o755)
		}
		data, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(to, path), data, 0o644)
	})
}

func TestParsePart(t *testing.T) {
	for _, good := range []string{"1/1", "4/4", "ridge-*", "rowan", "[a-m]*"} {
		part(t, good)
	}
	for _, bad := range []string{"", "0/4", "5/4", "1/0", "-1/4", "1/4x", "a/b", "[", "1/2/3"} {
		if _, err := publication.ParsePart(bad); err == nil {
			t.Errorf("%q is taken for a part", bad)
		}
	}
	seen := map[string]int{}
	specs := []string{}
	for i := range 10 {
		specs = append(specs, fmt.Sprintf("vans/v%d.toml", i))
	}
	for k := 1; k <= 3; k++ {
		n := 0
		for _, s := range specs {
			if part(t, fmt.Sprintf("%d/3", k)).Has(specs, s) {
				seen[s]++
				n++
			}
		}
		if n < 3 || n > 4 {
			t.Errorf("part %d has %d of 10 vans", k, n)
		}
	}
	if len(seen) != 10 {
		t.Errorf("parts cover %v", seen)
	}
}
