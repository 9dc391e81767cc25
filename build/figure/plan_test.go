package figure_test

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"doorpocket/build/figure"
)

var update = flag.Bool("update", false, "rewrite the golden drawing")

var words = figure.Words{Title: "Plan of Rowan", Front: "Front", Left: "Left", Right: "Right"}

var (
	kinds = []string{"panel-van", "low-profile", "over-cab", "integrated", ""}
	sides = []figure.Side{figure.Within, figure.Left, figure.Right, figure.Nose, figure.Back, figure.Roof, figure.Under}
)

// randomBody is a van of any kind and size that specs allow.
func randomBody(r *rand.Rand) figure.Body {
	length := 3 + 11*r.Float64()
	return figure.Body{
		Kind: kinds[r.IntN(len(kinds))], Length: length, Width: 1.5 + 1.2*r.Float64(), Wheelbase: 2 + 6*r.Float64(),
		FrontOverhang: []float64{0, 0.95}[r.IntN(2)], LeftHandDrive: r.IntN(2) == 0,
		Door: []figure.Side{figure.Left, figure.Right, figure.Back}[r.IntN(3)], DoorAlong: length * r.Float64(),
	}
}

// randomPoints are up to forty points; some sets crowd on few sides or spots.
func randomPoints(r *rand.Rand, b figure.Body) []figure.Point {
	from := sides
	if r.IntN(2) == 0 {
		from = []figure.Side{sides[r.IntN(len(sides))], sides[r.IntN(len(sides))]}
	}
	crowd := r.IntN(4) == 0
	points := make([]figure.Point, r.IntN(41))
	for i := range points {
		along := b.Length * r.Float64()
		if crowd {
			along = b.Length * 0.5
		}
		points[i] = figure.Point{
			Code: fmt.Sprintf("X%d", i), Title: "A <thing> & \"more\"", Side: from[r.IntN(len(from))],
			Along: along, Across: b.Width * r.Float64(), Known: r.IntN(2) == 0,
		}
		if r.IntN(3) > 0 {
			points[i].Href = "../X/index.html?a=1&b=\"2\""
		}
	}
	return points
}

// Whatever a van has: every plate is there once, large enough for a thumb, on
// its side of the van, over no other and within the drawing.
func TestPlatesNeverOverlap(t *testing.T) {
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 7))
		b := randomBody(r)
		points := randomPoints(r, b)
		text := figure.Plan(b, points, words)
		if text != figure.Plan(b, points, words) {
			t.Fatalf("seed %d: two drawings of one van differ", seed)
		}
		s := read(t, text)
		if !s.inside(t) || !checkPlates(t, s, points) {
			t.Fatalf("seed %d: %+v\n%+v", seed, b, points)
		}
	}
}

func checkPlates(t *testing.T, s svg, points []figure.Point) bool {
	t.Helper()
	if len(s.plates) != len(points) {
		t.Errorf("%d plates for %d points", len(s.plates), len(points))
		return false
	}
	for i, p := range s.plates {
		if p.right-p.left < 43.99 || p.bottom-p.top < 43.99 {
			t.Errorf("plate %s is too small to tap", p.code)
			return false
		}
		for _, other := range s.plates[:i] {
			if overlap(p.box, other.box) {
				t.Errorf("plates %s and %s overlap", p.code, other.code)
				return false
			}
		}
	}
	return checkSides(t, s, points)
}

// checkSides looks whether each plate stands where its point is: beside the
// body, in front of it, behind it, or within its width.
func checkSides(t *testing.T, s svg, points []figure.Point) bool {
	t.Helper()
	hull := s.hull(t)
	for _, point := range points {
		i := slices.IndexFunc(s.plates, func(p plate) bool { return p.code == point.Code })
		if i < 0 {
			t.Errorf("%s is missing", point.Code)
			return false
		}
		p := s.plates[i]
		if p.title != point.Code+" "+point.Title || p.href != point.Href {
			t.Errorf("%s is %q to %q", p.code, p.title, p.href)
			return false
		}
		right := map[figure.Side]bool{
			figure.Left: p.right <= hull.left, figure.Right: p.left >= hull.right,
			figure.Nose: p.bottom <= hull.top, figure.Back: p.top >= hull.bottom,
		}
		ok, outside := right[point.Side]
		if !outside {
			ok = p.left >= hull.left && p.right <= hull.right
		}
		if !ok {
			t.Errorf("%s of side %d stands at %v, the body at %v", p.code, point.Side, p.box, hull)
			return false
		}
	}
	return true
}

// Plates of one side stand in the order in which one meets their things on the
// way from front to rear.
func TestPlatesKeepTheOrderAlong(t *testing.T) {
	b := figure.Body{Kind: "low-profile", Length: 7, Width: 2.3, Wheelbase: 4}
	points := []figure.Point{
		{Code: "A", Side: figure.Left, Along: 5}, {Code: "B", Side: figure.Left, Along: 4.9},
		{Code: "C", Side: figure.Left, Along: 0.2}, {Code: "D", Side: figure.Left, Along: 6.9},
	}
	s := read(t, figure.Plan(b, points, words))
	slices.SortFunc(s.plates, func(a, b plate) int { return int(a.top - b.top) })
	var order string
	for _, p := range s.plates {
		order += p.code
	}
	if order != "CBAD" {
		t.Errorf("from front to rear %s", order)
	}
}

// A plate that had to move has a line to the spot it stands for.
func TestSpotsAreWhereThingsAre(t *testing.T) {
	b := figure.Body{Kind: "panel-van", Length: 6, Width: 2, Wheelbase: 3.5}
	s := read(t, figure.Plan(b, []figure.Point{{Code: "A", Side: figure.Right, Along: 3}}, words))
	hull := s.hull(t)
	spot := s.find("spot")[0]
	if x, y := spot.number(t, "cx"), spot.number(t, "cy"); x != hull.right || y != (hull.top+hull.bottom)/2 {
		t.Errorf("spot at %v %v, want the middle of the right side of %v", x, y, hull)
	}
	line, _ := s.find("leader")[0].bounds(t)
	x, y := s.plates[0].middle()
	if line.right != x || line.left != hull.right || line.top != y {
		t.Errorf("the line %v does not lead from the plate %v to the spot", line, s.plates[0])
	}
}

func TestRoofAndUnderLookDifferent(t *testing.T) {
	b := figure.Body{Kind: "panel-van", Length: 6, Width: 2, Wheelbase: 3.5}
	s := read(t, figure.Plan(b, []figure.Point{
		{Code: "A", Side: figure.Roof, Along: 1}, {Code: "B", Side: figure.Under, Along: 3}, {Code: "C", Side: figure.Within, Along: 5},
	}, words))
	got := map[string]string{}
	for _, p := range s.plates {
		got[p.code] = p.kind
	}
	if got["A"] != "roof" || got["B"] != "under" || got["C"] != "" {
		t.Errorf("kinds %v", got)
	}
}

// The steering wheel is on its side, and so is the door.
func TestSteeringAndDoorSides(t *testing.T) {
	for _, kind := range kinds {
		for _, left := range []bool{false, true} {
			for _, door := range []figure.Side{figure.Left, figure.Right, figure.Back} {
				b := figure.Body{Kind: kind, Length: 6.4, Width: 2.2, Wheelbase: 3.8, LeftHandDrive: left, Door: door, DoorAlong: 4}
				s := read(t, figure.Plan(b, nil, words))
				hull := s.hull(t)
				middle, _ := hull.middle()
				wheel := s.find("line")
				steering := wheel[slices.IndexFunc(wheel, func(e element) bool { return e.name == "circle" })]
				if x := steering.number(t, "cx"); (x < middle) != left || x == middle {
					t.Errorf("%s, left-hand drive %v: steering wheel at %v of %v", kind, left, x, hull)
				}
				gap, _ := s.find("gap")[0].bounds(t)
				right := map[figure.Side]bool{
					figure.Left:  gap.left == hull.left && gap.right == hull.left,
					figure.Right: gap.left == hull.right && gap.right == hull.right,
					figure.Back:  gap.top == hull.bottom && gap.bottom == hull.bottom,
				}
				if !right[door] {
					t.Errorf("%s: the door on side %d is at %v of %v", kind, door, gap, hull)
				}
			}
		}
	}
}

func TestLocator(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 3))
		b := randomBody(r)
		for _, p := range append(randomPoints(r, b), figure.Point{Side: figure.Left}, figure.Point{Side: figure.Back}) {
			s := read(t, figure.Locator(b, p, `Right & "rear" <half>`))
			if !s.inside(t) {
				t.Fatalf("seed %d: %+v %+v", seed, b, p)
			}
			if n := len(s.find("spot")); n != 1 || len(s.plates) > 0 {
				t.Fatalf("%d spots", n)
			}
			if got := s.elements[0].attrs["aria-label"]; got != `Right & "rear" <half>` {
				t.Fatalf("label %q", got)
			}
		}
	}
}

// The drawing of one van, to be looked at when it changes.
func TestGoldenPlan(t *testing.T) {
	b := figure.Body{Kind: "low-profile", Length: 6.96, Width: 2.3, Wheelbase: 3.8, FrontOverhang: 0.95, Door: figure.Left, DoorAlong: 4.1}
	text := figure.Plan(b, []figure.Point{
		{Code: "G1", Title: "Gas locker", Href: "G1/index.html", Side: figure.Left, Along: 5.1},
		{Code: "G2", Title: "Gas taps", Href: "G2/index.html", Along: 4.8, Across: 0.5, Known: true},
		{Code: "W1", Title: "Fresh water filler", Href: "W1/index.html", Side: figure.Right, Along: 5.3},
		{Code: "W2", Title: "Waste tap", Href: "W2/index.html", Side: figure.Under, Along: 4.4, Across: 1.6, Known: true},
		{Code: "E1", Title: "Hook-up inlet", Href: "E1/index.html", Side: figure.Right, Along: 5.5},
		{Code: "R1", Title: "Rooflight", Href: "R1/index.html", Side: figure.Roof, Along: 3.6},
		{Code: "V1", Title: "Bonnet", Side: figure.Nose},
		{Code: "V2", Title: "Cycle rack", Href: "V2/index.html", Side: figure.Back},
	}, words)
	name := filepath.Join("testdata", "plan.svg")
	if *update {
		if err := os.WriteFile(name, []byte(text+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if text+"\n" != string(want) {
		t.Error("the drawing changed; look at it, then run with -update")
	}
}
