package figure

import (
	"fmt"
	"html"
	"math"
	"strings"
)

// The measures of a view, in its own units: at the width of a phone one is
// about a pixel.
const (
	viewWide  = 360.0
	codeWide  = 34.0 // a code on its plate
	codeHigh  = 20.0
	codeStep  = 36.0 // from one plate to the next, across
	codeDown  = 22.0
	viewFrame = 26.0 // round the van, for plates beside it
)

// Elevation draws a van from a side, to scale, with the points on that side
// marked and their codes beside them, none over another. The text says in words
// what is drawn.
func Elevation(b Body, view View, points []Point, text string) string {
	sketch := Look(b, view)
	scale := (viewWide - 2*viewFrame) / max(sketch.Wide, 3.6) // an end is not drawn larger than a side
	wide := round(sketch.Wide*scale + 2*viewFrame)
	e := elevation{sketch: sketch, scale: scale, view: view, wide: wide}
	e.plates(points)
	var s strings.Builder
	fmt.Fprintf(&s, `<svg class="view" width="%s" viewBox="0 0 %s %s" role="img" aria-label="%s">`, num(wide), num(wide), num(e.high), html.EscapeString(text))
	e.shapes(&s)
	for _, p := range e.placed {
		fmt.Fprintf(&s, `<path class="leader" d="M%s %sL%s %s"/><circle class="spot" cx="%s" cy="%s" r="3.5"/>`, num(p.x), num(p.y), num(p.tx), num(p.ty), num(p.tx), num(p.ty))
	}
	for _, p := range e.placed {
		fmt.Fprintf(&s, `<g class="plate"><title>%s</title><rect x="%s" y="%s" width="%s" height="%s" rx="4"/><text x="%s" y="%s">%s</text></g>`,
			html.EscapeString(p.Title), num(p.x-codeWide/2), num(p.y-codeHigh/2), num(codeWide), num(codeHigh), num(p.x), num(p.y+4.5), html.EscapeString(p.Code))
	}
	s.WriteString("</svg>")
	return s.String()
}

// SideLocator draws a side of a van small with one point marked, to show how
// high it is. It is silent to a screen reader: the plan beside it says it all.
func SideLocator(b Body, point Point) string {
	view, ok := ViewOf(point.Side)
	if !ok {
		return ""
	}
	sketch := Look(b, view)
	e := elevation{sketch: sketch, scale: 148 / max(sketch.Wide, 4), view: view, wide: 160, small: true}
	e.left = (160 - sketch.Wide*e.scale) / 2
	e.top = 8
	var s strings.Builder
	fmt.Fprintf(&s, `<svg class="locator" viewBox="0 0 160 %s" aria-hidden="true">`, num(math.Round(e.top+sketch.High*e.scale+6)))
	e.shapes(&s)
	x, y := e.spot(point)
	fmt.Fprintf(&s, `<circle class="halo" cx="%s" cy="%s" r="13"/><circle class="spot" cx="%s" cy="%s" r="6"/></svg>`, num(x), num(y), num(x), num(y))
	return s.String()
}

// ViewOf is the view on which a side of the plan is seen; what is inside or
// under the floor is seen on none.
func ViewOf(s Side) (view View, ok bool) {
	switch s {
	case Left:
		return FromLeft, true
	case Right:
		return FromRight, true
	case Nose:
		return FromFront, true
	case Back:
		return FromRear, true
	case Roof:
		return FromAbove, true
	}
	return 0, false
}

type elevation struct {
	sketch    Sketch
	view      View
	scale     float64
	left, top float64 // of the van
	wide      float64
	high      float64
	small     bool
	placed    []placed
}

func (e *elevation) at(p XY) string {
	if e.small {
		return num(math.Round(e.left+p.X*e.scale)) + " " + num(math.Round(e.top+p.Y*e.scale))
	}
	return num(round(e.left+p.X*e.scale)) + " " + num(round(e.top+p.Y*e.scale))
}

func (e *elevation) shapes(s *strings.Builder) {
	for _, shape := range e.sketch.Shapes {
		if shape.Radius > 0 {
			xy := strings.Fields(e.at(shape.Points[0]))
			fmt.Fprintf(s, `<circle class="%s" cx="%s" cy="%s" r="%s"/>`, shape.Class, xy[0], xy[1], num(round(max(shape.Radius*e.scale, 1))))
			continue
		}
		fmt.Fprintf(s, `<path class="%s" d="M%s`, shape.Class, e.at(shape.Points[0]))
		for _, p := range shape.Points[1:] {
			s.WriteString("L" + e.at(p))
		}
		if shape.Closed {
			s.WriteString("Z")
		}
		s.WriteString(`"/>`)
	}
}

// spot is where a point is on the drawing.
func (e *elevation) spot(p Point) (x, y float64) {
	wide, high := e.sketch.Wide, e.sketch.High
	up := p.Up
	if up <= 0 {
		up = high / 3 // nothing is stated
	}
	switch e.view {
	case FromLeft:
		x, y = p.Along, high-up
	case FromRight:
		x, y = wide-p.Along, high-up
	case FromAbove:
		x, y = wide/2, p.Along
		if p.Known {
			x = p.Across
		}
	default:
		x, y = wide/2, high-up
		if p.Known {
			x = p.Across
			if e.view == FromFront { // one looks at it: its left is on the right
				x = wide - p.Across
			}
		}
	}
	clamp := func(v, most float64) float64 { return min(max(v, 0.05), most-0.05) }
	return round(e.left + clamp(x, wide)*e.scale), round(e.top + clamp(y, high)*e.scale)
}

// plates puts each code on the free place of a lattice that is nearest to its
// point. Where a view has more codes than places it gets more rows below.
func (e *elevation) plates(points []Point) {
	e.left, e.top = viewFrame, viewFrame
	columns := int((e.wide - codeWide) / codeStep)
	rows := max(int((e.sketch.High*e.scale+2*viewFrame-codeHigh)/codeDown)+1, (len(points)+columns)/(columns+1))
	margin := (e.wide - codeWide - float64(columns)*codeStep) / 2
	var free []spot
	for r := range rows {
		for c := range columns + 1 {
			free = append(free, spot{round(margin + codeWide/2 + float64(c)*codeStep), round(codeHigh/2 + 1 + float64(r)*codeDown)})
		}
	}
	e.high = round(max(e.sketch.High*e.scale+2*viewFrame, float64(rows)*codeDown))
	for _, p := range points {
		x, y := e.spot(p)
		best := 0
		for i, at := range free {
			if math.Hypot(at.x-x, at.y-y) < math.Hypot(free[best].x-x, free[best].y-y) {
				best = i
			}
		}
		e.placed = append(e.placed, placed{Point: p, x: free[best].x, y: free[best].y, tx: x, ty: y})
		free = append(free[:best], free[best+1:]...)
	}
}
