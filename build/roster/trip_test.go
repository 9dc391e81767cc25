package roster_test

import (
	"bytes"
	"fmt"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"doorpocket/build/compare"
	"doorpocket/build/render"
	"doorpocket/build/roster"
	"doorpocket/build/sample"
	"doorpocket/build/sheets"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/content"
	"doorpocket/layouts"
)

var library = sync.OnceValues(func() (*components.Library, problem.List) { return components.Load(components.Embedded()) })

var onDay = manifest.Date{Year: 2026, Month: 11, Day: 2}

// aChange is a [[changed]], which no table holds.
var aChange = regexp.MustCompile(`(?m)^\[\[changed\]\].*\n(?:\w+ *=.*\n)+`)

// aList is a list of pictures, which no table holds either.
var aList = regexp.MustCompile(`(?ms)^pictures = \[\n.*?^\]\n`)

// demo is the demonstration fleet without what a table does not hold. A table has
// no build sheets, so their folders of pictures go too; those of vans stay.
func demo(t *testing.T) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(content.Fleet(), ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := fs.ReadFile(content.Fleet(), name)
		if strings.HasPrefix(name, "pictures/ridge-640/") {
			return err
		}
		files[name] = &fstest.MapFile{Data: aList.ReplaceAll(aChange.ReplaceAll(data, nil), nil)}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func load(t *testing.T, files fs.FS) *spec.Fleet {
	t.Helper()
	lib, _ := library()
	fleet, found := spec.Load(files, "", lib)
	if found.HasErrors() {
		t.Fatal(found[0])
	}
	return fleet
}

// imported are the specs that a table becomes in a folder without vans.
func imported(t *testing.T, data []byte) []roster.Spec {
	t.Helper()
	table, found := roster.Read("fleet", bytes.NewReader(data), "")
	if table == nil {
		t.Fatal(found)
	}
	lib, _ := library()
	made, found := roster.Import(table, roster.Wish{Library: lib, Lang: "en", Day: onDay})
	if len(found) > 0 || len(made.Unused) > 0 {
		t.Fatal(found, made.Unused)
	}
	return made.Specs
}

// difference tells what two fleets' guides differ in, "" for nothing.
func difference(t *testing.T, a, b fs.FS) string {
	t.Helper()
	lib, _ := library()
	r, err := render.New(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	voice, err := r.Voice("en")
	if err != nil {
		t.Fatal(err)
	}
	old, found := compare.Open(a, "a", "a/", nil, lib)
	new, more := compare.Open(b, "b", "b/", nil, lib)
	if found.Add(more...); len(found) > 0 {
		t.Fatal(found[0])
	}
	report, found := compare.Make(old, new, "en", voice, sheets.Compared)
	if report == nil {
		t.Fatal(found[0])
	}
	report.Files = nil
	for i := range report.Groups { // the sheets did not come along
		report.Groups[i].Staff = slices.DeleteFunc(report.Groups[i].Staff, func(c compare.StaffChange) bool { return c.Kind == compare.Sheet })
	}
	report.Groups = slices.DeleteFunc(report.Groups, func(g compare.Group) bool { return len(g.Hirers)+len(g.Staff) == 0 })
	if len(report.Groups)+len(report.Joined)+len(report.Left)+len(report.Shared.Hirers)+len(report.Shared.Staff) == 0 {
		return ""
	}
	return report.Text(voice)
}

// A fleet that was exported and imported into a folder without vans has the same
// guides and the same values, in every form.
func TestRoundTrip(t *testing.T) {
	lib, _ := library()
	fleets := map[string]fstest.MapFS{"demonstration": demo(t), "many": sample.Many(lib, 12, 25)}
	for option := range 3 {
		fleets[fmt.Sprint("everything ", option)] = sample.Everything(lib, option)
	}
	awkward := sample.Everything(lib, 0)
	text := string(awkward["vans/ev.toml"].Data)
	words := []string{"=1+2", "+44", "-18 °C outside", "@home", "'quoted", "'=x", "a; b, c | d", `say "go"`, "é ✓ \u201c", "none", "yes", "2027-01-02", "1,590"}
	text = regexp.MustCompile(`(?m)^system = .*$`).ReplaceAllStringFunc(text, func(line string) string {
		if len(words) == 0 {
			return line
		}
		line += "\nnote = " + manifest.Quote(words[0])
		words = words[1:]
		return line
	})
	awkward["vans/ev.toml"] = &fstest.MapFile{Data: []byte(text + "\n[staff]\nnotes = \"=cmd\"\ngas_check_due = 2027-03-14\n[staff.own]\n\"a key\" = \"-x\"\nsince = 2021-01-01\n")}
	fleets["awkward"] = awkward
	for _, name := range slices.Sorted(maps.Keys(fleets)) {
		files := fleets[name]
		fleet := load(t, files)
		for _, numbers := range []bool{false, true} {
			table, err := roster.Export(fleet, roster.Choice{Numbers: numbers})
			if err != nil {
				t.Fatal(err)
			}
			for _, form := range roster.Forms {
				if numbers && form == "csv" && name != "many" {
					continue // the cells are those of the workbook
				}
				t.Run(fmt.Sprint(name, " ", form, " ", numbers), func(t *testing.T) {
					var data bytes.Buffer
					if err := table.Write(&data, form); err != nil {
						t.Fatal(err)
					}
					again := fstest.MapFS{}
					for file, f := range files {
						if !strings.HasPrefix(file, "vans/") && !strings.HasPrefix(file, "builds/") {
							again[file] = f
						}
					}
					for _, s := range imported(t, data.Bytes()) {
						again[s.File] = &fstest.MapFile{Data: s.Text}
					}
					if diff := difference(t, files, again); diff != "" {
						t.Errorf("%s", diff)
					}
					// Exported once more, it is the same table, but for the sheets.
					more, err := roster.Export(load(t, again), roster.Choice{Numbers: numbers})
					if err != nil {
						t.Fatal(err)
					}
					if a, b := sorted(table), sorted(more); !slices.Equal(a, b) {
						for i := range min(len(a), len(b)) {
							if a[i] != b[i] {
								t.Fatalf("%q, then %q", a[i], b[i])
							}
						}
						t.Errorf("%d cells, then %d", len(a), len(b))
					}
				})
			}
		}
	}
}

// sorted are the cells of a table by van and heading.
func sorted(t *roster.Table) []string {
	var all []string
	for _, row := range t.Rows[1:] {
		for i, c := range row {
			if head := t.Rows[0][i].Text; c.Text != "" && head != "build" {
				all = append(all, row[0].Text+" "+head+" "+c.Text)
			}
		}
	}
	slices.Sort(all)
	return all
}

// The same fleet gives the same bytes.
func TestExportIsTheSameEveryTime(t *testing.T) {
	for _, form := range roster.Forms {
		var first []byte
		for range 2 {
			table, err := roster.Export(load(t, demo(t)), roster.Choice{})
			if err != nil {
				t.Fatal(err)
			}
			var data bytes.Buffer
			if err := table.Write(&data, form); err != nil {
				t.Fatal(err)
			}
			if first != nil && !bytes.Equal(first, data.Bytes()) {
				t.Errorf("%s: other bytes", form)
			}
			first = data.Bytes()
		}
	}
}

// What hirers may not see is in no column for them.
func TestExportForHirers(t *testing.T) {
	table, err := roster.Export(load(t, demo(t)), roster.Choice{Hirers: true})
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range table.Rows {
		for _, c := range row {
			if i == 0 && strings.Contains(c.Text, "staff") || strings.Contains(c.Text, "LANTERN 1") {
				t.Error(c.Text)
			}
		}
	}
}

func TestExportChosen(t *testing.T) {
	fleet := load(t, demo(t))
	table, err := roster.Export(fleet, roster.Choice{Columns: []string{"tyres.rear", "body.len*"}, Numbers: true})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, row := range table.Rows[:2] {
		for _, c := range row {
			got = append(got, c.Text)
		}
	}
	if want := []string{"code", "name", "body.length (m)", "tyres.rear (bar)", "AD", "Alder", "6.98", "5.5"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	if _, err := roster.Export(fleet, roster.Choice{Columns: []string{"tyre.*"}}); err == nil || !strings.Contains(err.Error(), `"tyre.*"`) {
		t.Error(err)
	}
}
