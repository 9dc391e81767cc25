package roster_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/guide"
	"doorpocket/build/roster"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
)

const sheet = sample.Body + `
[fitted.pump]
system = "water/pump"
kind   = "pressure"
switch = "own-switch"

[fitted.lounge]
system = "openings/roof-vents"
`

// rows reads a fleet of a build sheet and the specs of its vans by code.
func rows(t *testing.T, specs map[string]string) ([]roster.Row, *components.Library) {
	t.Helper()
	files := fstest.MapFS{
		"fleet.toml":       {Data: []byte(sample.FleetTOML)},
		"builds/moss.toml": {Data: []byte(sheet)},
	}
	for code, text := range specs {
		head := "code = \"" + code + "\"\nname = \"Van " + code + "\"\nspec_date = 2026-10-02\n"
		files["vans/"+strings.ToLower(code)+".toml"] = &fstest.MapFile{Data: []byte(head + text)}
	}
	lib, _ := components.Load(components.Embedded())
	reading := spec.Open(files, "", lib)
	fleet := reading.Fleet()
	kit := guide.NewKit(&fleet.Operator, "en")
	var all []roster.Row
	for _, file := range reading.Specs() {
		r := reading.Van(file)
		if r.Problems.HasErrors() {
			t.Fatal(r.Problems)
		}
		all = append(all, roster.Of(kit.Plain(r.Van), r))
	}
	return all, lib
}

const of = "build = \"moss\"\n"

// What the vans of a build sheet have in common is not told; what one of them
// has otherwise is, with the vans.
func TestBatches(t *testing.T) {
	all, _ := rows(t, map[string]string{
		"AA": of,
		"BB": of + "[fitted.pump]\nflow = \"12 L/min\"\n",
		"CC": of + "[fitted.pump]\nflow = \"12 L/min\"\n[fitted.second]\nsystem = \"water/pump\"\nkind = \"pressure\"\nswitch = \"own-switch\"\n",
		"DD": of + "without = [\"lounge\"]\n",
		"EE": strings.TrimPrefix(sample.Body, ""),
	})
	var got []string
	for _, b := range roster.Batches(all) {
		got = append(got, b.Build+": "+strings.Join(b.Vans, " "))
		for _, d := range b.Differences {
			line := d.Thing.Name + " " + d.Fact
			for _, w := range d.Ways {
				text := w.Text
				if w.Absent {
					text = "absent"
				}
				line += " | " + text + " " + strings.Join(w.Vans, " ")
			}
			got = append(got, line)
		}
	}
	want := []string{
		"moss: AA BB CC DD",
		"pump flow |  AA DD | 12\u00a0L/min BB CC",
		"lounge  |  AA BB CC | absent DD",
		"second  |  CC | absent AA BB DD",
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// Systems with the vans that have them, in a table for a spreadsheet too.
func TestSystems(t *testing.T) {
	all, lib := rows(t, map[string]string{"AA": of, "BB": of + "without = [\"lounge\"]\n[fitted.second]\nsystem = \"water/pump\"\nkind = \"pressure\"\nswitch = \"own-switch\"\n"})
	families := roster.Families(lib, all)
	var got []string
	for _, f := range families {
		for _, s := range f.Systems {
			got = append(got, s.ID+" | "+strings.Join(s.With, " ")+" | "+strings.Join(s.Without, " "))
		}
	}
	if d := cmp.Diff([]string{"water/pump | AA BB | ", "openings/roof-vents | AA | BB"}, got); d != "" {
		t.Error(d)
	}
	table, err := roster.CSV(families, all)
	if err != nil {
		t.Fatal(err)
	}
	want := "code,name,build,water/pump,openings/roof-vents\r\nAA,Van AA,moss,1,1\r\nBB,Van BB,moss,2,0\r\n"
	if string(table) != want {
		t.Errorf("%q", table)
	}
}

// What is open goes down as it is stated.
func TestOpen(t *testing.T) {
	all, _ := rows(t, map[string]string{
		"AA": of, "BB": of + "[fitted.pump]\nflow = \"12 L/min\"\nlamp = true\nlabel = \"none\"\n",
	})
	a, b := all[0].Open, all[1].Open
	if a.Labels != b.Labels+1 || a.Pictures != b.Pictures || a.Pictures != 2 {
		t.Errorf("%+v, %+v", a, b)
	}
	if a.Facts+a.Defaults != b.Facts+b.Defaults+2 {
		t.Errorf("two facts more are stated: %+v, %+v", a, b)
	}
}
