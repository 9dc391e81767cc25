package spec_test

import (
	"bytes"
	"io/fs"
	"math/rand/v2"
	"os"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
	"doorpocket/content"
)

// mutants are specs that somebody spoilt: real ones with bytes, words and values
// changed at random, always in the same way.
type mutants struct {
	texts  map[string][]byte // by file: specs and build sheets
	names  []string
	tokens [][]byte // of all texts
	values [][]byte
}

var (
	tokenForm = regexp.MustCompile(`[A-Za-z0-9_.-]+|"[^"\n]*"|[^\sA-Za-z0-9_]`)
	valueForm = regexp.MustCompile(`= *("[^"\n]*"|[^\s"{\[][^\s,}#]*)`)
)

// odd are values that no spec should hold.
var odd = []string{`""`, `"-1 kg"`, `"0 m"`, `"1e308 m"`, `"1e-308 kg"`, `"NaN m"`, `"999999999999999999 L"`, `-9223372036854775808`, `9223372036854775807`, `1e999`, `nan`, `-inf`, `true`, `[]`, `{}`, `[[[]]]`,
	`0001-01-01`, `9999-12-31`, `2026-02-30`, `07:32:00`, `"""`, `'''`, `"\u0000"`, `"\ud800"`, `"` + "\u202e" + `gk 6"`, `"` + "\xff" + `"`, `{ side = "rear", side = "rear" }`, `"6 kg 6 kg"`, `"٦ kg"`, `"1 / 0 m"`, `"con"`, `"../../x"`}

func newMutants(t *testing.T) *mutants {
	t.Helper()
	m := &mutants{texts: map[string][]byte{}}
	for _, pattern := range []string{"vans/*.toml", "builds/*.toml"} {
		found, err := fs.Glob(content.Fleet(), pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range found {
			data, err := fs.ReadFile(content.Fleet(), name)
			if err != nil {
				t.Fatal(err)
			}
			m.texts[name] = data
			m.names = append(m.names, name)
			m.tokens = append(m.tokens, tokenForm.FindAll(data, -1)...)
			for _, match := range valueForm.FindAllSubmatch(data, -1) {
				m.values = append(m.values, match[1])
			}
		}
	}
	for _, value := range odd {
		for range 1 + len(m.values)/200 { // often enough to count among the real ones
			m.values = append(m.values, []byte(value))
		}
	}
	return m
}

// mutant is the i-th: a file and its text.
func (m *mutants) mutant(i int) (name string, text []byte) {
	random := rand.New(rand.NewPCG(uint64(i), 3))
	vans := slices.IndexFunc(m.names, func(name string) bool { return strings.HasPrefix(name, "builds/") })
	name = m.names[random.IntN(vans)]
	if i%16 == 0 { // a build sheet takes longer: all of the fleet is read for it
		name = m.names[vans+random.IntN(len(m.names)-vans)]
	}
	text = bytes.Clone(m.texts[name])
	for range 1 + random.IntN(1<<random.IntN(5)) {
		switch random.IntN(3) {
		case 0:
			text = mutateBytes(random, text)
		case 1:
			text = replaceOne(random, text, tokenForm.FindAllIndex(text, -1), m.tokens)
		default:
			var at [][]int
			for _, match := range valueForm.FindAllSubmatchIndex(text, -1) {
				at = append(at, match[2:4])
			}
			text = replaceOne(random, text, at, m.values)
		}
	}
	return name, text
}

// mutateBytes changes, drops, doubles or moves a run of bytes.
func mutateBytes(random *rand.Rand, text []byte) []byte {
	if len(text) == 0 {
		return []byte{byte(random.IntN(256))}
	}
	from := random.IntN(len(text))
	to := min(len(text), from+1+random.IntN(1<<random.IntN(10)))
	run := bytes.Clone(text[from:to])
	switch random.IntN(5) {
	case 0:
		text[from] = byte(random.IntN(256))
		return text
	case 1:
		return slices.Delete(text, from, to)
	case 2:
		return slices.Insert(text, to, run...)
	case 3:
		return slices.Insert(text, random.IntN(len(text)+1), run...)
	}
	return text[:from] // the rest is lost
}

func replaceOne(random *rand.Rand, text []byte, places [][]int, with [][]byte) []byte {
	if len(places) == 0 {
		return text
	}
	at := places[random.IntN(len(places))]
	return slices.Concat(text[:at[0]], with[random.IntN(len(with))], text[at[1]:])
}

const (
	// usualMutants are as many as a suite has time for; MUTANTS=100000 reads more,
	// and FIRST says with which to begin.
	usualMutants = 1000
	// mostBytes is what reading one mutant, and putting together the guide of one
	// without errors, may take of memory.
	mostBytes = 512 << 20
	// mostTime is what only one that hangs takes.
	mostTime = 2 * time.Minute
)

// Whatever is in a spec or a build sheet: it is read or refused, with problems
// that point into the fleet's files, without a panic, without end or without
// measure.
func TestMutants(t *testing.T) {
	lib, problems := components.Load(components.Embedded())
	if problems.HasErrors() {
		t.Fatal(problems)
	}
	m := newMutants(t)
	first, count := numberFrom("FIRST", 0), numberFrom("MUTANTS", usualMutants)
	files := fstest.MapFS{}
	err := fs.WalkDir(content.Fleet(), ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := fs.ReadFile(content.Fleet(), name)
		files[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	shared := spec.Open(files, "", lib)
	kit := guide.NewKit(&shared.Fleet().Operator, "en")
	whole, refused := 0, 0
	var stats runtime.MemStats
	for i := first; i < first+count; i++ {
		name, text := m.mutant(i)
		hang := time.AfterFunc(mostTime, func() { panic("mutant " + strconv.Itoa(i) + " of " + name + " is read without end") })
		runtime.ReadMemStats(&stats)
		before := stats.TotalAlloc
		files[name] = &fstest.MapFile{Data: text}
		reading, of := shared, kit
		if strings.HasPrefix(name, "builds/") {
			reading = spec.Open(files, "", lib)
			of = guide.NewKit(&reading.Fleet().Operator, "en")
		}
		var found problem.List
		for _, file := range reading.Specs() {
			if file != name && !(reading != shared && file == "vans/rowan.toml") {
				continue
			}
			r := reading.Van(file)
			found.Add(r.Problems...)
			if r.Van != nil && !r.Problems.HasErrors() && !reading.Broken() {
				_, more := of.Build(r.Van)
				found.Add(more...)
			}
		}
		if reading != shared {
			found.Add(reading.Close(nil, nil)...)
		}
		runtime.ReadMemStats(&stats)
		if used := stats.TotalAlloc - before; used > mostBytes {
			t.Errorf("mutant %d of %s takes %d MB", i, name, used>>20)
		}
		hang.Stop()
		lines := bytes.Count(text, []byte("\n")) + bytes.Count(text, []byte("\r")) + 1
		for _, p := range found {
			if p.File == name && p.Start.Line > lines || p.Summary == "" || p.File == "" || strings.Contains(p.Summary+p.Detail, "\x00") {
				t.Errorf("mutant %d of %s: %s", i, name, p)
			}
		}
		if found.HasErrors() {
			refused++
		} else {
			whole++
		}
		files[name] = &fstest.MapFile{Data: m.texts[name]}
	}
	t.Logf("%d are read, %d refused", whole, refused)
	if count >= usualMutants && (whole < count/50 || refused < count/50) {
		t.Errorf("%d are read and %d refused: they are not what they should be", whole, refused)
	}
}

func numberFrom(variable string, usual int) int {
	if n, err := strconv.Atoi(os.Getenv(variable)); err == nil {
		return n
	}
	return usual
}
