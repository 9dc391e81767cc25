package route

import (
	"errors"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// body is six metres long and two wide, with the door two metres from the
// front on the right.
var body = Body{Length: 6, Width: 2, Door: Place{Right, 2}}

func TestMetres(t *testing.T) {
	for _, c := range []struct {
		from, to Place
		want     float64
	}{
		{Place{Right, 1}, Place{Right, 1}, 0},
		{Place{Right, 1}, Place{Right, 5}, 4},
		{Place{Left, 1}, Place{Left, 5}, 4},
		{Place{Right, 1}, Place{Left, 1}, 1 + 2 + 1}, // round the front
		{Place{Right, 5}, Place{Left, 5}, 1 + 2 + 1}, // round the rear
		{Place{Right, 3}, Place{Left, 3}, 3 + 2 + 3}, // as far either way
		{Place{Zone: Front}, Place{Zone: Rear}, 1 + 6 + 1},
		{Place{Zone: Front}, Place{Right, 2}, 1 + 2},
		{Place{Right, 9}, Place{Right, 6}, 0},  // behind the rear is at the rear
		{Place{Right, -1}, Place{Right, 0}, 0}, // before the front at the front
		{Place{Inside, 1}, Place{Inside, 5}, 4},
		{Place{Inside, 5}, Place{Right, 2}, 3 + entry}, // to the door and out
		{Place{Inside, 5}, Place{Right, 4}, 3 + entry + 2},
		{Place{}, Place{Left, 4}, anywhere},
		{Place{Inside, 3}, Place{}, anywhere},
		{Place{}, Place{}, anywhere},
	} {
		if got := body.Metres(c.from, c.to); got != c.want {
			t.Errorf("from %+v to %+v: %g m, not %g", c.from, c.to, got, c.want)
		}
		if back := body.Metres(c.to, c.from); back != c.want {
			t.Errorf("from %+v to %+v: %g m back, %g m there", c.to, c.from, back, c.want)
		}
	}
}

// random is a place anywhere on the van.
func random(r *rand.Rand) Place { return Place{Zone(r.IntN(6)), r.Float64() * body.Length} }

// No way round is longer than by a third place, one's own place is no way, and
// none is longer than half the way round, in and out again.
func TestMetresIsADistance(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		a, b, c := random(r), random(r), random(r)
		if a.Zone == Anywhere || b.Zone == Anywhere || c.Zone == Anywhere {
			continue
		}
		if direct, by := body.Metres(a, c), body.Metres(a, b)+body.Metres(b, c); direct > by+1e-9 {
			t.Fatalf("%+v to %+v: %g m, by %+v %g m", a, c, direct, b, by)
		}
		if far := body.Metres(a, b); far > body.Length+body.Width+2*body.Length+2*entry {
			t.Fatalf("%+v to %+v: %g m", a, b, far)
		}
	}
}

func TestOrder(t *testing.T) {
	right := func(along float64) Place { return Place{Right, along} }
	for _, c := range []struct {
		name  string
		begin Place
		steps []Step
		want  []int
	}{
		{"nothing to do", Place{}, nil, []int{}},
		{"the nearest first", right(0), []Step{{Place: right(5)}, {Place: right(1)}, {Place: right(3)}}, []int{1, 2, 0}},
		{"from the other end", right(6), []Step{{Place: right(5)}, {Place: right(1)}, {Place: right(3)}}, []int{0, 2, 1}},
		{"equally near: as listed", right(3), []Step{{Place: right(4)}, {Place: right(2)}}, []int{0, 1}},
		{"what must come before comes before", right(0), []Step{{Place: right(1), After: []int{1}}, {Place: right(5)}}, []int{1, 0}},
		{"a chain against the walk", right(0), []Step{{Place: right(1), After: []int{1}}, {Place: right(2), After: []int{2}}, {Place: right(3)}}, []int{2, 1, 0}},
		{"without a place, before one goes anywhere", right(0), []Step{{Place: right(5)}, {Place: Place{}}, {Place: right(0.5)}}, []int{1, 2, 0}},
		{"a step without a place moves nobody", right(0), []Step{{Place: Place{}}, {Place: right(5)}, {Place: right(1)}}, []int{0, 2, 1}},
		{"two waits for one", right(0), []Step{{Place: right(1), After: []int{1, 2}}, {Place: right(2)}, {Place: right(4)}}, []int{1, 2, 0}},
		{"the same wait twice", right(0), []Step{{Place: right(1), After: []int{1, 1}}, {Place: right(2)}}, []int{1, 0}},
	} {
		got, err := Order(body, c.begin, c.steps)
		if err != nil || !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, %v, want %v", c.name, got, err, c.want)
		}
	}
}

// A ring is told by the names of its steps and of no others.
func TestCycle(t *testing.T) {
	for _, c := range []struct {
		name  string
		steps []Step
		want  string
	}{
		{"itself", []Step{{ID: "a", After: []int{0}}}, "a waits for a"},
		{"two", []Step{{ID: "a", After: []int{1}}, {ID: "b", After: []int{0}}}, "a waits for b waits for a"},
		{"behind a way in", []Step{{ID: "in", After: []int{1}}, {ID: "a", After: []int{2}}, {ID: "b", After: []int{3}}, {ID: "c", After: []int{1}}, {ID: "free"}}, "a waits for b waits for c waits for a"},
	} {
		_, err := Order(body, Place{}, c.steps)
		var ring *CycleError
		if !errors.As(err, &ring) || err.Error() != "steps wait for each other: "+c.want {
			t.Errorf("%s: %v, want %s", c.name, err, c.want)
			continue
		}
		for i, step := range ring.Steps {
			next := ring.Steps[(i+1)%len(ring.Steps)]
			if !slices.Contains(c.steps[step].After, next) || c.steps[step].ID != ring.IDs[i] {
				t.Errorf("%s: step %d does not wait for %d", c.name, step, next)
			}
		}
	}
}

// Whatever the steps, each is done once and after what it waits for.
func TestOrderOfManySteps(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		steps := make([]Step, r.IntN(30))
		for i := range steps {
			steps[i].Place = random(r)
			for before := range i {
				if r.IntN(8) == 0 {
					steps[i].After = append(steps[i].After, before)
				}
			}
		}
		begin := random(r)
		order, err := Order(body, begin, steps)
		if err != nil {
			t.Fatal(err)
		}
		again, _ := Order(body, begin, steps)
		if !slices.Equal(order, again) {
			t.Fatal("another order for the same steps")
		}
		if sorted := slices.Sorted(slices.Values(order)); len(sorted) != len(steps) || len(slices.Compact(sorted)) != len(steps) {
			t.Fatalf("%d steps in an order of %v", len(steps), order)
		}
		for at, i := range order {
			free := func(j int) bool {
				return !slices.ContainsFunc(steps[j].After, func(before int) bool { return !slices.Contains(order[:at], before) })
			}
			if !free(i) {
				t.Fatalf("step %d stands before what it waits for in %v", i, order)
			}
		}
	}
}

func TestCycleErrorReadsWell(t *testing.T) {
	e := &CycleError{Steps: []int{4, 2}, IDs: []string{"gas:close", "heater:off"}}
	if text := e.Error(); !strings.HasSuffix(text, "gas:close waits for heater:off waits for gas:close") {
		t.Error(text)
	}
}
