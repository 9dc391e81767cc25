package figure_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"doorpocket/build/figure"
)

// dots are the middles of the numbered dots of a walk, by the order of the stops.
func dots(t *testing.T, s svg) []box {
	t.Helper()
	var all []box
	for _, m := range strings.Split(strings.TrimPrefix(s.find("stops")[0].attrs["d"], "M"), "M") {
		if m == "" {
			continue
		}
		n := numbers(t, strings.TrimSuffix(m, "h0"))
		all = append(all, box{n[0] - 9, n[1] - 9, n[0] + 9, n[1] + 9})
	}
	return all
}

// Whatever the walk: no two numbers overlap, each stands in the drawing and on
// its side of the van, and the line visits all of them in order.
func TestWalkNumbersNeverOverlap(t *testing.T) {
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 3))
		b := randomBody(r)
		var stops []figure.Stop
		for i, p := range append(randomPoints(r, b), randomPoints(r, b)...) {
			stops = append(stops, figure.Stop{Point: p, Number: i + 1})
		}
		text := figure.Walk(b, stops, "The walk & its \"stops\"")
		s := read(t, text)
		all := dots(t, s)
		if len(all) != len(stops) || strings.Contains(text, "NaN") {
			t.Fatalf("seed %d: %d numbers for %d stops", seed, len(all), len(stops))
		}
		hull := s.hull(t)
		for i, d := range all {
			for j, other := range all[:i] {
				if overlap(d, other) {
					t.Fatalf("seed %d: numbers %d and %d overlap", seed, i+1, j+1)
				}
			}
			x, y := d.middle()
			if d.left < 0 || d.top < 0 || d.right > s.width || d.bottom > s.height || !onSide(stops[i].Side, x, y, hull) {
				t.Fatalf("seed %d: number %d of side %d at %g, %g of %v", seed, i+1, stops[i].Side, x, y, hull)
			}
		}
		checkWay(t, s, all)
	}
}

func onSide(side figure.Side, x, y float64, hull box) bool {
	switch side {
	case figure.Left, figure.Under:
		return x < hull.left
	case figure.Right:
		return x > hull.right
	case figure.Nose:
		return y < hull.top
	case figure.Back:
		return y > hull.bottom
	}
	return x > hull.left && x < hull.right
}

func checkWay(t *testing.T, s svg, all []box) {
	t.Helper()
	n := numbers(t, letters.ReplaceAllString(s.find("way")[0].attrs["d"], " "))
	next := 0
	for i := 0; i+1 < len(n) && next < len(all); i += 2 {
		if x, y := all[next].middle(); math.Hypot(x-n[i], y-n[i+1]) < 0.01 {
			next++
		}
	}
	if next != len(all) {
		t.Fatalf("the line comes to %d of %d stops", next, len(all))
	}
}

// From inside to outside the line goes through the door, not through a wall.
func TestWalkUsesTheDoor(t *testing.T) {
	b := figure.Body{Kind: "panel-van", Length: 6, Width: 2, Wheelbase: 3.8, Door: figure.Right, DoorAlong: 2}
	stops := []figure.Stop{
		{Number: 1, Point: figure.Point{Side: figure.Within, Along: 5, Across: 0.5, Known: true}},
		{Number: 4, Point: figure.Point{Side: figure.Back, Along: 6}},
		{Number: 5, Point: figure.Point{Side: figure.Left, Along: 3}},
	}
	text := figure.Walk(b, stops, "The walk")
	s := read(t, text)
	n := numbers(t, letters.ReplaceAllString(s.find("way")[0].attrs["d"], " "))
	hull := s.hull(t)
	crossed := false
	for i := 2; i+1 < len(n); i += 2 {
		in := n[i-2] > hull.left && n[i-2] < hull.right && n[i-1] > hull.top && n[i-1] < hull.bottom
		out := !(n[i] > hull.left && n[i] < hull.right && n[i+1] > hull.top && n[i+1] < hull.bottom)
		if in && out {
			crossed = true
			if n[i-2] < hull.right-9 || n[i-1] != n[i+1] {
				t.Errorf("the wall is crossed at %g, %g", n[i-2], n[i-1])
			}
		}
	}
	if !crossed {
		t.Error("nobody leaves the van")
	}
	for _, number := range []int{1, 4, 5} {
		if !strings.Contains(text, ">"+strconv.Itoa(number)+"</tspan>") {
			t.Errorf("number %d is missing", number)
		}
	}
}
