package clipboard

import (
	"doorpocket/build/paper"
	"doorpocket/build/render"
	"doorpocket/components"
)

// backstage is what only staff may see: notes, and what falls due.
func (c *composer) backstage(s render.SaidSheet) []paper.Block {
	var all []paper.Block
	if s.Notes != "" {
		all = append(all, paper.Box{Frame: paper.Black, Line: 0.3, Pad: 2, After: 2.5, Blocks: []paper.Block{
			plain(strong, s.NotesTitle), plain(body, s.Notes),
		}})
	}
	return all
}

// record is what is written down and signed.
func (c *composer) record(s render.SaidSheet) []paper.Block {
	var all []paper.Block
	if len(s.Days) > 0 {
		all = append(all, paper.Space(3), paper.WithNext{Block: c.bar(s.DaysTitle)})
		table := paper.Table{Type: small, After: 1}
		for _, day := range s.Days {
			table.Rows = append(table.Rows, day[:])
		}
		all = append(all, table)
	}
	if len(s.Readings) > 0 {
		all = append(all, paper.Space(3), paper.WithNext{Block: c.bar(s.ReadingsTitle)})
		if s.ReadHelp != "" {
			all = append(all, paper.WithNext{Block: plain(small, s.ReadHelp)})
		}
		for _, r := range s.Readings {
			all = append(all, c.reading(r))
		}
	}
	if !s.Facts {
		all = append(all, c.lines(s.Found, s.FoundHelp, len(s.FoundLines))...)
	}
	if s.Marks != nil {
		all = append(all, c.lines(s.Marks.Inside, "", 2)...)
	}
	all = append(all, c.conditions(s)...)
	if s.Marks != nil {
		all = append(all, c.marks(*s.Marks)...)
	}
	return append(all, c.signatures(s))
}

// reading is one thing to write down.
func (c *composer) reading(r render.SaidReading) paper.Block {
	const name, boxes = 34.0, 82.0
	room := c.wide() - name - boxes - 2*gap
	return paper.Row{Gap: gap, Pad: 1.1, Under: &thin, Least: tick, Cells: []paper.Cell{
		{Width: name, Middle: true, Blocks: []paper.Block{paper.Para{Type: strong, Spans: paper.Plain(r.Title)}}},
		{Width: boxes, Middle: true, Blocks: []paper.Block{c.scale(r)}},
		{Width: room, Middle: true, Blocks: []paper.Block{paper.Para{Type: small, Spans: paper.Plain(r.Tell)}}},
	}}
}

// scale is the boxes or the line of a reading.
func (c *composer) scale(r render.SaidReading) paper.Block {
	const step, words = 9.2, 3.4
	under := 0.0
	for _, text := range r.Boxes {
		if text != "" {
			under = words
		}
	}
	t := paper.Type{Size: 6.8}
	return paper.Free{Height: tick + under, Draw: func(d *paper.Doc, x, y, width float64) {
		at := x
		apart := step
		if r.Scale == components.PartFull {
			apart = 13
		}
		if r.Line {
			from := at + apart*float64(len(r.Boxes))
			to := x + width - 9
			d.Line(from, y+tick, to, y+tick, written)
			d.Text(to+1, y+tick-0.4, body, r.Unit)
		}
		for _, text := range r.Boxes {
			d.Rect(at, y, tick, tick, pen)
			d.TextMiddle(at+tick/2, y+tick+2.8, t, text)
			at += apart
		}
	}}
}

// marks is the drawings of the van, with lines for what is marked.
func (c *composer) marks(m render.SaidMarks) []paper.Block {
	drawing, err := paper.ParseDrawing(m.Drawing, drawn)
	if err != nil {
		c.fail(err)
		return nil
	}
	all := []paper.Block{paper.NewPage{}, c.bar(m.Title)}
	if m.Known != "" {
		all = append(all, paper.Para{Type: body, Spans: []paper.Span{{Text: m.KnownTitle + ": ", Bold: true}, {Text: m.Known}}, After: 1})
	}
	all = append(all, plain(small, m.Help), paper.Picture{Drawing: drawing, Width: c.wide(), Height: drawnHigh, After: 1})
	widths := []float64{10, 58, 78}
	widths = append(widths, c.wide()-10-58-78-3*2.5)
	row := paper.Together{paper.Table{Type: small, Heads: m.Heads, Widths: widths}}
	for range 4 {
		row = append(row, line(lineHigh))
	}
	return append(all, row)
}

// lines are lines to write on under a heading.
func (c *composer) lines(text, help string, n int) []paper.Block {
	all := paper.Together{paper.Space(2.5), plain(strong, text)}
	if help != "" {
		all = append(all, plain(small, help))
	}
	for range n {
		all = append(all, line(lineHigh))
	}
	return []paper.Block{all}
}

// conditions are the operator's own words.
func (c *composer) conditions(s render.SaidSheet) []paper.Block {
	if len(s.Conditions) == 0 {
		return nil
	}
	all := []paper.Block{paper.Space(3), paper.WithNext{Block: c.bar(s.ConditionsTitle)}}
	for _, text := range s.Conditions {
		all = append(all, paper.Para{Type: body, Spans: paper.Plain(text), After: 1.2})
	}
	return all
}

// signatures are the lines to sign, on one page.
func (c *composer) signatures(s render.SaidSheet) paper.Block {
	all := paper.Together{paper.Space(3)}
	width := (c.wide() - 24 - float64(len(s.Fill))*gap) / float64(len(s.Fill))
	for _, who := range s.Sign {
		cells := []paper.Cell{{Width: 24, Blocks: []paper.Block{paper.Space(6), plain(strong, who)}}}
		for _, fill := range s.Fill {
			cells = append(cells, paper.Cell{Width: width, Blocks: []paper.Block{line(11), paper.Para{Type: fine, Spans: paper.Plain(fill)}}})
		}
		all = append(all, paper.Row{Gap: gap, Cells: cells, After: 1.5})
	}
	return all
}

// drawnHigh is how high the drawings may be, so that the signatures stand on
// their page.
const drawnHigh = 150.0

// drawn is how the van looks on paper: thin, so that a pen stands out.
var drawn = paper.Styles{
	"hull":  {"fill": "#ffffff", "stroke": "#000000", "stroke-width": "4"},
	"line":  {"fill": "none", "stroke": "#666666", "stroke-width": "2.2"},
	"wheel": {"fill": "#ffffff", "stroke": "#666666", "stroke-width": "2.2"},
	"text":  {"fill": "#000000", "font-size": "28"},
}
