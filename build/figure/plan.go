// Package figure draws a van from its spec: the plan with the points to tap,
// and the small locator that shows one of them.
package figure

import (
	"fmt"
	"html"
	"math"
	"strconv"
	"strings"
)

// Body is the van to draw. Lengths are in metres.
type Body struct {
	Kind          string // panel-van, low-profile, over-cab, integrated
	Length, Width float64
	Height        float64 // 0 for the usual one; the plan does not need it
	Wheelbase     float64
	FrontOverhang float64
	LeftHandDrive bool
	Door          Side // Left, Right or Back
	DoorAlong     float64
}

// Side is where on the plan something is. The front of the van is up.
type Side uint8

// The sides.
const (
	Within Side = iota // inside
	Left
	Right
	Nose
	Back
	Roof
	Under
)

// Point is one thing on the plan.
type Point struct {
	Code   string // what stands on the plate: a label code or a number
	Title  string // for those who cannot see the plan
	Href   string // "" for no link
	Side   Side
	Along  float64 // metres from the front
	Across float64 // metres from the left side; inside, roof and under only
	Known  bool    // Across is stated
	Up     float64 // metres from the ground, 0 where it is not stated
	Here   bool    // the one a locator shows
}

// Words are what the drawing says.
type Words struct{ Title, Front, Left, Right string }

// The drawing's measures, in its own units: one is about a pixel of a phone.
const (
	wide    = 360.0 // the drawing
	plateW  = 46.0
	plateH  = 44.0
	gap     = 4.0
	margin  = 8.0
	rowStep = plateH + gap
	// A plate beside the body stands this far from the edge of the drawing.
	sideX = margin + plateW/2
)

// placed is a point with the middle of its plate and the spot it points at.
type placed struct {
	Point
	x, y   float64
	tx, ty float64
}

// Plan draws the van from above with every point on a plate that can be
// tapped. Plates never overlap. The result is one svg element.
func Plan(b Body, points []Point, w Words) string {
	d := layout(b, points)
	var s strings.Builder
	fmt.Fprintf(&s, `<svg class="plan" viewBox="0 0 %s %s" role="group" aria-label="%s">`,
		num(wide), num(d.high), html.EscapeString(w.Title))
	d.body(&s, w)
	for _, p := range d.points {
		d.leader(&s, p)
	}
	for _, p := range d.points {
		plate(&s, p)
	}
	s.WriteString("</svg>")
	return s.String()
}

// Locator draws the van small with one point marked. It is an image to a
// screen reader; text says where the point is.
func Locator(b Body, point Point, text string) string {
	d := drawing{Body: b, scale: 100 / b.Width, left: 30, top: 16}
	d.high = d.top*2 + b.Length*d.scale
	var s strings.Builder
	fmt.Fprintf(&s, `<svg class="locator" viewBox="0 0 160 %s" role="img" aria-label="%s">`,
		num(d.high), html.EscapeString(text))
	d.body(&s, Words{})
	x, y := d.spot(point)
	fmt.Fprintf(&s, `<circle class="halo" cx="%s" cy="%s" r="15"/><circle class="spot" cx="%s" cy="%s" r="7"/>`,
		num(x), num(y), num(x), num(y))
	s.WriteString("</svg>")
	return s.String()
}

func num(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// round keeps coordinates short: a tenth of a pixel is nobody's concern.
func round(v float64) float64 { return math.Round(v*10) / 10 }
