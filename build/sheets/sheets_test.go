package sheets_test

import (
	"bytes"
	"errors"
	"image"
	"io"
	"iter"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"doorpocket/build/paper"
	"doorpocket/build/publication"
	"doorpocket/build/render"
	"doorpocket/build/sheets"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/content"
	"doorpocket/layouts"
)

var demo = sync.OnceValue(func() *spec.Fleet {
	lib, _ := components.Load(components.Embedded())
	fleet, _ := spec.Load(content.Fleet(), "content/", lib)
	return fleet
})

func stock(t testing.TB) *paper.Stock {
	t.Helper()
	s, err := paper.Open(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func words(t testing.TB) *render.Words {
	t.Helper()
	r, err := render.New(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	w, err := r.Words("en")
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func grids(t testing.TB) map[string]sheets.Grid {
	t.Helper()
	all, err := sheets.Grids(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	byName := map[string]sheets.Grid{}
	for _, g := range all {
		byName[g.Name] = g
	}
	return byName
}

// closing is a buffer that can be closed.
type closing struct{ bytes.Buffer }

func (*closing) Close() error { return nil }

// printed prints a job into one file.
func printed(t testing.TB, job sheets.Job, stickers iter.Seq[sheets.Sticker]) (string, sheets.Made) {
	t.Helper()
	job.Stock = stock(t)
	if job.Start == 0 {
		job.Start = 1
	}
	var b closing
	made, err := job.Print(stickers, func(int) (io.WriteCloser, error) { return &b, nil })
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "labels.pdf")
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return file, made
}

const call = "Help: +44\u00a01632\u00a0960178"

// demoStickers are all labels of the demonstration fleet, or of one van.
func demoStickers(van string) []sheets.Sticker {
	fleet := demo()
	return slices.Collect(sheets.Stickers(&fleet.Operator, fleet.Vans, func(s sheets.Sticker) bool { return van == "" || s.Van == van }))
}

// symbols crops the symbols out of the pages of a sheet.
func symbols(pages []*image.Gray, dpi int, g sheets.Grid, n int) []*image.Gray {
	var all []*image.Gray
	for i := range n {
		x, y := g.At(i % g.PerPage())
		all = append(all, cropped(pages[i/g.PerPage()], dpi, x, y, min(g.Width, g.Height)+1, g.Height))
	}
	return all
}

// Every label of the demonstration fleet is read by two decoders as the page
// that it names, and that page is in the published tree, under exactly that
// name.
func TestEveryLabelIsRead(t *testing.T) {
	all := demoStickers("")
	g := grids(t)["a4-3x8-64x34"]
	file, made := printed(t, sheets.Job{Grid: g, Call: call, PagesPerFile: 1000}, slices.Values(all))
	if made.Labels != len(all) || made.Labels < 300 {
		t.Fatalf("%d labels of %d", made.Labels, len(all))
	}
	run(t, "qpdf", "--check", file)
	const dpi = 300
	pictures := symbols(rendered(t, file, dpi, 1, made.Pages), dpi, g, len(all))
	site := filepath.Join(t.TempDir(), "site")
	if _, err := publication.Publish(demo(), site, "test"); err != nil {
		t.Fatal(err)
	}
	base := demo().Address.To("")
	one, two := zbar(t, pictures), second(pictures)
	for i, s := range all {
		if one[i] != s.Address || two[i] != s.Address {
			t.Errorf("%s: read %q and %q, wanted %q", s.Code(), one[i], two[i], s.Address)
			continue
		}
		path, ok := strings.CutPrefix(one[i], base)
		if !ok || path != s.Van+"/"+s.Label+"/" {
			t.Errorf("%s leads to %q", s.Code(), one[i])
		}
		page, err := os.ReadFile(filepath.Join(site, "hirers", filepath.FromSlash(path), "index.html"))
		if err != nil || !strings.Contains(string(page), s.Titles[0].Text) || !strings.Contains(string(page), ">"+s.Label+"<") {
			t.Errorf("%s: its page is not that of %s: %v", s.Code(), s.Titles[0].Text, err)
		}
	}
	t.Logf("%d labels read by both decoders at %d dpi", len(all), dpi)
}

// A label printer has 203 dots an inch, a good printer 600: the modules must
// not fray or close up in between.
func TestOtherResolutions(t *testing.T) {
	for _, name := range []string{"a4-4x10-48x26", "letter-3x10-2.6x1in"} {
		g := grids(t)[name]
		all := demoStickers("RW")[:12]
		file, _ := printed(t, sheets.Job{Grid: g, Call: call}, slices.Values(all))
		for _, dpi := range []int{203, 600} {
			pictures := symbols(rendered(t, file, dpi, 1, 1), dpi, g, len(all))
			one, two := zbar(t, pictures), second(pictures)
			for i, s := range all {
				if one[i] != s.Address || two[i] != s.Address {
					t.Errorf("%s at %d dpi: %s: read %q and %q", name, dpi, s.Code(), one[i], two[i])
				}
			}
		}
	}
}

// No light shows between dark modules that touch, at any resolution: inside a
// finder pattern, whose bars are one module wide and seven long, everything is
// black.
func TestNoHairlines(t *testing.T) {
	g := grids(t)["a4-3x7-64x36"]
	file, made := printed(t, sheets.Job{Grid: g, Call: call}, slices.Values(demoStickers("RW")[:1]))
	for _, dpi := range []int{203, 300, 417, 600} {
		page := rendered(t, file, dpi, 1, 1)[0]
		x, y := g.At(0)
		px := func(mm float64) int { return int(mm * float64(dpi) / 25.4) }
		m := made.Module
		// The symbol begins a millimetre from the edges and has four light
		// modules around it; the middle of a finder is three by three.
		left, top := px(x+1+6.2*m), px(y+1+6.2*m)
		right, foot := px(x+1+8.8*m), px(y+1+8.8*m)
		for py := top; py < foot; py++ {
			for pxx := left; pxx < right; pxx++ {
				if v := page.GrayAt(pxx, py).Y; v > 0 {
					t.Fatalf("%d dpi: %d at %d, %d", dpi, v, pxx, py)
				}
			}
		}
	}
}

// What has no room is refused with numbers.
func TestTooSmall(t *testing.T) {
	one := demoStickers("RW")[:1]
	print := func(g sheets.Grid, s sheets.Sticker) error {
		_, err := sheets.Job{Stock: stock(t), Grid: g, Start: 1, Call: call}.Print(slices.Values([]sheets.Sticker{s}),
			func(int) (io.WriteCloser, error) { return &closing{}, nil })
		return err
	}
	var distance *sheets.DistanceError
	if err := print(sheets.Single(20, 20), one[0]); !errors.As(err, &distance) || distance.Distance != 200 || distance.Width < 11 || distance.Width > 12 {
		t.Errorf("got %v", err)
	}
	long := one[0]
	long.Titles = []sheets.Title{{Lang: "en", Text: strings.Repeat("Heating and hot water ", 12)}}
	var fit *sheets.FitError
	if err := print(grids(t)["a4-3x7-64x36"], long); !errors.As(err, &fit) || fit.Needed <= fit.Room {
		t.Errorf("got %v", err)
	}
	small := sheets.Single(44, 18)
	small.Distance = 120
	_, made := printed(t, sheets.Job{Grid: small, Call: call}, slices.Values(one))
	if !made.Fine() {
		t.Errorf("modules of %.2f mm are not fine", made.Module)
	}
	tiny := sheets.Single(44, 16)
	tiny.Distance = 80
	_, made = printed(t, sheets.Job{Grid: tiny}, slices.Values(one))
	if made.Fine() || made.Module > 0.4 {
		t.Errorf("modules of %.2f mm are fine", made.Module)
	}
}

// Labels in three languages have all three names; the files are cut at a number
// of pages; the first sheet begins where it should.
func TestLanguagesFilesStart(t *testing.T) {
	s := demoStickers("RW")[0]
	s.Titles = []sheets.Title{{"en", "Gas locker"}, {"de", "Gaskasten für Flaschen"}, {"fr", "Coffre à gaz"}}
	g := grids(t)["a4-2x5-90x50"]
	var files []*closing
	made, err := sheets.Job{Stock: stock(t), Grid: g, Start: 9, Call: call, PagesPerFile: 1}.Print(slices.Values([]sheets.Sticker{s, s, s}),
		func(int) (io.WriteCloser, error) { files = append(files, &closing{}); return files[len(files)-1], nil })
	if err != nil || made.Files != 2 || made.Pages != 2 || made.Labels != 3 {
		t.Fatalf("%+v, %v", made, err)
	}
	file := filepath.Join(t.TempDir(), "a.pdf")
	if err := os.WriteFile(file, files[0].Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(run(t, "pdftotext", "-raw", file, "-")), " ")
	for _, want := range []string{"Gas locker", "Gaskasten für Flaschen", "Coffre à gaz"} {
		if strings.Count(text, want) != 2 {
			t.Errorf("%q is not there twice:\n%s", want, text)
		}
	}
	_, err = sheets.Job{Stock: stock(t), Grid: g, Start: 11}.Print(slices.Values([]sheets.Sticker{s}), nil)
	if err == nil {
		t.Error("a sheet of ten begins at eleven")
	}
}

// The longest codes have room on every grid that comes with the program, with
// a sign beside them.
func TestLongestCodes(t *testing.T) {
	s := demoStickers("RW")[0]
	s.Van, s.Label, s.Sign = "WMWM", "W28", "W021"
	for name, g := range grids(t) {
		file, made := printed(t, sheets.Job{Grid: g, Call: call}, slices.Values([]sheets.Sticker{s}))
		if text := run(t, "pdftotext", "-raw", file, "-"); made.Labels != 1 || !strings.Contains(text, "WMWM W28") {
			t.Errorf("%s: %q", name, text)
		}
	}
}
