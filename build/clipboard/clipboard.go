// Package clipboard prints the sheets that staff carry round a van: what to do
// in walking order with boxes for a pen, what is written down when the van
// changes hands, drawings to mark damage on, and lines to sign.
package clipboard

import (
	"io"
	"time"

	"doorpocket/build/guide"
	"doorpocket/build/paper"
	"doorpocket/build/render"
)

// Press is what sheets are printed with.
type Press struct {
	Stock  *paper.Stock
	Render *render.Renderer
	Page   paper.Size
}

// Made tells what was printed of one sheet.
type Made struct {
	Sheet    string
	Pages    int
	Revision string
}

// Print writes some sheets of a van as one PDF. Each counts its own pages.
func (p Press) Print(g *guide.Guide, sheets []*guide.Sheet, out io.Writer) ([]Made, error) {
	w, err := p.Render.Words(g.Lang)
	if err != nil {
		return nil, err
	}
	said, err := p.Render.SaidSheets(g, sheets)
	if err != nil {
		return nil, err
	}
	c := &composer{words: w, guide: g, sheets: said, layout: layoutOf(p.Page)}
	day := g.Van.SpecDate
	about := paper.About{
		Title: c.say("sheet_of", "title", c.say("staff_sheets"), "name", g.Van.Name), Lang: g.Lang,
		Date: time.Date(day.Year, time.Month(day.Month), day.Day, 0, 0, 0, 0, time.UTC),
	}
	c.layout.Foot = c.foot
	doc, err := p.Stock.Flow(about, c.layout, c.compose)
	if c.err != nil {
		return nil, c.err
	}
	if err != nil {
		return nil, err
	}
	var made []Made
	for i, s := range said {
		from, to := c.span(i, doc.Pages())
		made = append(made, Made{Sheet: s.ID, Pages: to - from + 1, Revision: s.Revision})
	}
	return made, doc.Write(out)
}

// composer puts the blocks of the sheets of one van together. What fails first
// is kept.
type composer struct {
	words  *render.Words
	guide  *guide.Guide
	sheets []render.SaidSheet
	layout paper.Layout
	place  paper.Place
	err    error
}

func (c *composer) say(key string, pairs ...any) string {
	text, err := c.words.Say(key, pairs...)
	c.fail(err)
	return text
}

func (c *composer) fail(err error) {
	if c.err == nil {
		c.err = err
	}
}

func markOf(s render.SaidSheet) string { return "sheet:" + s.ID }

// span is the first and the last page of a sheet, as far as they are known.
func (c *composer) span(i, pages int) (from, to int) {
	from, to = c.place(markOf(c.sheets[i])), pages
	if i+1 < len(c.sheets) {
		to = c.place(markOf(c.sheets[i+1])) - 1
	}
	return from, to
}

// compose gives the blocks of all sheets.
func (c *composer) compose(place paper.Place) []paper.Block {
	c.place = place
	var all []paper.Block
	for _, s := range c.sheets {
		all = append(all, paper.NewPage{}, paper.Mark{ID: markOf(s), Title: s.Title})
		all = append(all, c.sheet(s)...)
	}
	return all
}

// foot stands on every page: which van, which spec, which sheet, which page of
// it.
func (c *composer) foot(d *paper.Doc, page, pages int) {
	at := 0
	for i := range c.sheets {
		if from, _ := c.span(i, pages); from > 0 && from <= page {
			at = i
		}
	}
	s := c.sheets[at]
	from, to := c.span(at, pages)
	left, right := c.layout.Left, c.layout.Page.Width-c.layout.Right
	y := c.layout.Page.Height - c.layout.Bottom + 5.4
	d.Line(left, y-4.2, right, y-4.2, thin)
	d.Text(left, y, footBold, whichVan(s))
	d.TextRight(right, y, footBold, s.Title+", "+c.say("sheet_page", "page", page-from+1, "pages", to-from+1))
	second := c.guide.Operator.Name
	if s.Who != "" {
		second += " · " + s.Who
	}
	d.Text(left, y+3.6, fine, s.Spec+" · "+c.say("revision", "revision", s.Revision))
	d.TextRight(right, y+3.6, fine, second)
}

// whichVan names a van as staff know it: by its code and by what is on its
// plates.
func whichVan(s render.SaidSheet) string {
	text := s.Code + " " + s.Name
	if s.Registration != "" {
		text += " · " + s.Registration
	}
	return text
}
