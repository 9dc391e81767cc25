package sheets_test

import (
	"fmt"
	"io"
	"runtime"
	"testing"

	"doorpocket/build/sheets"
)

// nowhere takes a file and keeps nothing.
type nowhere struct{ io.Writer }

func (nowhere) Close() error { return nil }

// fleetOf gives 30 labels for each of so many vans.
func fleetOf(vans int) func(yield func(sheets.Sticker) bool) {
	sample := demoStickers("RW")[:30]
	return func(yield func(sheets.Sticker) bool) {
		for n := range vans {
			for _, s := range sample {
				s.Van = fmt.Sprintf("V%d", n)
				s.Address = demo().Address.To(s.Van + "/" + s.Label + "/")
				if !yield(s) {
					return
				}
			}
		}
	}
}

// heapAt prints so many vans and gives the most memory in use at the end of any
// file, in bytes.
func heapAt(t testing.TB, vans int) (most uint64, made sheets.Made) {
	t.Helper()
	g := grids(t)["a4-3x8-64x34"]
	made, err := sheets.Job{Stock: stock(t), Grid: g, Start: 1, Call: call, PagesPerFile: 5}.Print(fleetOf(vans), func(int) (io.WriteCloser, error) {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		most = max(most, m.HeapAlloc)
		return nowhere{io.Discard}, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return most, made
}

// A large fleet takes no more memory than one that fills a file.
func TestMemoryIsFlat(t *testing.T) {
	small, _ := heapAt(t, 8)
	large, made := heapAt(t, 24)
	t.Logf("8 vans: %.1f MB, 24 vans in %d files: %.1f MB", float64(small)/1e6, made.Files, float64(large)/1e6)
	if large > small+small/4 {
		t.Errorf("memory grows from %d to %d bytes", small, large)
	}
}

// The labels of 1,000 vans.
func BenchmarkThousandVans(b *testing.B) {
	for range b.N {
		most, made := heapAt(b, 1000)
		b.ReportMetric(float64(most)/1e6, "MB")
		b.ReportMetric(float64(made.Labels), "labels")
	}
}
