package sheets

import (
	"fmt"
	"io/fs"
	"math"
	"path"
	"slices"
	"strings"

	"doorpocket/build/paper"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
)

// Grid is where the labels are on a sheet. Lengths are in millimetres.
type Grid struct {
	Name          string
	Page          paper.Size
	Columns, Rows int
	Width, Height float64 // of a label
	Across, Down  float64 // from a label to the next
	Left, Top     float64 // margins: the first label
	Distance      float64 // from which a phone reads the symbol
}

// PerPage is how many labels a sheet has.
func (g Grid) PerPage() int { return g.Columns * g.Rows }

// At is the upper left corner of the n-th label of a sheet, counted from 0. It
// is reckoned from the margin each time, so that no error adds up.
func (g Grid) At(n int) (x, y float64) {
	return g.Left + float64(n%g.Columns)*g.Across, g.Top + float64(n/g.Columns)*g.Down
}

// usualDistance is from how far a phone is held to a label; common practice.
const usualDistance = 200

// Single is a grid of one label a page, as label printers want it.
func Single(width, height float64) Grid {
	return Grid{
		Name: fmt.Sprintf("single-%gx%g", width, height), Page: paper.Size{Width: width, Height: height},
		Columns: 1, Rows: 1, Width: width, Height: height, Across: width, Down: height, Distance: usualDistance,
	}
}

// The limits of a grid; a label must hold a symbol and a code.
const (
	leastSide, mostSide = 12.0, 1000.0
	mostLabels          = 60 // a row or column
)

var pages = map[string]paper.Size{"A4": paper.A4, "A5": paper.A5, "Letter": paper.Letter}

// ParseGrid reads the description of a sheet.
func ParseGrid(name string, data []byte) (Grid, problem.List) {
	table, found := manifest.Parse(name, data)
	g := Grid{Name: strings.TrimSuffix(path.Base(name), ".toml"), Distance: usualDistance}
	r := manifest.NewReader(table, &found)
	if r == nil {
		return g, found
	}
	p := gridReader{r: r, found: &found}
	g.Page = p.page()
	g.Columns, _ = r.Int("columns", 1, mostLabels, manifest.Required, manifest.Example("3"))
	g.Rows, _ = r.Int("rows", 1, mostLabels, manifest.Required, manifest.Example("8"))
	g.Width = p.length(r, "width", leastSide, 0)
	g.Height = p.length(r, "height", leastSide, 0)
	g.Across = p.length(r, "across", leastSide, g.Width)
	g.Down = p.length(r, "down", leastSide, g.Height)
	g.Left = p.length(r, "left", 0, 0)
	g.Top = p.length(r, "top", 0, 0)
	if r.Has("distance") {
		g.Distance = p.length(r, "distance", 50, 0)
	}
	r.Done()
	if !found.HasErrors() {
		g.check(p)
	}
	found.Quote(map[string][]byte{name: data})
	found.Sort()
	return g, found
}

type gridReader struct {
	r     *manifest.Reader
	found *problem.List
}

// page is a size by name, or width and height.
func (p gridReader) page() paper.Size {
	if p.r.Has("page_width") || p.r.Has("page_height") {
		return paper.Size{Width: p.length(p.r, "page_width", leastSide, 0), Height: p.length(p.r, "page_height", leastSide, 0)}
	}
	name, ok := p.r.Choice("page", []string{"A4", "A5", "Letter"}, manifest.Required)
	if !ok {
		return paper.Size{}
	}
	return pages[name]
}

// length reads a length in millimetres that is not below least; where the key
// is absent usual stands, unless that is 0 and the length is needed.
func (p gridReader) length(r *manifest.Reader, key string, least, usual float64) float64 {
	e, ok := r.Raw(key)
	if !ok {
		if usual == 0 && !r.Has(key) {
			r.Text(key, manifest.Required, manifest.Example(`"34 mm"`))
		}
		return usual
	}
	d := fact.Decl{Name: key, Type: fact.Type{Kind: fact.Quantity, Dimension: quantity.Length}}
	v := d.Decode(e, p.found)
	if v.IsZero() {
		return 0
	}
	metres, err := quantity.As[quantity.Metres](v.Quantity)
	mm := math.Round(float64(metres)*1e7) / 1e4 // 0.036 m is not quite 36 mm
	if err != nil || mm < least || mm > mostSide {
		r.Problem(key, "out-of-range", fmt.Sprintf("%s is %s", key, v.Quantity), fmt.Sprintf("It must be from %g mm to %g mm.", least, mostSide))
	}
	return mm
}

// check looks whether the labels are apart and on the page.
func (g Grid) check(p gridReader) {
	for _, c := range []struct {
		key, many            string
		n                    int
		label, pitch, margin float64
		page                 float64
	}{
		{"across", "columns", g.Columns, g.Width, g.Across, g.Left, g.Page.Width},
		{"down", "rows", g.Rows, g.Height, g.Down, g.Top, g.Page.Height},
	} {
		if c.n > 1 && c.pitch < c.label-tolerance {
			p.r.Problem(c.key, "labels-overlap", fmt.Sprintf("Labels of %.2f mm every %.2f mm overlap", c.label, c.pitch),
				"The pitch is from the edge of one label to the same edge of the next.")
		}
		if end := c.margin + float64(c.n-1)*c.pitch + c.label; end > c.page+tolerance {
			p.r.Problem(c.many, "off-the-page", fmt.Sprintf("The %s end at %.2f mm, the page at %.2f mm", c.many, end, c.page),
				fmt.Sprintf("%.2f mm margin and %d labels of %.2f mm, %.2f mm from one to the next, are %.2f mm too much.", c.margin, c.n, c.label, c.pitch, end-c.page))
		}
	}
}

// tolerance forgives the rounding of sizes in inches, in millimetres.
const tolerance = 0.05

// Grids reads the grids that come with the program, in the order of their names.
func Grids(files fs.FS) ([]Grid, error) {
	names, err := fs.Glob(files, "grids/*.toml")
	if err != nil {
		return nil, err
	}
	slices.Sort(names)
	var all []Grid
	for _, name := range names {
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		g, found := ParseGrid(name, data)
		if len(found) > 0 {
			return nil, fmt.Errorf("grid: %s", found[0])
		}
		all = append(all, g)
	}
	return all, nil
}
