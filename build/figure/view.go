package figure

// View is the side from which a van is looked at.
type View uint8

// The views. Left and right are as one looks forward.
const (
	FromLeft View = iota
	FromRight
	FromFront
	FromRear
	FromAbove
)

// Views lists all of them, in the order of a walk round the van.
func Views() []View { return []View{FromFront, FromRight, FromRear, FromLeft, FromAbove} }

// XY is a place on a view in metres: from its left edge, and down from its top.
type XY struct{ X, Y float64 }

// Shape is a line, an area, or a circle round its one point.
type Shape struct {
	Class  string // hull, line, wheel
	Points []XY
	Closed bool
	Radius float64 // m, 0 for no circle
}

// Sketch is a view of a van as shapes in metres, for whatever draws it.
type Sketch struct {
	Wide, High float64
	Shapes     []Shape
}

// Shares of a body that its spec does not state, as one sees them from the side.
// From looking at many vans; common practice.
const (
	clearance   = 0.32 // m, from the ground to the sill
	wheelRadius = 0.34 // m
	usualHeight = 2.8  // m
	bonnetHigh  = 1.15 // m
	cabHigh     = 2.05 // m, the roof of a cab in front of a body
	doorHigh    = 1.35 // m, above the sill
)

// Look draws a van from a side.
func Look(b Body, view View) Sketch {
	if b.Height <= 0 {
		b.Height = usualHeight
	}
	switch view {
	case FromFront, FromRear:
		return b.end(view == FromFront)
	case FromAbove:
		return b.above()
	}
	s := b.side(view)
	if view == FromRight { // the front is on the right
		for i := range s.Shapes {
			for j := range s.Shapes[i].Points {
				s.Shapes[i].Points[j].X = s.Wide - s.Shapes[i].Points[j].X
			}
		}
	}
	return s
}

// sketcher gathers shapes; heights are given from the ground.
type sketcher struct {
	Sketch
}

func (s *sketcher) shape(class string, closed bool, points ...XY) {
	for i := range points {
		points[i].Y = s.High - points[i].Y
	}
	s.Shapes = append(s.Shapes, Shape{Class: class, Points: points, Closed: closed})
}

func (s *sketcher) circle(class string, x, y, radius float64) {
	s.Shapes = append(s.Shapes, Shape{Class: class, Points: []XY{{x, s.High - y}}, Radius: radius})
}

func (s *sketcher) box(class string, left, low, wide, high float64) {
	s.shape(class, true, XY{left, low}, XY{left + wide, low}, XY{left + wide, low + high}, XY{left, low + high})
}

// axles are how far the wheels are from the front.
func (b Body) axles() []float64 {
	front := b.FrontOverhang
	if front <= 0 {
		front = usualOverhang
	}
	return []float64{min(front, b.Length-wheelRadius), min(front+b.Wheelbase, b.Length-wheelRadius)}
}

// side draws a side with the front on the left.
func (b Body) side(view View) Sketch {
	s := &sketcher{Sketch{Wide: b.Length, High: b.Height}}
	s.shape("hull", true, b.profile()...)
	if b.Kind != "integrated" {
		s.shape("line", true, XY{1.05, 1.2}, XY{1.75, 1.2}, XY{1.75, 1.8}, XY{1.45, 1.8}) // window of the cab door
	}
	s.shape("line", false, XY{1, clearance}, XY{1, 1.2}, XY{1.75, 1.2}, XY{1.75, clearance}) // cab door
	if (view == FromLeft && b.Door == Left) || (view == FromRight && b.Door == Right) {
		along := min(max(b.DoorAlong, doorWide/2), b.Length-doorWide/2)
		high := min(clearance+doorHigh+0.4, b.Height-0.2) - clearance
		s.box("line", along-doorWide/2, clearance, doorWide, high)
		s.box("line", along-doorWide/4, clearance+high*0.6, doorWide/2, high*0.28)
		s.circle("wheel", along+doorWide*0.36, clearance+high*0.45, 0.04)
	}
	for _, axle := range b.axles() {
		s.circle("wheel", axle, wheelRadius, wheelRadius)
	}
	return s.Sketch
}

// profile is the outline from the side, the front on the left, heights from the
// ground.
func (b Body) profile() []XY {
	l, h := b.Length, b.Height
	low := min(cabHigh, h-0.15)
	rear := []XY{{l - 0.08, h}, {l, h - 0.15}, {l, clearance}, {0.05, clearance}}
	var front []XY
	switch b.Kind {
	case "integrated":
		front = []XY{{0, 0.6}, {0.1, 1.2}, {0.5, h - 0.25}, {0.75, h}}
	case "over-cab":
		front = []XY{{0, 0.9}, {0.75, bonnetHigh}, {1.25, low - 0.1}, {0.8, low}, {0.75, min(low+0.3, h-0.05)}, {1.1, h}}
	case "low-profile":
		front = []XY{{0, 0.9}, {0.75, bonnetHigh}, {1.45, low}, {1.8, low}, {2.3, h}}
	default:
		front = []XY{{0, 0.9}, {0.75, bonnetHigh}, {1.5, h - 0.2}, {1.8, h}}
	}
	return append(front, rear...)
}

// end draws the front or the rear.
func (b Body) end(front bool) Sketch {
	s := &sketcher{Sketch{Wide: b.Width, High: b.Height}}
	w, h := b.Width, b.Height
	for _, x := range []float64{0.12, w - 0.12 - 0.24} {
		s.box("wheel", x, 0, 0.24, clearance+0.1)
	}
	s.shape("hull", true, XY{0, clearance}, XY{w, clearance}, XY{w, h - 0.2}, XY{w - 0.15, h}, XY{0.15, h}, XY{0, h - 0.2})
	middle := w / 2
	lamp := 0.16
	s.box("line", 0.1, 0.75, lamp, 0.22)
	s.box("line", w-0.1-lamp, 0.75, lamp, 0.22)
	s.box("line", middle-0.26, 0.5, 0.52, 0.12) // number plate
	switch {
	case front:
		top := min(cabHigh-0.1, h-0.3)
		s.shape("line", true, XY{0.18, 1.2}, XY{w - 0.18, 1.2}, XY{w - 0.34, top}, XY{0.34, top})
		if b.Kind == "low-profile" || b.Kind == "over-cab" {
			s.shape("line", false, XY{0, top + 0.12}, XY{w, top + 0.12})
		}
	case b.Door == Back || b.Kind == "panel-van":
		s.shape("line", false, XY{middle, clearance}, XY{middle, h - 0.15})
		s.box("line", 0.25, 1.3, middle-0.4, min(0.6, h-1.6))
		s.box("line", middle+0.15, 1.3, middle-0.4, min(0.6, h-1.6))
		s.circle("wheel", middle+0.1, 1.05, 0.04)
	default:
		s.box("line", middle-0.5, 1.4, 1, min(0.5, h-1.7))
	}
	return s.Sketch
}

// above draws the roof with the front up.
func (b Body) above() Sketch {
	s := Sketch{Wide: b.Width, High: b.Length}
	w, l, in := b.Width, b.Length, 0.0
	if b.Kind == "low-profile" || b.Kind == "over-cab" {
		in = w * (1 - cabWide) / 2
	}
	hull := []XY{{in, 0.4}, {in + 0.3, 0}, {w - in - 0.3, 0}, {w - in, 0.4}}
	if in > 0 {
		hull = append(hull, XY{w - in, cabLong}, XY{w, cabLong + 0.2})
	}
	hull = append(hull, XY{w, l}, XY{0, l})
	if in > 0 {
		hull = append(hull, XY{0, cabLong + 0.2}, XY{in, cabLong})
	}
	depth := bonnetLong
	if b.Kind == "integrated" {
		depth = 0.3
	}
	s.Shapes = []Shape{
		{Class: "hull", Points: hull, Closed: true},
		{Class: "line", Points: []XY{{in + 0.15, depth + 0.15}, {w / 2, depth}, {w - in - 0.15, depth + 0.15}, {w - in - 0.25, depth + 0.45}, {in + 0.25, depth + 0.45}}, Closed: true},
	}
	return s
}
