package render

import (
	"html/template"

	"doorpocket/build/figure"
	"doorpocket/build/guide"
	"doorpocket/components"
	"doorpocket/components/prose"
)

// filler fills the library's words for one page with values, links, tables and
// figures. It remembers the first thing that failed.
type filler struct {
	guide.Filler
	van  *van
	from string // the page the words stand on, below the van
}

func (v *van) fill(from string, p *guide.Page) filler {
	return filler{Filler: guide.Filler{Guide: v.guide, Page: p}, van: v, from: from}
}

func (f filler) html(d prose.Doc) template.HTML { return template.HTML(d.HTML(f)) }

func (f filler) text(d prose.Doc) string { return d.Text(f) }

// Link is the address of another page of the van.
func (f filler) Link(scheme, target string) (string, bool) {
	path, ok := f.Guide.Path(scheme, target)
	if !ok || path == f.from {
		return "", false
	}
	return f.van.href(f.from, path), true
}

// Embed is the markup of a table, figure or picture.
func (f filler) Embed(scheme, target, alt string) (string, bool) {
	switch {
	case f.Page == nil:
		return "", false
	case scheme == "table":
		return f.table(target, alt)
	case scheme == "picture":
		return f.picture(target, alt)
	case scheme == "figure" && target == "locator":
		return f.locator()
	case scheme == "figure":
		return f.plot(components.Plots()[target], alt)
	}
	return "", false
}

// plot draws a table.
func (f filler) plot(id, title string) (string, bool) {
	drawing := Plot(f.Page.Tables[id], title)
	return `<figure class="drawn">` + drawing + "</figure>", drawing != ""
}

// Plot draws a table as lines, "" where there is nothing to draw: no table, or
// no more than one point. What the axis and the lines are called stands over
// the columns.
func Plot(t *guide.Table, title string) string {
	if t == nil || len(t.Rows) < 2 {
		return ""
	}
	var rows [][]string
	for _, row := range t.Rows {
		var cells []string
		for _, c := range row {
			cells = append(cells, c.Number)
		}
		rows = append(rows, cells)
	}
	words := figure.Axes{Title: title, X: t.Heads[0] + ", " + t.Units[0], Y: t.Caption}
	return figure.Plot(figure.SeriesOf(t.Heads, rows), words)
}

func (f filler) locator() (string, bool) {
	words := f.van.place(f.Page.Fitted.Place)
	if words == "" {
		return "", false
	}
	point := f.van.point(f.Page)
	drawing := figure.Locator(f.van.body(), point, words)
	if point.Up > 0 && point.Side != figure.Roof {
		drawing += figure.SideLocator(f.van.body(), point)
	}
	return `<div class="where">` + drawing + "</div>", true
}
