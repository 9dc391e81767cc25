package sheets

import (
	"io"
	"math"
	"strconv"

	"doorpocket/build/paper"
	"doorpocket/build/render"
)

// rulerInset is how far the corner crosses are from the edges of the page, so
// that every printer reaches them, in millimetres.
const rulerInset = 12.0

// Ruler writes a page that shows whether a printer keeps to the measure: two
// lines of 100 mm, crosses in the corners, and the outlines of a grid if there
// is one with labels.
func Ruler(stock *paper.Stock, from *render.Words, lang string, g Grid, out io.Writer) error {
	w := &words{of: from}
	d := stock.New(paper.About{Title: w.say("ruler_title"), Lang: lang})
	d.Page(g.Page)
	pen := paper.Lined(paper.Black, 0.2)
	width, height := g.Page.Width, g.Page.Height
	for _, x := range []float64{rulerInset, width - rulerInset} {
		for _, y := range []float64{rulerInset, height - rulerInset} {
			d.Cross(x, y, 5, pen)
		}
	}
	faint := paper.Lined(paper.Colour{R: 150, G: 150, B: 150}, 0.15)
	for n := range g.PerPage() {
		x, y := g.At(n)
		d.RoundRect(x, y, g.Width, g.Height, 1, faint)
	}
	left := (width - 100) / 2
	texts := []string{w.say("ruler_print"), w.say("ruler_line"),
		w.say("ruler_corners", "across", measure(width-2*rulerInset), "down", measure(height-2*rulerInset))}
	if g.PerPage() > 0 {
		texts = append(texts, w.say("ruler_grid"))
	}
	texts = append(texts, w.say("ruler_wrong"))
	d.Rect(left-4, 24, 108, 54, paper.Filled(paper.White))
	head := paper.Type{Size: 14, Bold: true}
	y := 30.0
	for _, line := range d.Wrap(head, w.say("ruler_title"), 100) {
		d.Text(left, y, head, line)
		y += head.Leading()
	}
	body := paper.Type{Size: 10}
	for _, text := range texts {
		y += 1.5
		for _, line := range d.Wrap(body, text, 100) {
			d.Text(left, y, body, line)
			y += body.Leading()
		}
	}
	d.Rect(left-6, 98, 112, 14, paper.Filled(paper.White))
	ruler(d, left, 110, true)
	d.Rect(left-4, 116, 16, 110, paper.Filled(paper.White))
	ruler(d, left, 120, false)
	if w.err != nil {
		return w.err
	}
	return d.Write(out)
}

// measure is a length to a tenth of a millimetre.
func measure(v float64) string { return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64) }

// ruler draws a line of 100 mm from x, y with a tick for each millimetre.
func ruler(d *paper.Doc, x, y float64, across bool) {
	pen := paper.Lined(paper.Black, 0.15)
	at := func(along, out float64) (float64, float64) {
		if across {
			return x + along, y - out
		}
		return x + out, y + along
	}
	line := func(along1, out1, along2, out2 float64) {
		x1, y1 := at(along1, out1)
		x2, y2 := at(along2, out2)
		d.Line(x1, y1, x2, y2, pen)
	}
	line(0, 0, 100, 0)
	for mm := range 101 {
		long := 1.5
		switch {
		case mm%10 == 0:
			long = 4
		case mm%5 == 0:
			long = 2.5
		}
		line(float64(mm), 0, float64(mm), long)
		if mm%10 == 0 {
			t := paper.Type{Size: 7}
			tx, ty := at(float64(mm), 5)
			if across {
				d.TextMiddle(tx, ty, t, strconv.Itoa(mm))
			} else {
				d.Text(tx, ty+t.CapHeight()/2, t, strconv.Itoa(mm))
			}
		}
	}
}
