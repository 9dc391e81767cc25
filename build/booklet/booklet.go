// Package booklet prints the whole guide of a van as one PDF for the glove box:
// A5 pages with contents, every caution before its steps, and on each page the
// day of the spec and the revision.
package booklet

import (
	"bytes"
	"fmt"
	"io"
	"time"

	"doorpocket/build/guide"
	"doorpocket/build/label"
	"doorpocket/build/paper"
	"doorpocket/build/render"
	"doorpocket/build/spec"
)

// Press is what booklets are printed with.
type Press struct {
	Stock  *paper.Stock
	Render *render.Renderer
}

// Made tells what was printed.
type Made struct {
	Pages    int
	Revision string
}

// Print writes the booklet of a guide.
func (p Press) Print(g *guide.Guide, out io.Writer) (Made, error) {
	w, err := p.Render.Words(g.Lang)
	if err != nil {
		return Made{}, err
	}
	c := &composer{press: p, guide: g, words: w}
	c.symbol, err = label.PrintSymbol(g.Operator.Address.To(label.Path(g.Van.Code, "")), g.Operator.Level)
	if err != nil {
		return Made{}, err
	}
	doc, err := c.doc()
	if err != nil {
		return Made{}, fmt.Errorf("booklet of %s: %w", g.Van.Name, err)
	}
	var draft bytes.Buffer
	if err := doc.Write(&draft); err != nil {
		return Made{}, err
	}
	// The revision is made from the booklet without it.
	c.revision = render.Revision(draft.Bytes())
	if doc, err = c.doc(); err != nil {
		return Made{}, err
	}
	return Made{Pages: doc.Pages(), Revision: c.revision}, doc.Write(out)
}

// composer puts the blocks of one booklet together. What fails first is kept.
type composer struct {
	press    Press
	guide    *guide.Guide
	words    *render.Words
	symbol   label.Symbol
	revision string
	place    paper.Place
	entries  []entry // of the contents, as the chapters are composed
	err      error
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

func (c *composer) doc() (*paper.Doc, error) {
	g := c.guide
	l := layout
	l.Foot = c.foot
	day := g.Van.SpecDate
	about := paper.About{
		Title: c.say("booklet_of", "name", g.Van.Name), Lang: g.Lang,
		Date: time.Date(day.Year, time.Month(day.Month), day.Day, 0, 0, 0, 0, time.UTC),
	}
	doc, err := c.press.Stock.Flow(about, l, c.compose)
	if c.err != nil {
		return nil, c.err
	}
	return doc, err
}

// compose gives the booklet, with the page numbers as far as they are known.
func (c *composer) compose(place paper.Place) []paper.Block {
	c.place, c.entries = place, nil
	chapters := c.chapters()
	all := c.cover()
	all = append(all, c.contents()...)
	return append(all, chapters...)
}

// foot stands on every page but the cover.
func (c *composer) foot(d *paper.Doc, page, pages int) {
	if page == 1 {
		return
	}
	g := c.guide
	y := layout.Page.Height - 8
	d.Line(layout.Left, y-4, layout.Page.Width-layout.Right, y-4, thin)
	text := g.Van.Name + " " + g.Van.Code + " · " + c.say("spec_of", "date", g.SpecDate())
	if c.revision != "" {
		text += " · " + c.say("revision", "revision", c.revision)
	}
	d.Text(layout.Left, y, fine, text)
	d.TextRight(layout.Page.Width-layout.Right, y, fine, c.say("booklet_page", "page", page, "pages", pages))
}

// onPage says on which page a part of the booklet is.
func (c *composer) onPage(path string) string { return c.say("booklet_on", "page", c.place(path)) }

// where says where something is.
func (c *composer) where(p spec.Place) string {
	text, err := c.press.Render.Where(c.guide, p)
	c.fail(err)
	return text
}
