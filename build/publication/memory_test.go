package publication_test

import (
	"fmt"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"doorpocket/build/publication"
	"doorpocket/build/sample"
)

// A fleet is published van by van: of one that is done no more is kept than what
// the fleet's own pages say of it. The vans are alike, so that parts of pages that
// are remembered for other vans are there with the first.
func TestMemoryKeptOfAVan(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1)) // no van is under way while memory is looked at
	const warm, vans, most = 10, 30, 36_000
	lib, _ := theLibrary()
	fleet := sample.Many(lib, 1, 28)
	first := string(fleet["vans/van-0000.toml"].Data)
	for i := range vans {
		own := strings.NewReplacer(sample.Code(0), sample.Code(i), `"Van 0"`, fmt.Sprintf(`"Van %d"`, i), "T1000", fmt.Sprint("T", 1000+i))
		fleet[fmt.Sprintf("vans/van-%04d.toml", i)] = file(own.Replace(first))
	}
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
