package figure

import (
	"cmp"
	"fmt"
	"html"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Stop is one place on a walk. Its number is that of the step done there
// first; Number counts from 1 and may leave numbers out.
type Stop struct {
	Point
	Number int
}

// The measures of a walk's drawing, in its own units: at the width of a phone
// one is a little more than a pixel.
const (
	walkWide  = 240.0 // the drawing
	walkBody  = 144.0 // the body, beside which the stops outside stand
	dot       = 18.0  // across a numbered dot
	dotStep   = 19.0  // from one to the next
	wallClear = 11.0  // from a wall to the middle of the nearest dot
)

// Walk draws the van from above with the way from stop to stop as a line and
// the stops as numbered dots, each as near to its place as can be without
// covering another. From inside to outside the line leads through the door,
// outside it goes round the van. The text says in words what is drawn.
func Walk(b Body, stops []Stop, text string) string {
	w := newWalk(b, stops)
	var s strings.Builder
	fmt.Fprintf(&s, `<svg class="plan route" viewBox="0 0 %s %s" role="img" aria-label="%s">`, num(walkWide), num(w.high), html.EscapeString(text))
	w.body(&s, Words{})
	fmt.Fprintf(&s, `<path class="way" d="%s"/><path class="stops" d="`, w.way())
	for _, at := range w.at {
		fmt.Fprintf(&s, "M%s %sh0", num(at.x), num(at.y))
	}
	s.WriteString(`"/><text transform="translate(0 4)">`)
	for i, at := range w.at {
		fmt.Fprintf(&s, `<tspan x="%s" y="%s">%s</tspan>`, num(at.x), num(at.y), strconv.Itoa(stops[i].Number))
	}
	s.WriteString("</text></svg>")
	return s.String()
}

type spot struct{ x, y float64 }

// walk is the body at a scale with the dots placed.
type walk struct {
	drawing
	stops []Stop
	at    []spot
	foot  float64 // how far down the dots reach
}

func newWalk(b Body, stops []Stop) walk {
	w := walk{drawing: drawing{Body: b, scale: walkBody / b.Width, left: (walkWide - walkBody) / 2}, stops: stops, at: make([]spot, len(stops))}
	w.top = wallClear + dot/2 + dotStep*float64(w.rows(Nose)-1)
	w.foot = w.top + w.Length*w.scale
	for _, side := range []Side{Within, Left, Right, Nose, Back} {
		w.foot = max(w.foot, w.set(side)) // what is behind the van comes last, below all others
	}
	w.high = round(max(w.foot, w.top+w.Length*w.scale+wallClear+dot/2) + 2)
	return w
}

// region is where the dots of a stop may stand: what is on the roof is reached
// from inside, what is under the floor from the left.
func region(s Side) Side {
	switch s {
	case Roof:
		return Within
	case Under:
		return Left
	}
	return s
}

// dotsAcross is how many dots stand side by side in front of the van, or behind
// it; dotsWithin, in the van.
const (
	dotsAcross = (int(walkWide)-int(dot))/int(dotStep) + 1
	dotsWithin = (int(walkBody)-2*int(wallClear))/int(dotStep) + 1
)

// rows is how many rows of dots a side in front or behind needs, at least one.
func (w *walk) rows(side Side) int {
	count := 0
	for _, s := range w.stops {
		if region(s.Side) == side {
			count++
		}
	}
	return max(1, (count+dotsAcross-1)/dotsAcross)
}

// set gives each stop of a side the nearest free place of a lattice, in the
// order of the walk, and tells how far down the drawing they reach.
func (w *walk) set(side Side) (foot float64) {
	lattice := w.lattice(side)
	for i, stop := range w.stops {
		if region(stop.Side) != side {
			continue
		}
		x, y := w.spot(stop.Point)
		best := slices.IndexFunc(lattice, func(at spot) bool { return !math.IsNaN(at.x) })
		for j, at := range lattice {
			if math.Hypot(at.x-x, at.y-y) < math.Hypot(lattice[best].x-x, lattice[best].y-y) {
				best = j
			}
		}
		w.at[i] = lattice[best]
		foot = max(foot, lattice[best].y+dot/2)
		lattice[best].x = math.NaN()
	}
	return foot
}

// lattice is where dots of a side may stand, with room for all of them: rows go
// on beyond the end of the van where that takes more.
func (w *walk) lattice(side Side) []spot {
	count := 0
	for _, s := range w.stops {
		if region(s.Side) == side {
			count++
		}
	}
	right, foot := w.left+walkBody, w.top+w.Length*w.scale
	grid := func(x0, y0 float64, columns, rows int, down float64) []spot {
		var all []spot
		x0, y0 = math.Round(x0), math.Round(y0) // whole numbers keep pages small
		for r := range rows {
			for c := range columns {
				all = append(all, spot{x0 + float64(c)*dotStep, y0 + float64(r)*down})
			}
		}
		return all
	}
	beside := func(columns int) int { return max(int((foot-w.top-dot)/dotStep)+1, (count+columns-1)/columns) }
	switch side {
	case Left:
		return grid(w.left-wallClear-dotStep, w.top+dot/2, 2, beside(2), dotStep)
	case Right:
		return grid(right+wallClear, w.top+dot/2, 2, beside(2), dotStep)
	case Nose:
		return grid((walkWide-float64(dotsAcross-1)*dotStep)/2, w.top-wallClear, dotsAcross, w.rows(Nose), -dotStep)
	case Back:
		return grid((walkWide-float64(dotsAcross-1)*dotStep)/2, max(foot+wallClear, w.foot+dotStep/2), dotsAcross, w.rows(Back), dotStep)
	}
	x0 := w.left + walkBody/2 - float64(dotsWithin-1)*dotStep/2
	return grid(x0, w.top+wallClear, dotsWithin, max(int((foot-w.top-2*wallClear)/dotStep)+1, (count+dotsWithin-1)/dotsWithin), dotStep)
}

// way is the line from dot to dot.
func (w *walk) way() string {
	var path []spot
	for i, at := range w.at {
		if i > 0 {
			path = append(path, w.between(i-1, i)...)
		}
		path = append(path, at)
	}
	var s strings.Builder
	for i, at := range path {
		command := "L"
		if i == 0 {
			command = "M"
		}
		s.WriteString(command + num(at.x) + " " + num(at.y))
	}
	return s.String()
}

// between are the bends of the line between two stops: the door, and the
// corners of the van.
func (w *walk) between(from, to int) []spot {
	inside := func(i int) bool { return region(w.stops[i].Side) == Within }
	in, out := w.doorway()
	switch {
	case inside(from) && inside(to):
		return nil
	case inside(from):
		return append([]spot{in, out}, w.round(w.Door, out, region(w.stops[to].Side), w.at[to])...)
	case inside(to):
		return append(w.round(region(w.stops[from].Side), w.at[from], w.Door, out), out, in)
	}
	return w.round(region(w.stops[from].Side), w.at[from], region(w.stops[to].Side), w.at[to])
}

// doorway is the spot inside the door and the one outside it.
func (w *walk) doorway() (in, out spot) {
	x, y := w.spot(Point{Side: w.Door, Along: w.DoorAlong})
	x, y = math.Round(x), math.Round(y)
	const clear = 8
	switch w.Door {
	case Right:
		return spot{x - clear, y}, spot{x + clear, y}
	case Back:
		return spot{x, y - clear}, spot{x, y + clear}
	}
	return spot{x + clear, y}, spot{x - clear, y}
}

// round are the corners that lie between two spots outside, the shorter way
// round.
func (w *walk) round(side Side, at spot, other Side, to spot) []spot {
	if side == other {
		return nil
	}
	left, right := math.Round(w.left-wallClear), math.Round(w.left+walkBody+wallClear)
	top, foot := math.Round(w.top-wallClear), math.Round(w.top+w.Length*w.scale+wallClear)
	corners := []spot{{right, top}, {right, foot}, {left, foot}, {left, top}} // clockwise from the front
	sides := []Side{Nose, Right, Back, Left}
	from, until := slices.Index(sides, side), slices.Index(sides, other)
	var clockwise, back []spot
	for i := from; i != until; i = (i + 1) % 4 {
		clockwise = append(clockwise, corners[i])
	}
	for i := from; i != until; i = (i + 3) % 4 {
		back = append(back, corners[(i+3)%4])
	}
	if cmp.Less(long(at, back, to), long(at, clockwise, to)) {
		return back
	}
	return clockwise
}

func long(from spot, by []spot, to spot) float64 {
	all := 0.0
	for _, at := range append(by, to) {
		all += math.Hypot(at.x-from.x, at.y-from.y)
		from = at
	}
	return all
}
