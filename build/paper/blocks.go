package paper

import "strings"

// Span is a run of text of one weight.
type Span struct {
	Text string
	Bold bool
}

// Plain is text of the weight of its paragraph.
func Plain(text string) []Span { return []Span{{Text: text}} }

// Para is a paragraph.
type Para struct {
	Type  Type
	Spans []Span
	After float64 // white space below, millimetres
	Align Align
}

// Align is to which side lines are set.
type Align uint8

// The sides.
const (
	Left Align = iota
	Middle
	Right
)

func (p Para) pieces(d *Doc, width float64) []piece {
	lines := d.wrapSpans(p.Type, p.Spans, width)
	var all []piece
	for i, line := range lines {
		// No line stands alone at the foot or the head of a page.
		keep := i == 0 && len(lines) > 1 || i == len(lines)-2
		all = append(all, piece{height: p.Type.Leading(), keep: keep, draw: func(d *Doc, x, y float64) {
			switch p.Align {
			case Middle:
				x += (width - line.width) / 2
			case Right:
				x += width - line.width
			}
			d.spans(x, y+p.Type.baseline(), p.Type, line)
		}})
	}
	if p.After > 0 {
		if n := len(all); n > 0 {
			all = append(all, Space(p.After).pieces(d, width)...)
		}
	}
	return all
}

// baseline is how far the base line is below the upper end of a line.
func (t Type) baseline() float64 { return (t.Leading()+t.CapHeight())/2 + 0.02*t.Size/k }

// line is a line of spans.
type line struct {
	spans []Span
	width float64
}

// spans sets a line, each run of one weight in one go.
func (d *Doc) spans(x, y float64, t Type, l line) {
	for _, s := range l.spans {
		own := t
		own.Bold = t.Bold || s.Bold
		d.Text(x, y, own, s.Text)
		x += d.Width(own, s.Text)
	}
}

// token is a word, with a space before it or not.
type token struct {
	spans []Span
	space bool
	hard  bool // a line ends before it
}

// tokens cuts spans at their spaces. Spans that touch make one word.
func tokens(spans []Span) []token {
	var all []token
	glue := false
	for _, s := range spans {
		for rest := s.Text; rest != ""; {
			i := strings.IndexFunc(rest, breakable)
			if i == 0 {
				n := len(rest) - len(strings.TrimLeftFunc(rest, breakable))
				all = append(all, token{space: true, hard: strings.Contains(rest[:n], "\n")})
				rest, glue = rest[n:], false
				continue
			}
			if i < 0 {
				i = len(rest)
			}
			word := Span{rest[:i], s.Bold}
			if last := len(all) - 1; glue && last >= 0 {
				all[last].spans = append(all[last].spans, word)
			} else if last >= 0 && len(all[last].spans) == 0 {
				all[last].spans = []Span{word}
			} else {
				all = append(all, token{spans: []Span{word}})
			}
			rest, glue = rest[i:], true
		}
	}
	return all
}

// wrapSpans breaks spans into lines; "\n" ends a line. A word that is wider
// than the column is broken where it must.
func (d *Doc) wrapSpans(t Type, spans []Span, width float64) []line {
	var lines []line
	var now line
	wide := func(s Span) float64 { return d.Width(Type{Size: t.Size, Bold: t.Bold || s.Bold}, s.Text) }
	end := func() {
		lines = append(lines, now)
		now = line{}
	}
	for _, tk := range tokens(spans) {
		if len(tk.spans) == 0 {
			continue
		}
		var w float64
		for _, s := range tk.spans {
			w += wide(s)
		}
		gap := 0.0
		if tk.space && len(now.spans) > 0 {
			gap = wide(Span{" ", now.spans[len(now.spans)-1].Bold})
		}
		if len(now.spans) > 0 && (tk.hard || now.width+gap+w > width) {
			end()
			gap = 0
		}
		if gap > 0 {
			now.spans[len(now.spans)-1].Text += " "
		}
		now.width += gap
		for _, s := range tk.spans {
			for now.width+wide(s) > width && wide(s) > width {
				first, rest := d.torn(s, width-now.width, wide)
				now.add(first, wide(first))
				end()
				s = rest
			}
			now.add(s, wide(s))
		}
	}
	if len(now.spans) > 0 {
		end()
	}
	return lines
}

// add appends a span, to the last if it has the same weight.
func (l *line) add(s Span, width float64) {
	if n := len(l.spans); n > 0 && l.spans[n-1].Bold == s.Bold {
		l.spans[n-1].Text += s.Text
	} else {
		l.spans = append(l.spans, s)
	}
	l.width += width
}

// torn cuts a word that no line holds; at least one letter stays.
func (d *Doc) torn(s Span, room float64, wide func(Span) float64) (first, rest Span) {
	letters := []rune(s.Text)
	n := 1
	for n < len(letters)-1 && wide(Span{string(letters[:n+1]), s.Bold}) <= room {
		n++
	}
	return Span{string(letters[:n]), s.Bold}, Span{string(letters[n:]), s.Bold}
}

// Item is a block with something in front of it, as in a list.
type Item struct {
	Type   Type
	Mark   string // "•", "1"
	Plate  bool   // the mark stands on a plate
	Tick   bool   // a box to tick instead of a mark
	Indent float64
	Blocks []Block
}

func (i Item) pieces(d *Doc, width float64) []piece {
	all := Indented{i.Indent, i.Blocks}.pieces(d, width)
	for n := range all {
		if all[n].draw == nil {
			continue
		}
		draw := all[n].draw
		all[n].draw = func(d *Doc, x, y float64) {
			i.drawMark(d, x, y)
			draw(d, x, y)
		}
		break
	}
	return all
}

func (i Item) drawMark(d *Doc, x, y float64) {
	t := i.Type
	base := y + t.baseline()
	switch {
	case i.Tick:
		side := t.Size * 0.95 / k
		d.Rect(x, base-t.CapHeight()/2-side/2, side, side, Lined(Black, 0.25))
	case i.Plate:
		t.Bold = true
		high, wide := t.Leading()*0.92, max(t.Leading()*1.05, d.Width(t, i.Mark)+1.6)
		d.RoundRect(x, base-t.CapHeight()/2-high/2, wide, high, 0.8, Lined(Black, 0.3))
		d.TextMiddle(x+wide/2, base, t, i.Mark)
	default:
		d.Text(x, base, t, i.Mark)
	}
}

// Rule is a line across the column.
type Rule struct {
	Pen          Pen
	Above, Under float64
}

func (r Rule) pieces(_ *Doc, width float64) []piece {
	return []piece{{height: r.Above + r.Under, keep: true, draw: func(d *Doc, x, y float64) {
		d.Line(x, y+r.Above, x+width, y+r.Above, r.Pen)
	}}}
}

// Picture is a drawing in the middle of the column.
type Picture struct {
	Drawing *Drawing
	Width   float64 // the widest it may be
	Height  float64 // the highest, 0 for any
	After   float64
}

func (p Picture) pieces(_ *Doc, width float64) []piece {
	w := min(p.Width, width)
	if p.Height > 0 {
		w = min(w, p.Height*p.Drawing.Width/p.Drawing.Height)
	}
	high := w * p.Drawing.Height / p.Drawing.Width
	return []piece{{height: high + p.After, draw: func(d *Doc, x, y float64) { d.Draw(p.Drawing, x+(width-w)/2, y, w) }}}
}

// Free is a piece of a height that draws itself.
type Free struct {
	Height float64
	Draw   func(d *Doc, x, y, width float64)
}

func (f Free) pieces(_ *Doc, width float64) []piece {
	return []piece{{height: f.Height, draw: func(d *Doc, x, y float64) { f.Draw(d, x, y, width) }}}
}
