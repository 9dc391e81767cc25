package publication_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/publication"
	"doorpocket/build/sample"
)

// A publish that nobody waits for any more ends soon: it leaves the last site as it was,
// and nothing beside it.
func TestAbandoned(t *testing.T) {
	lib, _ := theLibrary()
	fleet := sample.Many(lib, 4, 1)
	target := filepath.Join(t.TempDir(), "site")
	if _, found, err := publishFiles(fleet, target, nil); err != nil || found.HasErrors() {
		t.Fatal(err, found)
	}
	before := files(t, target)
	fleet["fleet.toml"] = file(strings.Replace(string(fleet["fleet.toml"].Data), "112", "999", 1))
	abandoned := make(chan struct{})
	var once sync.Once
	_, _, err := publishFiles(fleet, target, func(job *publication.Job) {
		job.Abandoned = abandoned
		job.Progress = func(int, int) { once.Do(func() { close(abandoned) }) }
	})
	if !errors.Is(err, publication.ErrAbandoned) {
		t.Errorf("it ends with %v", err)
	}
	if diff := cmp.Diff(before, files(t, target)); diff != "" {
		t.Error(diff)
	}
	if beside, err := os.ReadDir(filepath.Dir(target)); err != nil || len(beside) != 1 {
		t.Errorf("%v lie there, %v", beside, err)
	}
}
