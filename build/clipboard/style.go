package clipboard

import "doorpocket/build/paper"

// The types of a sheet.
var (
	title    = paper.Type{Size: 17, Bold: true}
	heading  = paper.Type{Size: 10.5, Bold: true}
	strong   = paper.Type{Size: 9, Bold: true}
	body     = paper.Type{Size: 9}
	did      = paper.Type{Size: 8.8, Bold: true} // what to do
	small    = paper.Type{Size: 7.4}
	fine     = paper.Type{Size: 7, Colour: paper.Grey}
	footBold = paper.Type{Size: 8, Bold: true}
	thin     = paper.Lined(paper.Colour{R: 150, G: 150, B: 150}, 0.2)
	pen      = paper.Lined(paper.Black, 0.3)
	written  = paper.Lined(paper.Colour{R: 110, G: 110, B: 110}, 0.2) // a line to write on
)

// The measures of a sheet, in millimetres.
const (
	tick     = 5.6 // the side of a box for a pen
	lineHigh = 8.5 // from one line to write on to the next
	gap      = 3.0 // between columns
)

// layoutOf is a page with margins that every printer leaves.
func layoutOf(page paper.Size) paper.Layout {
	return paper.Layout{Page: page, Left: 13, Right: 13, Top: 12, Bottom: 19}
}

// wide is the width of the column.
func (c *composer) wide() float64 {
	return c.layout.Page.Width - c.layout.Left - c.layout.Right
}

// Colours of the signal words (ANSI Z535.4, ISO 3864-4), and of the words on them.
var (
	bars = map[string]paper.Colour{
		"danger": {R: 0x9b, G: 0x24, B: 0x23}, "warning": {R: 0xd0, G: 0x5d, B: 0x29},
		"caution": {R: 0xf9, G: 0xa8}, "notice": {G: 0x53, B: 0x87},
	}
	inks = map[string]paper.Colour{"danger": paper.White, "notice": paper.White}
)

func plain(t paper.Type, text string) paper.Para {
	return paper.Para{Type: t, Spans: paper.Plain(text), After: t.Size * 0.12}
}

// box is a box to tick.
func box() paper.Block {
	return paper.Free{Height: tick, Draw: func(d *paper.Doc, x, y, _ float64) { d.Rect(x, y, tick, tick, pen) }}
}

// line is a line to write on.
func line(high float64) paper.Block {
	return paper.Free{Height: high, Draw: func(d *paper.Doc, x, y, width float64) { d.Line(x, y+high-0.4, x+width, y+high-0.4, written) }}
}
