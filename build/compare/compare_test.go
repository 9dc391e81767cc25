package compare_test

import (
	"encoding/json"
	"io/fs"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/compare"
	"doorpocket/build/render"
	"doorpocket/build/sheets"
	"doorpocket/components"
	"doorpocket/components/problem"
	"doorpocket/content"
	"doorpocket/layouts"
)

var library = sync.OnceValues(func() (*components.Library, problem.List) { return components.Load(components.Embedded()) })

// demo is the demonstration fleet, to be changed.
func demo(t *testing.T) fstest.MapFS {
	t.Helper()
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
	return files
}

// edit replaces words of a file that must be there.
func edit(t *testing.T, files fstest.MapFS, name, old, new string) {
	t.Helper()
	text := string(files[name].Data)
	if !strings.Contains(text, old) {
		t.Fatalf("%s has no %q", name, old)
	}
	files[name] = &fstest.MapFile{Data: []byte(strings.Replace(text, old, new, 1))}
}

func voice(t *testing.T) render.Voice {
	t.Helper()
	r, err := render.New(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	v, err := r.Voice("en")
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func side(t *testing.T, name string, files fs.FS, pictures map[string]string) *compare.Side {
	t.Helper()
	lib, _ := library()
	s, found := compare.Open(files, name, name+"/", pictures, lib)
	if len(found) > 0 {
		t.Fatal(found)
	}
	return s
}

// before is the demonstration fleet as it is.
var before = sync.OnceValues(func() (*compare.Side, problem.List) {
	lib, _ := library()
	return compare.Open(content.Fleet(), "old", "old/", nil, lib)
})

// compared gives the report on the demonstration fleet after changes.
func compared(t *testing.T, change func(files fstest.MapFS)) *compare.Report {
	t.Helper()
	files := demo(t)
	change(files)
	old, found := before()
	if len(found) > 0 {
		t.Fatal(found)
	}
	report, found := compare.Make(old, side(t, "new", files, nil), "en", voice(t), sheets.Compared)
	if report == nil {
		t.Fatal(found)
	}
	return report
}

// Every kind of change is told in the words that a reader would use, to those
// whom it concerns, and nothing else is.
func TestWords(t *testing.T) {
	const rowan, ridge = "vans/rowan.toml", "builds/ridge-640.toml"
	tests := map[string]struct {
		change func(files fstest.MapFS)
		want   []string // lines of the text
		never  []string
	}{
		"nothing": {func(fstest.MapFS) {}, []string{"Nothing changed."}, []string{"Vans as they were"}},
		"a fact of a build sheet, told once": {
			func(files fstest.MapFS) { edit(t, files, ridge, `rear       = "5.5 bar"`, `rear = "5.25 bar"`) },
			[]string{"All 2 vans of build sheet ridge-640", "HZ Hazel, RW Rowan", "V4 Tyres: rear tyres 5.25 bar, was 5.5 bar",
				"Rear, bar: 5.25 bar, was 5.5 bar (5 % less)", "Pages that changed: V4 Tyres, A tyre is flat", "Pages that are gone: What changed lately", "Vans as they were: 4.",
				"builds/ridge-640.toml: lines added: 1, removed: 1"}, nil},
		"the same value in another unit": {
			func(files fstest.MapFS) { edit(t, files, ridge, `rear       = "5.5 bar"`, `rear = "550 kPa"`) },
			[]string{"Pages that changed: V4 Tyres, What changed lately, A tyre is flat"}, []string{"rear tyres 550"}},
		"a comment": {
			func(files fstest.MapFS) { edit(t, files, rowan, "# Rowan, a Ridge.", "# Rowan, a ridge.") },
			[]string{"vans/rowan.toml: lines added: 1, removed: 1"}, []string{"For hirers", "For staff"}},
		"a thing gone": {
			func(files fstest.MapFS) {
				edit(t, files, rowan, "spec_date = 2026-10-02", "spec_date = 2026-11-02\nwithout = [\"tv\"]")
			},
			[]string{"E11 Television: is not there any more", "Labels to take off: E11 Television", "Spec of: 2 November 2026 (was: 2 October 2026)"}, nil},
		"a thing that says it has another name": {
			func(files fstest.MapFS) {
				edit(t, files, rowan, "[fitted.filter]", "[fitted.strainer]\nwas = \"filter\"")
				edit(t, files, rowan, `fitted = "filter"`, `fitted = "strainer"`)
			},
			[]string{"vans/rowan.toml: lines added: 3, removed: 2"}, []string{"any more", "is new", "Labels"}},
		"a thing replaced": {
			func(files fstest.MapFS) {
				edit(t, files, rowan, "[fitted.solar]", "[fitted.solar]\ntitle = \"Roof panel\"")
			},
			[]string{"E15 Roof panel: was called Solar panel", "Labels to print again, their words changed: E15 Roof panel"}, nil},
		"a place": {
			func(files fstest.MapFS) {
				edit(t, files, rowan, `along = "3.70 m", up = "0.85 m"`, `along = "3.90 m", up = "0.85 m"`)
			},
			[]string{"G6 Outside gas point: where it is: Nearside, the passenger’s side, on the left, 3.90 m from the front, 0.85 m up from the ground (was: Nearside, the passenger’s side, on the left, 3.70 m from the front, 0.85 m up from the ground)"}, nil},
		"staff": {
			func(files fstest.MapFS) {
				edit(t, files, rowan, "gas_check_due            = 2027-03-14", "gas_check_due = 2028-03-14")
			},
			[]string{"Gas safety check: 14 March 2028 (was: 14 March 2027)"}, []string{"For hirers"}},
		"whom to call": {
			func(files fstest.MapFS) { edit(t, files, "fleet.toml", "960178", "960179") },
			[]string{"On all vans", "help line: +44 1632 960179 (was: +44 1632 960178)"}, nil},
		"the address": {
			func(files fstest.MapFS) { edit(t, files, "fleet.toml", "https://guide.", "https://guides.") },
			[]string{"The guides move: guides.lanternfold.example/, was guide.lanternfold.example/. Labels with the old address go stale"}, []string{"For hirers"}},
		"an own page": {
			func(files fstest.MapFS) { delete(files, "pages/first-evening.en.md") },
			[]string{"Pages that are gone: Your first evening"}, nil},
		"a van": {
			func(files fstest.MapFS) { delete(files, rowan) },
			[]string{"Vans that are gone", "RW Rowan: labels to take off: 73 (E1, E2, E3, E4, E5, E6, E7, E8, E9, E10, E11, E12, E13, E14, E15, G1, G2, G3, G4, G5, G6, H1, H2, H3, K1, K2, K3, K4, K5, K6, L1, L2, L3, L4, L5, L6, L7, R1, R2, R3, R4, R5, R6, R7, R8, R9, R10, S1, S2, S3, S4, T1, T2, T3, T4, T5, V1, V2, V3, V4, V5, V6, V7, V8, V9, V10, W1, W2, W3, W4, W5, W6, W7)"}, nil},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			text := compared(t, test.change).Text(voice(t))
			var lines []string
			for line := range strings.Lines(text) {
				lines = append(lines, strings.TrimSpace(line))
			}
			for _, want := range test.want {
				if !slices.Contains(lines, want) {
					t.Errorf("no line %q in\n%s", want, text)
				}
			}
			for _, never := range test.never {
				if strings.Contains(text, never) {
					t.Errorf("%q in\n%s", never, text)
				}
			}
		})
	}
}

// changeAll changes something of every kind, and marks all that only staff may
// see.
func changeAll(t *testing.T) func(files fstest.MapFS) {
	return func(files fstest.MapFS) {
		edit(t, files, "builds/ridge-640.toml", `rear       = "5.5 bar"`, `rear = "5.25 bar"`)
		edit(t, files, "vans/rowan.toml", "145 g/h", "160 g/h")
		edit(t, files, "vans/rowan.toml", `registration             = "LANTERN 1 RW"`, `registration = "SECRET 1"`)
		edit(t, files, "vans/rowan.toml", "[staff.own]", "[staff.own]\nsafe = \"SECRET 2\"\nSECRET_3 = 2027-01-01")
		edit(t, files, "vans/hazel.toml", "[staff]", "[[step]]\nid = \"own-one\"\nroutine = \"handover\"\ntext = \"Tell them SECRET four.\"\n\n[staff]")
		edit(t, files, "fleet.toml", "960178", "960179")
		delete(files, "vans/dipper.toml")
	}
}

// What hirers may read of a report has nothing of what only staff may see.
func TestHirersSeeNothingOfStaff(t *testing.T) {
	report := compared(t, changeAll(t))
	whole, err := json.Marshal(report)
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(string(whole), "SECRET"); n < 4 {
		t.Fatalf("staff are told of %d secrets only", n)
	}
	only := report.Hirers()
	part, err := json.Marshal(only)
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{string(part), only.Text(voice(t)), only.Markdown(voice(t))} {
		for _, secret := range []string{"SECRET", "staff", "abel", "vans/rowan.toml"} {
			if strings.Contains(strings.ReplaceAll(text, `"label":`, ""), secret) {
				t.Errorf("%q in\n%s", secret, text)
			}
		}
		if !strings.Contains(strings.ReplaceAll(text, "\u00a0", " "), "rear tyres 5.25 bar, was 5.5 bar") {
			t.Errorf("no tyres in\n%s", text)
		}
	}
	if got := len(report.Groups); len(only.Groups) == 0 || len(only.Groups) >= got {
		t.Errorf("%d of %d groups", len(only.Groups), got)
	}
}

// The same two sides give the same report, with one processor and with many.
func TestReportIsTheSameEveryTime(t *testing.T) {
	first := compared(t, changeAll(t))
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if diff := cmp.Diff(first, compared(t, changeAll(t))); diff != "" {
		t.Error(diff)
	}
}

// Backwards, what was new is gone, and numbers move the other way.
func TestBackwards(t *testing.T) {
	files := demo(t)
	changeAll(t)(files)
	report, found := compare.Make(side(t, "new", files, nil), side(t, "old", demo(t), nil), "en", voice(t), sheets.Compared)
	if report == nil {
		t.Fatal(found)
	}
	text := report.Text(voice(t))
	for _, want := range []string{"rear tyres 5.5 bar, was 5.25 bar", "DP Dipper: labels to stick: ", "Outside gas point, Gas it uses: 145 g/h, was 160 g/h (9 % less)"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}

// A picture that was taken anew under the same name is another picture.
func TestPictures(t *testing.T) {
	files := demo(t)
	edit(t, files, "vans/rowan.toml", "[fitted.solar]", "[fitted.solar]\npictures = [{ file = \"panel.jpg\", alt = \"The panel\" }]")
	files["pictures/panel.jpg"] = &fstest.MapFile{}
	make := func(was, now string) string {
		report, found := compare.Make(side(t, "old", files, map[string]string{"panel.jpg": was}), side(t, "new", files, map[string]string{"panel.jpg": now}), "en", voice(t), sheets.Compared)
		if report == nil {
			t.Fatal(found)
		}
		return report.Text(voice(t))
	}
	if text := make("1", "2"); !strings.Contains(text, "E15 Solar panel: other pictures") || !strings.Contains(text, "Pages that changed: E15 Solar panel") {
		t.Error(text)
	}
	if text := make("1", "1"); !strings.Contains(text, "Nothing changed.") {
		t.Error(text)
	}
}

// What is said of a broken side is its errors and nothing else.
func TestBroken(t *testing.T) {
	files := demo(t)
	edit(t, files, "vans/rowan.toml", `"145 g/h"`, `"145 kg"`)
	lib, _ := library()
	_, found := compare.Open(files, "HEAD", "HEAD:", nil, lib)
	if len(found) != 1 || found[0].File != "HEAD:vans/rowan.toml" || found[0].Severity != problem.Error {
		t.Error(found)
	}
}

// The lines of a difference put together are both texts.
func TestFilesAreWhole(t *testing.T) {
	report := compared(t, changeAll(t))
	old, now := demo(t), demo(t)
	changeAll(t)(now)
	if len(report.Files) != 5 {
		t.Errorf("%d files", len(report.Files))
	}
	for _, f := range report.Files {
		lines := func(files fstest.MapFS) []string {
			if files[f.Name] == nil {
				return nil
			}
			return strings.Split(strings.TrimSuffix(string(files[f.Name].Data), "\n"), "\n")
		}
		was, is := lines(old), lines(now)
		for _, h := range f.Hunks {
			o, n := max(h.Old, 1)-1, max(h.New, 1)-1
			for _, l := range h.Lines {
				if l.Mark != '+' {
					if was[o] != l.Text {
						t.Errorf("%s:%d is %q, not %q", f.Name, o+1, was[o], l.Text)
					}
					o++
				}
				if l.Mark != '-' {
					if is[n] != l.Text {
						t.Errorf("%s:%d is %q, not %q", f.Name, n+1, is[n], l.Text)
					}
					n++
				}
			}
		}
		if len(was)-f.Removed+f.Added != len(is) {
			t.Errorf("%s: %d lines, %d removed, %d added, %d lines", f.Name, len(was), f.Removed, f.Added, len(is))
		}
	}
}

// What is noted for hirers stands in the files where it was changed, can be read
// there, and is noted once.
func TestNotes(t *testing.T) {
	files := demo(t)
	changeAll(t)(files)
	edit(t, files, "vans/rowan.toml", "spec_date = 2026-10-02", "spec_date = 2026-11-02\nwithout = [\"tv\"]")
	make := func() *compare.Report {
		report, found := compare.Make(side(t, "old", demo(t), nil), side(t, "new", files, nil), "en", voice(t), sheets.Compared)
		if report == nil {
			t.Fatal(found)
		}
		return report
	}
	notes := make().Notes
	var got []string
	for _, n := range notes {
		got = append(got, n.File+": "+strings.ReplaceAll(strings.TrimSpace(n.Text), "\n", ", "))
	}
	want := []string{
		`builds/ridge-640.toml: fitted = "tyres", fact   = "rear", was    = "5.5 bar"`,
		`vans/rowan.toml: fitted = "outside-gas-point", fact   = "gas_barbecue", was    = "145 g/h"`,
		`vans/rowan.toml: gone   = "electrics/tv"`,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Fatal(diff)
	}
	for _, end := range []string{"\n", "\r\n"} {
		for _, n := range notes {
			before := []byte(strings.ReplaceAll(strings.TrimSuffix(string(files[n.File].Data), "\n"), "\n", end))
			after, added := compare.WithNotes(before, []compare.Note{n}, "2026-11-03")
			again, more := compare.WithNotes(after, []compare.Note{n}, "2026-11-04")
			if added+more != 1 && !strings.Contains(string(before), "gone") || string(again) != string(after) || !strings.HasPrefix(string(after), string(before)) {
				t.Errorf("%s: %d, then %d", n.File, added, more)
			}
			if strings.Count(string(after), "\n") != strings.Count(string(after), end) {
				t.Errorf("%s: ends of lines are mixed", n.File)
			}
			files[n.File] = &fstest.MapFile{Data: []byte(strings.ReplaceAll(string(after), "\r\n", "\n"))}
		}
	}
	text := make().Text(voice(t))
	for _, want := range []string{"What changed lately"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	if make().Hirers().Notes != nil {
		t.Error("hirers are given notes for the specs")
	}
}
