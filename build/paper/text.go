package paper

import (
	"fmt"
	"strings"

	"golang.org/x/image/font"
	"golang.org/x/image/math/fixed"
)

// Colour is a colour in red, green and blue.
type Colour struct{ R, G, B uint8 }

// The colours that most drawings need.
var (
	Black = Colour{}
	White = Colour{255, 255, 255}
	Grey  = Colour{90, 90, 90}
)

// Type is how text is set.
type Type struct {
	Size   float64 // points
	Bold   bool
	Colour Colour
}

// Leading is the usual distance between the base lines of two lines, in
// millimetres.
func (t Type) Leading() float64 { return t.Size * 1.3 / k }

// CapHeight is how high a capital stands above its base line, in millimetres.
func (t Type) CapHeight() float64 { return t.Size * capShare / k }

// capShare is the height of a capital of Open Sans as a share of the size; the
// font's own table of measures says 1462 of 2048 units.
const capShare = 1462.0 / 2048

// descentShare is how far a g reaches below its base line.
const descentShare = 492.0 / 2048

// Descent is how far a line reaches below its base line, in millimetres.
func (t Type) Descent() float64 { return t.Size * descentShare / k }

func (t Type) face() int {
	if t.Bold {
		return 1
	}
	return 0
}

// Text sets one line; x is its left end and y its base line. A character that
// the font lacks is an error that names it.
func (d *Doc) Text(x, y float64, t Type, text string) {
	if text == "" || d.err != nil {
		return
	}
	text = printable(text)
	for _, r := range text {
		if !d.known[r] {
			if _, ok := d.stock.Has(string(r)); !ok {
				d.fail(&GlyphError{Char: r, Text: text})
				return
			}
			d.known[r] = true
		}
	}
	d.setType(t)
	d.pdf.Text(x, y, text)
}

func (d *Doc) setType(t Type) {
	d.pdf.SetFont("text", styles[t.face()], t.Size)
	d.pdf.SetTextColor(int(t.Colour.R), int(t.Colour.G), int(t.Colour.B))
}

// TextRight sets one line that ends at x.
func (d *Doc) TextRight(x, y float64, t Type, text string) { d.Text(x-d.Width(t, text), y, t, text) }

// TextMiddle sets one line whose middle is at x.
func (d *Doc) TextMiddle(x, y float64, t Type, text string) {
	d.Text(x-d.Width(t, text)/2, y, t, text)
}

// GlyphError says that the font lacks a character.
type GlyphError struct {
	Char rune
	Text string
}

func (e *GlyphError) Error() string {
	return fmt.Sprintf("the font of the sheets has no glyph for %q (U+%04X) in %q", e.Char, e.Char, e.Text)
}

// Width is how wide a line is set, in millimetres.
func (d *Doc) Width(t Type, text string) float64 {
	var sum float64
	for _, r := range printable(text) {
		sum += d.advance(t.face(), r)
	}
	return sum * t.Size / k
}

// advance is the width of one character as a share of the size.
func (d *Doc) advance(face int, r rune) float64 {
	if w, ok := d.advances[face][r]; ok {
		return w
	}
	f := d.stock.faces[face].font
	units := fixed.Int26_6(f.UnitsPerEm())
	var w float64
	if i, err := f.GlyphIndex(&d.buf, r); err == nil {
		if a, err := f.GlyphAdvance(&d.buf, i, units, font.HintingNone); err == nil {
			w = float64(a) / float64(units)
		}
	}
	d.advances[face][r] = w
	return w
}

// Wrap breaks text into lines no wider than width. A single word that is wider
// stays whole on a line of its own: use Fits to know.
func (d *Doc) Wrap(t Type, text string, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(text, breakable) {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if line != "" && d.Width(t, longer) > width {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// breakable reports whether a line may end at a character: a no-break space is
// none.
func breakable(r rune) bool { return r == ' ' || r == '\n' || r == '\t' }
