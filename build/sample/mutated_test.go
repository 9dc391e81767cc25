package sample_test

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"doorpocket/build/guide"
	"doorpocket/build/render"
	"doorpocket/build/report"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
	"doorpocket/content"
	"doorpocket/layouts"
)

// Specs, build sheets and fleet files changed at random are read to the end:
// none stops the program, none keeps it for long or takes much more memory than
// the file it was made from, every problem has words and a place that exists,
// and what passes without an error becomes a guide. MUTANTS says which:
// 0-100000 are the first hundred thousand, 701-702 is one.
func TestMutatedSpecs(t *testing.T) {
	from, to := 0, 600
	if text := os.Getenv("MUTANTS"); text != "" {
		if _, err := fmt.Sscanf(text, "%d-%d", &from, &to); err != nil || from >= to {
			t.Fatalf("MUTANTS=%q is no range such as 0-100000: %v", text, err)
		}
	}
	p := newProving(t)
	for i := from; i < to; i++ {
		p.prove(t, i)
	}
	count := to - from
	t.Logf("%d of %d became guides, %d of them were rendered; at most %.1f times the memory of the real spec",
		p.guides, count, p.rendered, p.worst)
	if count >= 600 && (p.guides < count/100 || p.rendered == 0) {
		t.Errorf("of %d only %d became guides and %d were rendered", count, p.guides, p.rendered)
	}
}

// victim is a file to change, in a fleet of one van.
type victim struct {
	fleet fstest.MapFS
	file  string
	cost  uint64 // bytes taken to read the fleet as it is
}

type proving struct {
	lib              *components.Library
	pages            *render.Renderer
	victims          []victim
	mutants          *mutants
	guides, rendered int
	worst            float64
}

func newProving(t *testing.T) *proving {
	t.Helper()
	pages, err := render.New(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	p := &proving{lib: library(t), pages: pages}
	p.add(sample.Everything(p.lib, 1))
	p.add(filesOf(t, content.Starter()))
	p.addDemonstration(t)
	p.addBroken(t)
	var texts []string
	for i := range p.victims {
		v := &p.victims[i]
		texts = append(texts, string(v.fleet[v.file].Data))
		v.cost = allocated(func() { spec.Load(v.fleet, "", p.lib) })
	}
	p.mutants = newMutants(texts)
	return p
}

// addDemonstration adds the vans of the demonstration fleet one by one, each
// with its build sheet and without the register, which knows the others too.
func (p *proving) addDemonstration(t *testing.T) {
	all := filesOf(t, content.Fleet())
	for _, van := range slices.Sorted(maps.Keys(all)) {
		if !strings.HasPrefix(van, "vans/") {
			continue
		}
		one := maps.Clone(all)
		maps.DeleteFunc(one, func(name string, _ *fstest.MapFile) bool {
			sheet, isSheet := strings.CutPrefix(name, "builds/")
			return name == "labels.toml" || strings.HasPrefix(name, "vans/") && name != van ||
				isSheet && !bytes.Contains(all[van].Data, []byte("= \""+strings.TrimSuffix(sheet, ".toml")+"\""))
		})
		p.add(one)
	}
}

// addBroken adds vans that are wrong to begin with.
func (p *proving) addBroken(t *testing.T) {
	t.Helper()
	broken := filesOf(t, os.DirFS("../../testdata/broken"))
	if len(broken) == 0 {
		t.Fatal("no broken specs")
	}
	for _, name := range slices.Sorted(maps.Keys(broken)) {
		p.victims = append(p.victims, victim{file: "vans/rowan.toml",
			fleet: fstest.MapFS{"fleet.toml": {Data: []byte(sample.FleetTOML)}, "vans/rowan.toml": broken[name]}})
	}
}

// add takes every TOML file of a fleet for a victim.
func (p *proving) add(fleet fstest.MapFS) {
	for _, name := range slices.Sorted(maps.Keys(fleet)) {
		if strings.HasSuffix(name, ".toml") {
			p.victims = append(p.victims, victim{fleet: fleet, file: name})
		}
	}
}

func filesOf(t *testing.T, folder fs.FS) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(folder, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := fs.ReadFile(folder, name)
		files[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// prove reads the fleet with the number-th mutant and looks at what comes of it.
func (p *proving) prove(t *testing.T, number int) {
	t.Helper()
	v := p.victims[number/3%len(p.victims)]
	text := p.mutants.make(string(v.fleet[v.file].Data), number)
	fleet := maps.Clone(v.fleet)
	fleet[v.file] = &fstest.MapFile{Data: []byte(text)}
	late := time.AfterFunc(time.Minute, func() { panic(fmt.Sprintf("mutant %d, %s, is read for a minute", number, v.file)) })
	defer late.Stop()
	defer func() {
		if what := recover(); what != nil {
			t.Fatalf("mutant %d, %s: %v\n%s\n%.3000s", number, v.file, what, debug.Stack(), text)
		}
	}()
	var read *spec.Fleet
	var found problem.List
	cost := allocated(func() { read, found = spec.Load(fleet, "", p.lib) })
	p.worst = max(p.worst, float64(cost)/float64(v.cost))
	if cost > 4*v.cost+64<<20 {
		t.Errorf("mutant %d, %s: %d MB to read, the real one takes %d MB", number, v.file, cost>>20, v.cost>>20)
	}
	p.checkProblems(t, number, found, read)
	if !found.HasErrors() {
		p.publish(t, number, read)
	}
}

// allocated counts the bytes that something takes, given back or not.
func allocated(do func()) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	do()
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}

func (p *proving) checkProblems(t *testing.T, number int, found problem.List, read *spec.Fleet) {
	t.Helper()
	for _, one := range found {
		data, known := read.Sources[one.File]
		if lines := bytes.Count(data, []byte("\n")) + 2; known && one.Start.Line > lines {
			t.Errorf("mutant %d: %s is on a line after the last", number, one)
		}
		if one.File == "" || one.Summary == "" || one.Detail == "" {
			t.Errorf("mutant %d: without a file, a summary or a remedy: %+v", number, one)
		}
	}
	if err := problem.Write(io.Discard, found, problem.Style{Colour: true, Width: 60}); err != nil {
		t.Error(err)
	}
	if number%20 == 0 {
		for _, form := range report.Forms {
			if err := report.Write(io.Discard, form, "1", found); err != nil {
				t.Errorf("mutant %d: %v", number, err)
			}
		}
	}
}

// publish makes a guide of what has no errors, and now and then its pages.
func (p *proving) publish(t *testing.T, number int, fleet *spec.Fleet) {
	t.Helper()
	g, found := guide.NewKit(&fleet.Operator, fleet.Languages[0]).Build(fleet.Vans[0])
	if p.guides++; found.HasErrors() || p.guides%25 != 1 {
		return
	}
	p.rendered++
	if _, err := p.pages.Van(g); err != nil {
		t.Errorf("mutant %d: no pages: %v", number, err)
	}
}
