package publication_test

import (
	"path/filepath"
	"runtime"
	"testing"

	"doorpocket/build/publication"
	"doorpocket/build/sample"
)

// A fleet is published van by van: of one that is done no more is kept than what
// the fleet's own pages say of it.
func TestMemoryKeptOfAVan(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1)) // no van is under way while memory is looked at
	const warm, vans, most = 10, 50, 30_000
	lib, _ := theLibrary()
	fleet := sample.Many(lib, vans, 6)
	var early uint64
	_, found, err := publishFiles(fleet, filepath.Join(t.TempDir(), "site"), func(j *publication.Job) {
		j.Progress = func(done, total int) {
			switch done {
			case warm:
				early = inUse()
			case total:
				kept := (int(inUse()) - int(early)) / (vans - warm)
				t.Logf("%d bytes a van", kept)
				if kept > most {
					t.Errorf("%d bytes are kept of each van, at most %d are expected", kept, most)
				}
			}
		}
	})
	if err != nil || found.HasErrors() {
		t.Fatal(err, found)
	}
}

// inUse is how much memory is reachable.
func inUse() uint64 {
	runtime.GC()
	runtime.GC() // what the first one emptied of pools is freed by the second
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}
