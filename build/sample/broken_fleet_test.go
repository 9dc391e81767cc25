package sample_test

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components/problem"
)

// damages are ways in which a spec of sample.Many goes wrong, each with what
// must be said of it. What is broken in one file is told of that file alone.
var damages = []struct{ old, new, want string }{
	{"spec_date", "spec-date", `Unknown key "spec-date"`},
	{`name = "Van`, `name = Van`, "quotes"},
	{`name = "Van`, `name = "Van` + "\xff", "UTF-8"},
	{`build = "batch-`, `build = "bath-`, "bath-"},
	{"[staff]\n", "[staf]\n", `Unknown table "staf"`},
	{"[staff]\n", "[body]\nlength = \"7.2 kg\"\n[staff]\n", "kg"},
	{"[staff]\n", "[body]\nlength = \"7,2 m\"\n[staff]\n", "comma"},
	{"[staff]\n", "[staff]\n[fitted.extra]\nsystem = \"gas/cylinder-loker\"\n", "gas/cylinder-loker"},
	{"[staff]\n", "[staff\n", "["},
	{`name = "Van`, `# name = "Van`, "name"},
}

// manyBroken is a fleet of which every tenth van is broken, and what must be
// said of each by its file.
func manyBroken(tb testing.TB, vans, systems int) (fstest.MapFS, map[string]string) {
	tb.Helper()
	lib, _ := embedded()
	fleet := sample.Many(lib, vans, systems)
	want := map[string]string{}
	for i := 0; i < vans; i += 10 {
		file := fmt.Sprintf("vans/van-%04d.toml", i)
		text := string(fleet[file].Data)
		damage := damages[i/10%len(damages)]
		if strings.Count(text, damage.old) != 1 {
			tb.Fatalf("%s has not one %q", file, damage.old)
		}
		fleet[file] = &fstest.MapFile{Data: []byte(strings.Replace(text, damage.old, damage.new, 1))}
		want[file] = damage.want
	}
	return fleet, want
}

// One run tells of every broken spec of a large fleet, and of no other.
func TestManyBrokenSpecs(t *testing.T) {
	lib := library(t)
	files, want := manyBroken(t, 400, 4)
	fleet, found := spec.Load(files, "", lib)
	told := map[string]string{}
	for _, p := range found {
		if p.Severity != problem.Error {
			continue
		}
		if want[p.File] == "" {
			t.Errorf("of a spec that is whole: %s", p)
		}
		if !p.Start.Known() || p.SourceLine == "" && p.Detail == "" {
			t.Errorf("without a place or a remedy: %s", p)
		}
		told[p.File] += p.Summary + " " + p.Detail + "\n"
	}
	for file, text := range want {
		if !strings.Contains(told[file], text) {
			t.Errorf("%s: no %q in %q", file, text, told[file])
		}
	}
	if len(fleet.Vans) < 400-len(want) {
		t.Errorf("%d vans were read", len(fleet.Vans))
	}
	var printed bytes.Buffer
	if err := problem.Write(&printed, found.Gather(), problem.Style{}); err != nil {
		t.Fatal(err)
	}
	for file := range want {
		if !strings.Contains(printed.String(), file+":") {
			t.Errorf("%s is not in what is printed", file)
		}
	}
}

// Two thousand vans, two hundred of them broken, against the same fleet whole:
//
//	go test ./build/sample -run '^$' -bench BrokenFleet -benchtime 1x
func BenchmarkBrokenFleet(b *testing.B) {
	lib, _ := embedded()
	broken, _ := manyBroken(b, 2000, 28)
	for _, c := range []struct {
		name  string
		files fstest.MapFS
	}{{"whole", sample.Many(lib, 2000, 28)}, {"broken", broken}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				_, found := spec.Load(c.files, "", lib)
				if err := problem.Write(io.Discard, found.Gather(), problem.Style{}); err != nil {
					b.Fatal(err)
				}
				errors, _ := found.Counts()
				b.ReportMetric(float64(errors), "errors")
			}
		})
	}
}
