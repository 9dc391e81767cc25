package figure

import (
	"fmt"
	"html"
	"strings"
)

// Shares of a body that its spec does not state, as one sees them from above.
// From looking at many vans; common practice.
const (
	cabLong       = 1.6  // m, from the front to behind the cab seats
	cabWide       = 0.90 // of the body's width, on a coachbuilt
	bonnetLong    = 0.85 // m
	wheelLong     = 0.68 // m
	wheelWide     = 0.20 // m
	mirrorLong    = 0.22 // m
	mirrorOut     = 0.20 // m, beyond the body
	doorWide      = 0.70 // m
	doorOut       = 0.12 // m, how far an open door at the rear stands out
	usualOverhang = 0.95 // m, of the front
)

// body draws walls, cab, wheels, mirrors, steering wheel and door.
func (d *drawing) body(s *strings.Builder, w Words) {
	d.wheels(s)
	d.mirrors(s)
	fmt.Fprintf(s, `<path class="hull" d="%s"/>`, d.outline())
	d.screen(s)
	d.door(s)
	if w.Front == "" {
		return
	}
	middle := d.left + d.Width*d.scale/2
	fmt.Fprintf(s, `<text class="end" x="%s" y="18">%s</text>`, num(round(middle)), html.EscapeString(w.Front))
	half := round(d.top + d.Length*d.scale/2)
	for _, side := range []struct {
		x     float64
		turn  int
		words string
	}{{d.left - 14, -90, w.Left}, {d.left + d.Width*d.scale + 14, 90, w.Right}} {
		fmt.Fprintf(s, `<text class="end" transform="translate(%s %s) rotate(%d)">%s</text>`,
			num(round(side.x)), num(half), side.turn, html.EscapeString(side.words))
	}
}

// at turns metres from the left side and from the front into a point.
func (d *drawing) at(across, along float64) string {
	return num(round(d.left+across*d.scale)) + " " + num(round(d.top+along*d.scale))
}

// outline is the hull: a coachbuilt's cab is narrower than its body, a panel
// van and an integrated body are not.
func (d *drawing) outline() string {
	w, l := d.Width, d.Length
	in, cab := 0.0, 0.0
	if d.Kind == "low-profile" || d.Kind == "over-cab" {
		in, cab = w*(1-cabWide)/2, cabLong
	}
	nose := 0.35
	path := "M" + d.at(in, nose+0.25) + "Q" + d.at(in, 0) + " " + d.at(in+0.5, 0) +
		"L" + d.at(w-in-0.5, 0) + "Q" + d.at(w-in, 0) + " " + d.at(w-in, nose+0.25)
	if in > 0 {
		path += "L" + d.at(w-in, cab-0.2) + "Q" + d.at(w, cab-0.1) + " " + d.at(w, cab+0.2)
	}
	path += "L" + d.at(w, l-0.15) + "Q" + d.at(w, l) + " " + d.at(w-0.15, l) +
		"L" + d.at(0.15, l) + "Q" + d.at(0, l) + " " + d.at(0, l-0.15)
	if in > 0 {
		path += "L" + d.at(0, cab+0.2) + "Q" + d.at(0, cab-0.1) + " " + d.at(in, cab-0.2)
	}
	return path + "Z"
}

// screen draws the windscreen, behind the bonnet where there is one, and the
// steering wheel on its side.
func (d *drawing) screen(s *strings.Builder) {
	w, depth := d.Width, bonnetLong
	if d.Kind == "integrated" {
		depth = 0.3
	}
	in := w * (1 - cabWide) / 2
	fmt.Fprintf(s, `<path class="line" d="M%sQ%s %sL%sQ%s %sZ"/>`,
		d.at(in+0.12, depth+0.18), d.at(w/2, depth-0.22), d.at(w-in-0.12, depth+0.18),
		d.at(w-in-0.22, depth+0.42), d.at(w/2, depth+0.08), d.at(in+0.22, depth+0.42))
	across := w * 0.72
	if d.LeftHandDrive {
		across = w * 0.28
	}
	xy := strings.Fields(d.at(across, depth+0.62))
	fmt.Fprintf(s, `<circle class="line" cx="%s" cy="%s" r="%s"/>`, xy[0], xy[1], num(round(0.17*d.scale)))
}

func (d *drawing) wheels(s *strings.Builder) {
	front := d.FrontOverhang
	if front <= 0 {
		front = usualOverhang
	}
	for _, axle := range []float64{front, front + d.Wheelbase} {
		axle = min(axle, d.Length-wheelLong/2)
		for _, across := range []float64{-0.05, d.Width - wheelWide + 0.05} {
			d.box(s, "wheel", across, axle-wheelLong/2, wheelWide, wheelLong)
		}
	}
}

func (d *drawing) mirrors(s *strings.Builder) {
	in := 0.0
	if d.Kind == "low-profile" || d.Kind == "over-cab" {
		in = d.Width * (1 - cabWide) / 2
	}
	out := min(mirrorOut, in+(d.left-2)/d.scale) // they stay in the drawing
	d.box(s, "mirror", in-out, 1.0, out, mirrorLong)
	d.box(s, "mirror", d.Width-in, 1.0, out, mirrorLong)
}

// door draws the gap in the wall and the leaf standing open.
func (d *drawing) door(s *strings.Builder) {
	along := min(max(d.DoorAlong, doorWide/2), d.Length-doorWide/2)
	out := min(0.3, (d.left-4)/d.scale) // the leaf stays in the drawing
	var gapFrom, gapTo, leaf string
	switch d.Door {
	case Left:
		gapFrom, gapTo, leaf = d.at(0, along-doorWide/2), d.at(0, along+doorWide/2), d.at(-out, along-doorWide/2-0.05)
	case Right:
		gapFrom, gapTo, leaf = d.at(d.Width, along-doorWide/2), d.at(d.Width, along+doorWide/2), d.at(d.Width+out, along-doorWide/2-0.05)
	case Back:
		gapFrom, gapTo, leaf = d.at(d.Width/2-doorWide/2, d.Length), d.at(d.Width/2+doorWide/2, d.Length), d.at(d.Width/2-doorWide/2-0.05, d.Length+doorOut)
	default:
		return
	}
	fmt.Fprintf(s, `<path class="gap" d="M%sL%s"/><path class="line" d="M%sL%s"/>`, gapFrom, gapTo, gapFrom, leaf)
}

func (d *drawing) box(s *strings.Builder, class string, across, along, wide, long float64) {
	xy := strings.Fields(d.at(across, along))
	fmt.Fprintf(s, `<rect class="%s" x="%s" y="%s" width="%s" height="%s" rx="2"/>`,
		class, xy[0], xy[1], num(round(wide*d.scale)), num(round(long*d.scale)))
}
