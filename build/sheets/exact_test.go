package sheets_test

import (
	"bytes"
	"encoding/xml"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"doorpocket/build/sheets"
)

const points = 72 / 25.4

// placing is the operator that puts a symbol on the page: module, minus
// module, left and top in points.
var placing = regexp.MustCompile(`(?m)([0-9.]+) 0 0 (-[0-9.]+) ([0-9.]+) ([0-9.]+) cm$`)

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// The symbols are where the grid says to a thousandth of a millimetre, in the
// last row as in the first: read from the drawing operators of the file.
func TestExactPlaces(t *testing.T) {
	for name, g := range grids(t) {
		all := demoStickers("")[:g.PerPage()]
		file, made := printed(t, sheets.Job{Grid: g, Call: call}, slices.Values(all))
		plain := run(t, "qpdf", "--qdf", "--object-streams=disable", file, "-")
		found := placing.FindAllStringSubmatch(plain, -1)
		if len(found) != len(all) {
			t.Fatalf("%s: %d symbols of %d", name, len(found), len(all))
		}
		first := found[0]
		for i, m := range found {
			x, y := g.At(i)
			x0, y0 := g.At(0)
			dx := (number(t, m[3]) - number(t, first[3])) / points
			dy := (number(t, first[4]) - number(t, m[4])) / points
			if math.Abs(dx-(x-x0)) > 0.001 || math.Abs(dy-(y-y0)) > 0.001 {
				t.Errorf("%s: label %d is %.4f, %.4f mm from the first, wanted %.4f, %.4f", name, i, dx, dy, x-x0, y-y0)
			}
			if row := float64(i / g.Columns); math.Abs(dy-row*g.Down) > 0.001 {
				t.Errorf("%s: row %g is %.4f mm down", name, row, dy)
			}
			if module := number(t, m[1]) / points; math.Abs(module-made.Module) > 1e-6 && i == 0 {
				t.Errorf("%s: module %.6f mm, told %.6f mm", name, module, made.Module)
			}
		}
	}
}

// The ruler is 100 mm long and the crosses stand where the words say: measured
// on the page as it is printed.
func TestRulerIsExact(t *testing.T) {
	var b bytes.Buffer
	g := grids(t)["a4-3x7-64x36"]
	if err := sheets.Ruler(stock(t), words(t), "en", g, &b); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "ruler.pdf")
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	run(t, "qpdf", "--check", file)
	const dpi = 600
	page := rendered(t, file, dpi, 1, 1)[0]
	mm := func(px int) float64 { return float64(px) * 25.4 / dpi }
	dark := func(x, y float64) bool {
		return page.GrayAt(int(x*dpi/25.4), int(y*dpi/25.4)).Y < 128
	}
	// Along the line the first and the last dark spot are its ends.
	ends := func(along func(i int) bool, n int) float64 {
		first, last := -1, -1
		for i := range n {
			if along(i) {
				if first < 0 {
					first = i
				}
				last = i
			}
		}
		return mm(last - first)
	}
	const span = 110 * dpi * 10 / 254
	across := ends(func(i int) bool { return dark(50+mm(i), 110) }, span)
	down := ends(func(i int) bool { return dark(55, 115+mm(i)) }, span)
	if math.Abs(across-100) > 0.2 || math.Abs(down-100) > 0.2 {
		t.Errorf("the lines are %.2f and %.2f mm", across, down)
	}
	for _, x := range []float64{12, 198} {
		for _, y := range []float64{12, 285} {
			if !dark(x+3, y) || !dark(x, y+3) || dark(x+3, y+1) {
				t.Errorf("no cross at %g, %g", x, y)
			}
		}
	}
	text := strings.Join(strings.Fields(run(t, "pdftotext", "-raw", file, "-")), " ")
	if !strings.Contains(text, "must be 186 mm across and 273 mm down") {
		t.Errorf("words: %s", text)
	}
}

// word is a word on a page with its place in points.
type word struct {
	XMin float64 `xml:"xMin,attr"`
	YMin float64 `xml:"yMin,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

// The code printed beside a symbol is the code in the symbol's address, label
// by label, as one copies it out of the file.
func TestCodeBesideItsSymbol(t *testing.T) {
	all := demoStickers("")
	g := grids(t)["a4-2x5-90x50"]
	file, _ := printed(t, sheets.Job{Grid: g, Call: call, PagesPerFile: 1000}, slices.Values(all))
	var doc struct {
		Pages []struct {
			Words []word `xml:"word"`
		} `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal([]byte(run(t, "pdftotext", "-bbox", file, "-")), &doc); err != nil {
		t.Fatal(err)
	}
	texts := make([]string, len(all))
	for n, page := range doc.Pages {
		for _, w := range page.Words {
			middle := (w.YMin + w.YMax) / 2
			for i := range g.PerPage() {
				x, y := g.At(i)
				at := n*g.PerPage() + i
				if at < len(all) && w.XMin >= x*points && w.XMin < (x+g.Width)*points && middle >= y*points && middle < (y+g.Height)*points {
					texts[at] += w.Text + " "
				}
			}
		}
	}
	for i, s := range all {
		path := strings.TrimSuffix(strings.TrimPrefix(s.Address, demo().Address.To("")), "/")
		if want := strings.ReplaceAll(path, "/", " ") + " "; !strings.HasPrefix(texts[i], want) {
			t.Errorf("label %d says %q beside the address of %q", i, texts[i], want)
		}
	}
}
