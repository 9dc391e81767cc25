package survey_test

import (
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/compare"
	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/build/survey"
	"doorpocket/components"
	"doorpocket/components/problem"
	"doorpocket/content"
)

var library = sync.OnceValues(func() (*components.Library, problem.List) { return components.Load(components.Embedded()) })

// some vans are enough.
var some = []string{"vans/rowan.toml", "vans/linnet.toml"}

// fleet is part of the demonstration fleet with some of its files changed.
func fleet(t *testing.T, changes map[string]func(string) string) *spec.Fleet {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(content.Fleet(), ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		if name == "labels.toml" || path.Dir(name) == "vans" && !slices.Contains(some, name) {
			return nil // labels would need a line for each change
		}
		data, err := fs.ReadFile(content.Fleet(), name)
		if change := changes[name]; change != nil {
			after := change(string(data))
			if after == string(data) {
				t.Fatalf("%s is as it was", name)
			}
			data = []byte(after)
		}
		files[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	lib, _ := library()
	loaded, found := spec.Load(files, "fleet/", lib)
	if found.HasErrors() {
		t.Fatal(found)
	}
	return loaded
}

func replaced(old, new string) func(string) string {
	return func(text string) string { return strings.Replace(text, old, new, 1) }
}

func read(t *testing.T, f *spec.Fleet, code string) (*guide.Kit, spec.Read) {
	t.Helper()
	for _, r := range f.Reads() {
		if r.Van.Code == code {
			return guide.NewKit(&f.Operator, "en"), r
		}
	}
	t.Fatalf("no van %s", code)
	return nil, spec.Read{}
}

func factOf(t *testing.T, things []survey.Thing, fitted, key string) survey.Fact {
	t.Helper()
	for _, thing := range things {
		for _, f := range thing.Facts {
			if thing.Fitted.Name == fitted && f.Key == key {
				return f
			}
		}
	}
	t.Fatalf("%s has no fact %s", fitted, key)
	return survey.Fact{}
}

// lineOf is where a line with some text stands in a file, from 1.
func lineOf(t *testing.T, name, text string) int {
	t.Helper()
	data, err := fs.ReadFile(content.Fleet(), name)
	if err != nil {
		t.Fatal(err)
	}
	for i, line := range strings.Split(string(data), "\n") {
		if strings.HasPrefix(line, text) {
			return i + 1
		}
	}
	t.Fatalf("%s has no line %q", name, text)
	return 0
}

// Every fact says where its value comes from.
func TestOrigins(t *testing.T) {
	kit, r := read(t, fleet(t, nil), "RW")
	things := survey.Things(kit, r)
	want := survey.Fact{Key: "height", Name: factOf(t, things, "body", "height").Name, Text: "2.81\u00a0m", Origin: survey.Spec, File: "vans/rowan.toml", Line: lineOf(t, "vans/rowan.toml", "height")}
	if diff := cmp.Diff(want, factOf(t, things, "body", "height")); diff != "" {
		t.Error(diff)
	}
	length := factOf(t, things, "body", "length")
	if length.Origin != survey.Sheet || length.File != "builds/ridge-640.toml" || length.Line != lineOf(t, length.File, "length") {
		t.Errorf("%+v", length)
	}
	counts := map[survey.Origin]int{}
	for _, thing := range things {
		for _, f := range thing.Facts {
			counts[f.Origin]++
			if (f.Text == "") != (f.Origin == survey.Lacking) || (f.File == "") != (f.Origin == survey.Lacking || f.Origin == survey.Guess) || f.Name == "" {
				t.Errorf("%s: %+v", thing.Fitted.Name, f)
			}
			d := thing.Fitted.System.Fact(f.Key)
			if f.Origin == survey.Guess && d.Default.IsZero() || f.Origin == survey.Lacking && d.Required {
				t.Errorf("%s: %+v", thing.Fitted.Name, f)
			}
		}
	}
	for origin := survey.Lacking; origin <= survey.Guess; origin++ {
		if counts[origin] == 0 {
			t.Errorf("no fact of origin %d: %v", origin, counts)
		}
	}
}

// The record of a van agrees with what is listed of it.
func TestRecord(t *testing.T) {
	f := fleet(t, nil)
	for _, r := range f.Reads() {
		kit := guide.NewKit(&f.Operator, "en")
		record := survey.Make(kit, r, nil)
		lacking := map[string]bool{}
		for name := range record.Lacking.All() {
			lacking[name] = true
		}
		if len(lacking) != record.Lacking.Len() || len(lacking) == 0 {
			t.Errorf("%s: %d names, %d told", r.Van.Code, len(lacking), record.Lacking.Len())
		}
		fitted := 0
		for _, thing := range survey.Things(kit, r) {
			if !thing.Fitted.Automatic {
				fitted++
			}
			for _, fact := range thing.Facts {
				if name := thing.Fitted.System.ID + ":" + fact.Key; fact.Origin == survey.Lacking && !lacking[name] {
					t.Errorf("%s: %s is not told", r.Van.Code, name)
				}
			}
		}
		if record.Has.Len() != fitted {
			t.Errorf("%s: %d things, want %d", r.Van.Code, record.Has.Len(), fitted)
		}
	}
}

// What differs from the build sheet, and nothing else, is told: also a value that
// means the same in another unit does not differ.
func TestDifferences(t *testing.T) {
	const start = "code      = \"RW\""
	alone := fleet(t, map[string]func(string) string{"vans/rowan.toml": func(text string) string {
		head, _, _ := strings.Cut(text, "[body]")
		return head
	}})
	kit, r := read(t, alone, "RW")
	if own := survey.Make(kit, r, nil).Own; len(own) != 0 {
		t.Errorf("a van as its sheet says differs: %+v", own)
	}
	changed := fleet(t, map[string]func(string) string{"vans/rowan.toml": func(text string) string {
		head, _, _ := strings.Cut(text, "[body]")
		head = strings.Replace(head, start, "without = [\"co-alarm\"]\n"+start, 1)
		return head + `[body]
height = "2.85 m"
length = "636 cm"
[fitted.hob]
note = "The left ring is slow."
[fitted.tank-disinfection]
done = 2026-09-30
[fitted.bag]
system = "safety/first-aid"
at = { side = "rear" }
`
	}})
	kit, r = read(t, changed, "RW")
	want := []survey.Difference{
		{Kind: survey.Value, Fitted: "body", System: "vehicle/body", Fact: "height", Now: "2.85\u00a0m", Was: "2.79\u00a0m"},
		{Kind: survey.Noted, Fitted: "hob", System: "kitchen/hob", Now: "The left ring is slow."},
		{Kind: survey.Value, Fitted: "tank-disinfection", System: "water/tank-disinfection", Fact: "done", Now: "30 September 2026"},
		{Kind: survey.Added, Fitted: "bag", System: "safety/first-aid"},
		{Kind: survey.Absent, Fitted: "co-alarm", System: "safety/carbon-monoxide-alarm"},
	}
	got := map[survey.Difference]bool{}
	own := survey.Make(kit, r, nil).Own
	for _, d := range own {
		got[d] = true
	}
	for _, d := range want {
		if !got[d] {
			t.Errorf("not told: %+v", d)
		}
	}
	if len(own) != len(want) {
		t.Errorf("%d differences, want %d: %+v", len(own), len(want), own)
	}
}

// An edition is another where the guide says something else, and only there.
func TestEdition(t *testing.T) {
	edition := func(changes map[string]func(string) string, code string) string {
		f := fleet(t, changes)
		kit, r := read(t, f, code)
		g, _ := kit.Build(r.Van)
		return compare.Edition(g)
	}
	before := edition(nil, "RW")
	for name, tt := range map[string]struct {
		file, old, new string
		same           bool
	}{
		"again":                  {"fleet.toml", "# The demonstration fleet.", "# The same.", true},
		"for staff":              {"vans/rowan.toml", "key_safe", "tracker = \"x\"\nkey_safe", true},
		"another van":            {"vans/linnet.toml", "name      = \"Linnet\"", "name      = \"Lark\"", true},
		"a value":                {"vans/rowan.toml", "2.81 m", "2.82 m", false},
		"a comment of the sheet": {"builds/ridge-640.toml", "[body]", "# longer\n[body]", true},
		"the help line":          {"fleet.toml", "+44 1632 960178", "+44 1632 960179", false},
		"a page of one's own":    {"pages/first-evening.en.md", "\n\n", "\n\nGood evening. ", false},
	} {
		after := edition(map[string]func(string) string{tt.file: replaced(tt.old, tt.new)}, "RW")
		if (after == before) != tt.same {
			t.Errorf("%s: %s, was %s", name, after, before)
		}
	}
}

// A page of hard words is told from one of easy ones, with the sentence at fault.
func TestReadings(t *testing.T) {
	hard := "The comprehensive determination of individual responsibilities necessitates considerable administrative deliberation."
	f := fleet(t, map[string]func(string) string{"pages/how-we-hire.en.md": func(string) string { return "# How we hire\n\nWe are here. " + hard + "\n" }})
	found := survey.Readings(&f.Operator)
	if len(found) != 2 {
		t.Fatalf("%+v", found)
	}
	for _, r := range found {
		isHard := r.File == "pages/how-we-hire.en.md"
		if r.Hard() != isHard || isHard && r.Hardest != hard || r.Title == "" || r.Counts.Words == 0 {
			t.Errorf("%+v, grade %.1f", r, r.Counts.Grade())
		}
	}
}
