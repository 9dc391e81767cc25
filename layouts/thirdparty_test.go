package layouts

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"path"
	"slices"
	"strings"
	"testing"
)

// What is not ours is as its makers published it: every file of it is listed
// with its checksum, and comes with its licence and where it is from.
func TestThirdPartyFilesAreUnchanged(t *testing.T) {
	lists, err := fs.Glob(Files(), "thirdparty/*/SHA256SUMS")
	if err != nil || len(lists) == 0 {
		t.Fatalf("%v %v", lists, err)
	}
	folders, err := fs.ReadDir(Files(), "thirdparty")
	if err != nil || len(folders) != len(lists) {
		t.Errorf("%d folders, %d lists of checksums, %v", len(folders), len(lists), err)
	}
	for _, list := range lists {
		folder := path.Dir(list)
		listed := checksums(t, list)
		entries, err := fs.ReadDir(Files(), folder)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			name := e.Name()
			if name == "SHA256SUMS" || name == "ORIGIN.md" { // ours
				continue
			}
			data, err := fs.ReadFile(Files(), folder+"/"+name)
			if err != nil {
				t.Fatal(err)
			}
			sum := sha256.Sum256(data)
			if got := hex.EncodeToString(sum[:]); got != listed[name] {
				t.Errorf("%s/%s has the checksum %s, listed is %q", folder, name, got, listed[name])
			}
			delete(listed, name)
		}
		for name := range listed {
			t.Errorf("%s lists %s, which is not there", list, name)
		}
		for _, name := range []string{"LICENSE.txt", "ORIGIN.md"} {
			if !slices.ContainsFunc(entries, func(e fs.DirEntry) bool { return e.Name() == name }) {
				t.Errorf("%s has no %s", folder, name)
			}
		}
	}
}

// checksums reads a list as sha256sum writes it: checksum, two spaces, name.
func checksums(t *testing.T, list string) map[string]string {
	t.Helper()
	data, err := fs.ReadFile(Files(), list)
	if err != nil {
		t.Fatal(err)
	}
	listed := map[string]string{}
	for line := range strings.Lines(string(data)) {
		sum, name, ok := strings.Cut(strings.TrimSpace(line), "  ")
		if !ok || len(sum) != 2*sha256.Size {
			t.Errorf("%s: line %q", list, line)
		}
		listed[name] = sum
	}
	return listed
}
