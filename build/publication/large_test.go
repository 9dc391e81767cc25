package publication_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"doorpocket/build/publication"
	"doorpocket/build/sample"
)

// What a large fleet costs, each beside its floor in the same run: copying the
// finished tree with cp -r. FLEET=1000 says how many vans (100 without):
//
//	FLEET=1000 go test ./build/publication -run '^$' -bench LargeFleet -benchtime 1x -timeout 2h
func BenchmarkLargeFleet(b *testing.B) {
	vans := 100
	if n, err := strconv.Atoi(os.Getenv("FLEET")); err == nil {
		vans = n
	}
	lib, _ := theLibrary()
	fleet := sample.Many(lib, vans, 28)
	for i := range 3 { // a system of the fleet's own on some vans
		name := fmt.Sprintf("vans/van-%04d.toml", i)
		fleet[name] = file(string(fleet[name].Data) + strings.Replace(bikes, `pictures = [{ file = "box.jpg", alt = "Box" }]`, "", 1))
	}
	bikeBox(fleet)
	site := filepath.Join(b.TempDir(), "site")
	first := timed(b, fleet, site, func(j *publication.Job) { j.All = true })
	b.Run("full", func(b *testing.B) {
		for b.Loop() {
			first = timed(b, fleet, site, func(j *publication.Job) { j.All = true })
			first.report(b, copying(b, site), 0)
		}
	})
	b.Run("nothing", func(b *testing.B) {
		for b.Loop() {
			timed(b, fleet, site, nil).report(b, copying(b, site), first.took)
		}
	})
	b.Run("spec", func(b *testing.B) {
		for b.Loop() {
			fleet["vans/van-0005.toml"] = file(string(fleet["vans/van-0005.toml"].Data) + "# seen\n")
			timed(b, fleet, site, nil).report(b, copying(b, site), first.took)
		}
	})
	b.Run("system", func(b *testing.B) {
		for b.Loop() {
			fleet["systems/living/bike-box/page.en.md"] = file(string(fleet["systems/living/bike-box/page.en.md"].Data) + "Again.\n")
			timed(b, fleet, site, nil).report(b, copying(b, site), first.took)
		}
	})
}

// cost is what one publish took.
type cost struct {
	took time.Duration
	peak uint64 // bytes of memory in use, at most
	made publication.Made
}

func timed(b *testing.B, fleet fstest.MapFS, site string, more func(*publication.Job)) cost {
	b.Helper()
	runtime.GC()
	stop, peak := make(chan struct{}), make(chan uint64)
	go func() {
		var most uint64
		for {
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			most = max(most, m.HeapInuse)
			select {
			case <-stop:
				peak <- most
				return
			case <-time.After(100 * time.Millisecond):
			}
		}
	}()
	begun := time.Now()
	made, found, err := publishFiles(fleet, site, more)
	took := time.Since(begun)
	close(stop)
	c := cost{took, <-peak, made}
	if err != nil || found.HasErrors() {
		b.Fatal(err, found[0])
	}
	return c
}

// copying times cp -r of the whole site.
func copying(b *testing.B, site string) time.Duration {
	b.Helper()
	copied := filepath.Join(b.TempDir(), "copy")
	begun := time.Now()
	if out, err := exec.Command("cp", "-r", site, copied).CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	took := time.Since(begun)
	if err := os.RemoveAll(copied); err != nil {
		b.Fatal(err)
	}
	return took
}

func (c cost) report(b *testing.B, floor, full time.Duration) {
	b.ReportMetric(c.took.Seconds(), "s")
	b.ReportMetric(c.took.Seconds()/floor.Seconds(), "of-cp")
	b.ReportMetric(float64(c.peak)/1e6, "MB")
	b.ReportMetric(float64(c.made.Pages), "pages")
	b.ReportMetric(float64(c.made.Files), "files-written")
	if full > 0 {
		b.ReportMetric(100*c.took.Seconds()/full.Seconds(), "%-of-full")
	} else {
		b.ReportMetric(float64(c.made.Pages)/c.took.Seconds(), "pages/s")
	}
}
