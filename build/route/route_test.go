package route

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

var van = Body{Length: 7.2, Width: 2.3, Door: Place{Zone: Left, Along: 3.4}}

// randomSteps are steps of random things in random places, about a third of
// the pairs of neighbours in a hidden order constrained; dense constrains more.
func randomSteps(random *rand.Rand, n int, dense float64) []Step {
	zones := []Zone{Inside, Inside, Inside, Left, Right, Front, Rear, Anywhere}
	steps := make([]Step, n)
	hidden := random.Perm(n)
	var places []Place
	for range max(1, n*3/4) {
		places = append(places, Place{Zone: zones[random.IntN(len(zones))], Along: float64(random.IntN(72)) / 10})
	}
	for at, i := range hidden {
		thing := random.IntN(len(places))
		steps[i] = Step{ID: fmt.Sprint("step ", i), Thing: thing, Place: places[thing]}
		for _, before := range hidden[:at] {
			if random.Float64() < dense*2/float64(n) {
				steps[i].After = append(steps[i].After, before)
			}
		}
	}
	return steps
}

func planOf(steps []Step) *plan {
	return newPlan(van, van.Door, steps, followers(steps))
}

func checkFeasible(t *testing.T, steps []Step, order []int) {
	t.Helper()
	at := make([]int, len(steps))
	for i := range at {
		at[i] = -1
	}
	for i, s := range order {
		at[s] = i
	}
	if len(order) != len(steps) || slices.Contains(at, -1) {
		t.Fatalf("%v is no order of %d steps", order, len(steps))
	}
	for i, s := range steps {
		for _, before := range s.After {
			if at[before] > at[i] {
				t.Fatalf("step %d comes before step %d that it waits for, in %v", i, before, order)
			}
		}
	}
}

// Every order keeps the constraints, and is the same each time.
func TestOrderIsFeasibleAndSteady(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	for n := range 40 {
		for _, dense := range []float64{0.5, 2, 8} {
			steps := randomSteps(random, n, dense)
			for i := range steps {
				steps[i].Await = steps[i].After
				if random.IntN(6) == 0 {
					steps[i].Wait = float64(random.IntN(600))
				}
			}
			order, err := Order(van, van.Door, steps)
			if err != nil {
				t.Fatal(err)
			}
			checkFeasible(t, steps, order)
			again, _ := Order(van, van.Door, steps)
			if !slices.Equal(order, again) {
				t.Fatalf("%v, then %v", order, again)
			}
		}
	}
}

// shortest tries every feasible tour.
func shortest(p *plan) int {
	n := len(p.steps)
	best := 1 << 60
	var walk func(here, walked int, done uint64)
	walk = func(here, walked int, done uint64) {
		if walked >= best {
			return
		}
		if done == 1<<n-1 {
			best = walked
			return
		}
		for i := range n {
			if done&(1<<i) == 0 && p.prior[i][0]&^done == 0 {
				walk(i, walked+p.between(here, i), done|1<<i)
			}
		}
	}
	walk(n, 0, 0)
	return best
}

// The exact search finds what trying everything finds.
func TestExactIsTheShortest(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 1))
	for round := range 400 {
		p := planOf(randomSteps(random, 1+random.IntN(8), []float64{0, 0.5, 1.5, 4}[round%4]))
		if len(p.steps) == 0 {
			continue
		}
		best := p.exact(p.nearest())
		if want := shortest(p); p.length(best) != want {
			t.Fatalf("round %d: %d mm, the shortest is %d mm", round, p.length(best), want)
		}
	}
}

// How far the search stays from the exact answer, on random routines of sizes
// that the exact search can do. Those of real vans are easier.
func TestGapOfTheSearch(t *testing.T) {
	for _, n := range []int{8, 12, 16, 20, 24} {
		for _, dense := range []float64{0.3, 1, 3} {
			random := rand.New(rand.NewPCG(uint64(n), 5))
			var nearest, searched, all, exact, worst float64
			rounds := 30
			for range rounds {
				p := planOf(randomSteps(random, n, dense))
				tour := p.search(shakes)
				least := float64(p.length(p.exact(tour)))
				gap := float64(p.length(tour))/least - 1
				if gap < 0 {
					t.Fatalf("the search beats the exact answer by %.3f", -gap)
				}
				nearest += float64(p.length(p.nearest()))/least - 1
				searched += gap
				worst = max(worst, gap)
				all++
				if gap == 0 {
					exact++
				}
			}
			t.Logf("%2d steps, density %.1f: nearest first %5.1f %% longer, searched %.2f %% longer (worst %.2f %%), %.0f of %.0f the shortest",
				n, dense, 100*nearest/all, 100*searched/all, 100*worst, exact, all)
			if searched/all > 0.025 || exact < 0.75*all {
				t.Error("the search is too far from the shortest")
			}
		}
	}
}

func TestShortestCycle(t *testing.T) {
	steps := []Step{{ID: "a", After: []int{3}}, {ID: "b", After: []int{0}}, {ID: "c", After: []int{1}}, {ID: "d", After: []int{2}}, {ID: "e", After: []int{0, 5}}, {ID: "f", After: []int{4}}, {ID: "g"}}
	_, err := Order(van, van.Door, steps)
	var cycle *CycleError
	if !errors.As(err, &cycle) {
		t.Fatal(err)
	}
	if got := cycle.Error(); got != "steps wait for each other: e waits for f waits for e" {
		t.Error(got)
	}
	if _, err := Order(van, van.Door, []Step{{ID: "a", After: []int{0}}}); !errors.As(err, &cycle) || cycle.Error() != "steps wait for each other: a waits for a" {
		t.Error(err)
	}
	// Whoever only waits for a ring is not in it.
	if _, err := Order(van, van.Door, steps[:4]); !errors.As(err, &cycle) || len(cycle.Steps) != 4 {
		t.Error(err)
	}
}

// A step without a place does not tear apart what is done at one place.
func TestLooseSteps(t *testing.T) {
	here, there := Place{Inside, 1}, Place{Inside, 5}
	steps := []Step{
		{ID: "here 1", Place: here, Thing: 1},
		{ID: "anywhere", Thing: 2, After: []int{0}},
		{ID: "here 2", Place: here, Thing: 1},
		{ID: "there", Place: there, Thing: 3},
		{ID: "needed here", Thing: 4, After: []int{0}},
		{ID: "here 3", Place: here, Thing: 1, After: []int{4}},
	}
	order, err := Order(van, here, steps)
	if err != nil {
		t.Fatal(err)
	}
	if want := []int{0, 2, 4, 5, 1, 3}; !slices.Equal(order, want) {
		t.Errorf("got %v, want %v", order, want)
	}
}

// What must be waited for is begun early, and the time is used.
func TestWaitsAreFilled(t *testing.T) {
	at := func(along float64) Place { return Place{Inside, along} }
	steps := []Step{
		{ID: "near", Place: at(1), Thing: 1},
		{ID: "further", Place: at(2), Thing: 2},
		{ID: "start heater fan", Place: at(3), Thing: 3, Wait: 180},
		{ID: "master switch", Place: at(3.5), Thing: 4, After: []int{2}, Await: []int{2}},
		{ID: "beyond", Place: at(4), Thing: 5},
		{ID: "outside", Place: Place{Right, 6}, Thing: 6},
	}
	order, err := Order(van, at(0.9), steps)
	if err != nil {
		t.Fatal(err)
	}
	if slices.Index(order, 2) > 1 || slices.Index(order, 3) < 4 {
		t.Errorf("the wait is not used: %v", order)
	}
	// Nobody walks round the van to save a second.
	steps[2].Wait = 1
	if order, _ = Order(van, at(0.9), steps[:5]); !slices.Equal(order, []int{0, 1, 2, 3, 4}) {
		t.Errorf("a second of waiting changes the walk: %v", order)
	}
}

func BenchmarkOrder(b *testing.B) {
	for _, n := range []int{12, 30, 100} {
		for _, dense := range []float64{0.5, 2} {
			b.Run(fmt.Sprintf("%d steps density %.1f", n, dense), func(b *testing.B) {
				random := rand.New(rand.NewPCG(1, uint64(n)))
				var routines [][]Step
				for range 20 {
					routines = append(routines, randomSteps(random, n, dense))
				}
				for i := 0; b.Loop(); i++ {
					if _, err := Order(van, van.Door, routines[i%len(routines)]); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
