package sheets

import (
	"fmt"

	"doorpocket/build/label"
	"doorpocket/build/paper"
)

// The measures of a label's face, in millimetres and points.
const (
	edge      = 1.0 // between the edge of a label and what is on it
	inset     = 2.0 // the same for words
	betweenQR = 0.5 // the quiet zone is white already

	codeMost, codeLeast = 40.0, 9.0
	titleLeast          = 5.5
	callLeast           = 5.5
	titleStep           = 0.5
	leastSign           = 5.0 // millimetres
)

// least module, in millimetres, that usual printers and phones can do; common
// practice.
const leastModule = 0.4

// box is a part of a label.
type box struct{ x, y, w, h float64 }

// face draws one label.
type face struct {
	doc  *paper.Doc
	grid Grid
	call string // the line that says whom to call
}

// parts are the places of the symbol and of the words: side by side on a label
// that is wider than high, else one above the other.
func (g Grid) parts() (symbol, words box, beside bool) {
	if g.Width >= 1.25*g.Height {
		side := min(g.Height-2*edge, 0.55*g.Width)
		return box{edge, (g.Height - side) / 2, side, side},
			box{edge + side + betweenQR, inset, g.Width - edge - side - betweenQR - inset, g.Height - 2*inset}, true
	}
	side := min(g.Width-2*edge, 0.72*g.Height)
	return box{(g.Width - side) / 2, edge, side, side},
		box{inset, edge + side + betweenQR, g.Width - 2*inset, g.Height - edge - side - betweenQR - inset}, false
}

// titleMost and callMost are the largest types, in points, for words of a width:
// a label that is read from afar has large ones.
func titleMost(width float64) float64 { return min(20, max(9, width/2.5)) }
func callMost(width float64) float64  { return min(12, max(8, width/7)) }

// draw draws a sticker with the upper left corner of its label at x, y.
func (f face) draw(s Sticker, symbol label.Symbol, x, y float64) error {
	qr, words, beside := f.grid.parts()
	f.doc.QR(symbol, x+qr.x, y+qr.y, qr.w)
	words.x, words.y = words.x+x, words.y+y
	if beside {
		return f.beside(s, words)
	}
	return f.below(s, words)
}

// beside sets code and sign at the top, the titles under them, the call at the
// foot. Where a long code leaves no room for the sign, the sign stands
// between titles and call.
func (f face) beside(s Sticker, b box) error {
	code, signSide, err := f.head(s, b, min(12, 0.3*b.h, 0.3*b.w), 1)
	lower := false
	if err != nil {
		if code, err = f.fitCode(s, b.w, 0.36*b.h); err != nil {
			return err
		}
		lower, signSide = true, 0
	}
	row := max(code.CapHeight(), signSide)
	f.doc.Text(b.x, b.y+(row+code.CapHeight())/2, code, s.Code())
	foot, err := f.callLine(s, b, false)
	if err != nil {
		return err
	}
	words := box{b.x, b.y + row + 1, b.w, b.h - row - 1 - foot}
	if s.Sign != "" {
		at := b.y + (row-signSide)/2
		if lower {
			signSide = max(leastSign, min(12, 0.4*words.h))
			words.h -= signSide + 0.5
			at = words.y + words.h
		}
		f.doc.Sign(s.Sign, b.x+b.w-signSide, at, signSide)
	}
	return f.titles(s, words, false)
}

// head finds the type of the code and the side of the sign, which gives way as
// far as it can still be made out. A label without a sign leaves the room of one
// empty, so that the codes of a sheet look alike.
func (f face) head(s Sticker, b box, sign, gap float64) (code paper.Type, side float64, err error) {
	for side = sign; ; side -= 0.5 {
		code, err = f.fitCode(s, b.w-side-gap, 0.36*b.h)
		if err == nil || side-0.5 < leastSign {
			return code, side, err
		}
	}
}

// below sets the code with the sign in one row, then titles and the call, all
// in the middle.
func (f face) below(s Sticker, b box) error {
	const gap = 2
	code, signSide, err := f.head(s, b, min(14, 0.36*b.h), gap)
	if err != nil {
		return err
	}
	row := max(code.CapHeight(), signSide)
	wide := f.doc.Width(code, s.Code())
	if s.Sign != "" {
		wide += gap + signSide
	}
	left := b.x + (b.w-wide)/2
	f.doc.Text(left, b.y+(row+code.CapHeight())/2, code, s.Code())
	if s.Sign != "" {
		f.doc.Sign(s.Sign, left+wide-signSide, b.y+(row-signSide)/2, signSide)
	}
	foot, err := f.callLine(s, b, true)
	if err != nil {
		return err
	}
	return f.titles(s, box{b.x, b.y + row + 1, b.w, b.h - row - 1 - foot}, true)
}

// fitCode is the largest type in which the code has room.
func (f face) fitCode(s Sticker, width, height float64) (paper.Type, error) {
	t := paper.Type{Size: codeMost, Bold: true}
	for ; t.Size >= codeLeast; t.Size -= titleStep {
		if t.CapHeight() <= height && f.doc.Width(t, s.Code()) <= width {
			return t, nil
		}
	}
	t.Size = codeLeast
	return t, &FitError{Label: s.Code(), What: "the code", Needed: f.doc.Width(t, s.Code()), Room: width, Across: true, Grid: f.grid}
}

// callLine sets whom to call at the foot, on a line of its own or broken at a
// space, and tells how high that is.
func (f face) callLine(s Sticker, b box, middle bool) (float64, error) {
	t := paper.Type{Size: callMost(b.w)}
	lines := []string{f.call}
	for f.doc.Width(t, f.call) > b.w && t.Size > callLeast {
		t.Size -= titleStep
	}
	if f.doc.Width(t, f.call) > b.w {
		lines = f.doc.Wrap(t, f.call, b.w)
	}
	for i, line := range lines {
		wide := f.doc.Width(t, line)
		if wide > b.w {
			return 0, &FitError{Label: s.Code(), What: "the helpline", Needed: wide, Room: b.w, Across: true, Grid: f.grid}
		}
		x := b.x
		if middle {
			x += (b.w - wide) / 2
		}
		f.doc.Text(x, b.y+b.h-t.Descent()-float64(len(lines)-1-i)*t.Leading(), t, line)
	}
	return float64(len(lines)) * t.Leading(), nil
}

// titles sets the names in the largest type in which all have room; the main
// language is bold.
func (f face) titles(s Sticker, b box, middle bool) error {
	var needed float64
	for size := titleMost(b.w); size >= titleLeast; size -= titleStep {
		lines, high, fits := f.titleLines(s, size, b.w)
		needed = high
		if !fits || high > b.h {
			continue
		}
		y := b.y
		for _, l := range lines {
			x := b.x
			if middle {
				x += (b.w - f.doc.Width(l.t, l.text)) / 2
			}
			f.doc.Text(x, y+l.t.CapHeight()+(l.t.Leading()-l.t.CapHeight())/3, l.t, l.text)
			y += l.t.Leading()
		}
		return nil
	}
	return &FitError{Label: s.Code(), What: "the name of its system", Needed: needed, Room: b.h, Grid: f.grid}
}

type titleLine struct {
	t    paper.Type
	text string
}

// titleLines breaks the titles into lines; fits is false where a single word
// is too wide.
func (f face) titleLines(s Sticker, size, width float64) (lines []titleLine, high float64, fits bool) {
	fits = true
	for i, title := range s.Titles {
		t := paper.Type{Size: size, Bold: i == 0}
		if i > 0 {
			t.Size = max(size-1, titleLeast)
		}
		for _, line := range f.doc.Wrap(t, title.Text, width) {
			if f.doc.Width(t, line) > width {
				fits = false
			}
			lines = append(lines, titleLine{t, line})
			high += t.Leading()
		}
	}
	return lines, high, fits
}

// FitError says what has no room on a label. Lengths are in millimetres.
type FitError struct {
	Label, What  string
	Needed, Room float64
	Across       bool // it is too wide; else too high
	Grid         Grid
}

func (e *FitError) Error() string {
	way := "high"
	if e.Across {
		way = "wide"
	}
	return fmt.Sprintf("label %s: %s is at least %.1f mm %s and has %.1f mm on a label of %g x %g mm: take larger labels or a shorter title",
		e.Label, e.What, e.Needed, way, e.Room, rounded(e.Grid.Width), rounded(e.Grid.Height))
}
