package figure_test

import (
	"math/rand/v2"
	"testing"

	"doorpocket/build/figure"
)

// Whatever a van has on a side: each code stands once, over no other, within
// the drawing, and so does all that is drawn.
func TestCodesOnViewsNeverOverlap(t *testing.T) {
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 11))
		b := randomBody(r)
		b.Height = []float64{0, 2 + 2*r.Float64()}[r.IntN(2)]
		points := randomPoints(r, b)
		for i := range points {
			points[i].Up = 4 * r.Float64()
		}
		for _, view := range figure.Views() {
			s := read(t, figure.Elevation(b, view, points, "The <van>"))
			if len(s.plates) != len(points) {
				t.Fatalf("seed %d: %d codes for %d points", seed, len(s.plates), len(points))
			}
			for i, p := range s.plates {
				for _, other := range s.plates[:i] {
					if overlap(p.box, other.box) {
						t.Fatalf("seed %d, view %d: %s and %s overlap", seed, view, p.code, other.code)
					}
				}
				if p.left < 0 || p.top < 0 || p.right > s.width || p.bottom > s.height {
					t.Fatalf("seed %d, view %d: %s leaves the drawing", seed, view, p.code)
				}
			}
			if !s.inside(t) {
				t.Fatalf("seed %d, view %d of %+v", seed, view, b)
			}
		}
	}
}

// A view is to scale: as long, wide and high as the body, the wheels at its
// axles and on the ground, the door on its side alone and in its place.
func TestViewsAreToScale(t *testing.T) {
	b := figure.Body{Kind: "low-profile", Length: 7, Width: 2.3, Height: 2.9, Wheelbase: 4, FrontOverhang: 0.9, Door: figure.Left, DoorAlong: 3}
	for view, size := range map[figure.View][2]float64{
		figure.FromLeft: {7, 2.9}, figure.FromRight: {7, 2.9}, figure.FromFront: {2.3, 2.9}, figure.FromRear: {2.3, 2.9}, figure.FromAbove: {2.3, 7},
	} {
		s := figure.Look(b, view)
		if s.Wide != size[0] || s.High != size[1] {
			t.Errorf("view %d is %g by %g", view, s.Wide, s.High)
		}
		for _, shape := range s.Shapes {
			for _, p := range shape.Points {
				if p.X < -1e-9 || p.Y < -1e-9 || p.X > s.Wide+1e-9 || p.Y > s.High+1e-9 {
					t.Errorf("view %d: a %s at %v", view, shape.Class, p)
				}
			}
		}
	}
	wheels := func(view figure.View) (along []float64) {
		for _, shape := range figure.Look(b, view).Shapes {
			if shape.Class == "wheel" && shape.Radius > 0.2 {
				along = append(along, shape.Points[0].X)
				if low := shape.Points[0].Y + shape.Radius; low < 2.899 || low > 2.901 {
					t.Errorf("a wheel %g m below the roof, not on the ground", low)
				}
			}
		}
		return along
	}
	if got := wheels(figure.FromLeft); len(got) != 2 || got[0] != 0.9 || got[1] != 4.9 {
		t.Errorf("wheels at %v", got)
	}
	if got := wheels(figure.FromRight); len(got) != 2 || got[0] != 7-0.9 {
		t.Errorf("on the right the front is on the right: wheels at %v", got)
	}
	left, right := figure.Look(b, figure.FromLeft), figure.Look(b, figure.FromRight)
	if len(left.Shapes) != len(right.Shapes)+3 {
		t.Errorf("the door is not on its side alone: %d and %d shapes", len(left.Shapes), len(right.Shapes))
	}
}

// The side locator shows how high a thing is; what is inside has none.
func TestSideLocator(t *testing.T) {
	b := figure.Body{Kind: "panel-van", Length: 6, Width: 2.05, Height: 2.6, Wheelbase: 4}
	s := read(t, figure.SideLocator(b, figure.Point{Side: figure.Left, Along: 5, Up: 0.6}))
	if !s.inside(t) || len(s.find("halo")) != 1 {
		t.Error("the thing is not marked")
	}
	if figure.SideLocator(b, figure.Point{Side: figure.Within, Along: 5, Up: 0.6}) != "" {
		t.Error("what is inside is shown from outside")
	}
}
