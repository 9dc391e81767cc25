package route

import "math"

// Zone says where round a van something is.
type Zone uint8

// The zones. Anywhere needs no walking: a step without a place.
const (
	Anywhere Zone = iota
	Inside
	Left
	Right
	Front
	Rear
)

// Place is where a step is done: Along metres from the front.
type Place struct {
	Zone  Zone
	Along float64
}

// Body is the van one walks round, in metres. The door is where one goes in.
type Body struct {
	Length, Width float64
	Door          Place
}

// entry is what stepping in or out of the van costs, in metres of walking:
// a step up, shoes, a door. Our own estimate.
const entry = 2.0

// anywhere is what a step without a place costs: less than a step away, so that
// it waits only for what is at hand. Our own choice.
const anywhere = 0.7

// Metres is the shortest way from one place to another: outside along the
// body and round its ends, inside through the habitation door.
func (b Body) Metres(from, to Place) float64 {
	switch {
	case from.Zone == Anywhere || to.Zone == Anywhere:
		return anywhere
	case from.Zone == Inside && to.Zone == Inside:
		return math.Abs(from.Along - to.Along)
	case from.Zone == Inside:
		return math.Abs(from.Along-b.Door.Along) + entry + b.outside(b.Door, to)
	case to.Zone == Inside:
		return b.outside(from, b.Door) + entry + math.Abs(b.Door.Along-to.Along)
	default:
		return b.outside(from, to)
	}
}

// outside is the shorter way round the rectangle of the body.
func (b Body) outside(from, to Place) float64 {
	round := 2 * (b.Length + b.Width)
	d := math.Abs(b.perimeter(from) - b.perimeter(to))
	return min(d, round-d)
}

// perimeter is how far round the body a place is, from the middle of the
// front by the right side.
func (b Body) perimeter(p Place) float64 {
	half := b.Width / 2
	along := min(max(p.Along, 0), b.Length)
	switch p.Zone {
	case Right:
		return half + along
	case Rear:
		return half + b.Length + half
	case Left:
		return half + b.Length + b.Width + (b.Length - along)
	default:
		return 0
	}
}
