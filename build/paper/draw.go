package paper

import (
	"fmt"
	"strconv"
	"strings"
)

// Pen is how a shape is painted: filled, outlined, or both.
type Pen struct {
	Fill   *Colour
	Stroke *Colour
	Width  float64   // of the stroke, millimetres
	Dash   []float64 // millimetres; nil for a whole line
}

// Filled paints the inside alone.
func Filled(c Colour) Pen { return Pen{Fill: &c} }

// Lined paints the outline alone; width is in millimetres.
func Lined(c Colour, width float64) Pen { return Pen{Stroke: &c, Width: width} }

// Rect draws a rectangle.
func (d *Doc) Rect(x, y, w, h float64, p Pen) {
	d.raw(p, fmt.Sprintf("%s %s %s %s re", d.px(x), d.py(y+h), num(w*k), num(h*k)))
}

// Line draws a straight line.
func (d *Doc) Line(x1, y1, x2, y2 float64, p Pen) {
	d.raw(p, fmt.Sprintf("%s %s m %s %s l", d.px(x1), d.py(y1), d.px(x2), d.py(y2)))
}

// RoundRect draws a rectangle with round corners.
func (d *Doc) RoundRect(x, y, w, h, radius float64, p Pen) {
	r := min(radius, w/2, h/2)
	d.raw(p, d.ops(roundRect(x, y, w, h, r), identity))
}

// Cross draws a cross with arms of the given length.
func (d *Doc) Cross(x, y, arm float64, p Pen) {
	d.raw(p, fmt.Sprintf("%s %s m %s %s l %s %s m %s %s l", d.px(x-arm), d.py(y), d.px(x+arm), d.py(y),
		d.px(x), d.py(y-arm), d.px(x), d.py(y+arm)))
}

// raw paints a path. It leaves the state of the page as it was.
func (d *Doc) raw(p Pen, path string) { d.rawRule(p, path, false) }

// rawRule paints a path; evenOdd says what is inside where it crosses itself.
func (d *Doc) rawRule(p Pen, path string, evenOdd bool) {
	var b strings.Builder
	b.WriteString("q ")
	if p.Fill != nil {
		b.WriteString(p.Fill.op("rg"))
	}
	if p.Stroke != nil {
		b.WriteString(p.Stroke.op("RG"))
		b.WriteString(num(p.Width*k) + " w ")
		if len(p.Dash) > 0 {
			b.WriteString("[")
			for _, v := range p.Dash {
				b.WriteString(num(v*k) + " ")
			}
			b.WriteString("] 0 d ")
		}
	}
	b.WriteString(path)
	b.WriteString(" " + p.operator())
	if evenOdd && p.Fill != nil {
		b.WriteString("*")
	}
	b.WriteString(" Q\n")
	d.pdf.RawWriteStr(b.String())
}

func (p Pen) operator() string {
	switch {
	case p.Fill != nil && p.Stroke != nil:
		return "B"
	case p.Fill != nil:
		return "f"
	case p.Stroke != nil:
		return "S"
	}
	return "n"
}

func (c Colour) op(name string) string {
	share := func(v uint8) string { return strconv.FormatFloat(float64(v)/255, 'f', -1, 32) }
	return share(c.R) + " " + share(c.G) + " " + share(c.B) + " " + name + " "
}

// px and py turn millimetres into the points of the page, which PDF counts
// from the lower left corner.
func (d *Doc) px(x float64) string { return num(x * k) }
func (d *Doc) py(y float64) string { return num((d.size.Height - y) * k) }

// num writes a coordinate to a ten-thousandth of a point.
func num(v float64) string {
	s := strconv.FormatFloat(v, 'f', 4, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}
