package figure

import (
	"fmt"
	"html"
	"strings"
)

// The measures of the drawing for marks, in its own units, which are tenths of a
// millimetre on a sheet that is roundWide across.
const (
	roundWide  = 1860.0
	roundGap   = 60.0
	roundWords = 46.0  // room for the words over a view
	roundPerM  = 210.0 // units a metre at most: the ends of a short van stay small
)

// Caption gives the words over a view.
type Caption func(View) string

// AllRound draws a van from its four sides and from above, all to one scale,
// without points, for marks made by hand. Each side stands beside an end of the
// van, and the roof lies below with its front to the left. The text says in
// words what is drawn.
func AllRound(b Body, caption Caption, text string) string {
	side, end, roof := Look(b, FromLeft), Look(b, FromFront), Look(b, FromAbove)
	scale := min(roundPerM, (roundWide-roundGap)/(side.Wide+end.Wide))
	high := side.High * scale
	right := roundWide - end.Wide*scale
	rows := []struct {
		view View
		x, y float64
	}{
		{FromLeft, 0, 0}, {FromFront, right, 0},
		{FromRight, 0, high + roundWords + roundGap/2}, {FromRear, right, high + roundWords + roundGap/2},
		{FromAbove, 0, 2*high + 2*roundWords + roundGap},
	}
	total := rows[4].y + roundWords + roof.Wide*scale + 4
	var s strings.Builder
	fmt.Fprintf(&s, `<svg class="round" viewBox="0 0 %s %s" role="img" aria-label="%s">`, num(roundWide), num(round(total)), html.EscapeString(text))
	for _, r := range rows {
		fmt.Fprintf(&s, `<text x="%s" y="%s">%s</text>`, num(round(r.x+2)), num(round(r.y+30)), html.EscapeString(caption(r.view)))
		sketch := Look(b, r.view)
		if r.view == FromAbove {
			sketch = lying(sketch)
		}
		drawn := elevation{sketch: sketch, scale: scale - 8/sketch.Wide, left: r.x + 4, top: r.y + roundWords}
		drawn.shapes(&s)
	}
	s.WriteString("</svg>")
	return s.String()
}

// lying turns a view from above so that its front is on the left.
func lying(s Sketch) Sketch {
	turned := Sketch{Wide: s.High, High: s.Wide}
	for _, shape := range s.Shapes {
		points := make([]XY, len(shape.Points))
		for i, p := range shape.Points {
			points[i] = XY{p.Y, s.Wide - p.X}
		}
		shape.Points = points
		turned.Shapes = append(turned.Shapes, shape)
	}
	return turned
}
