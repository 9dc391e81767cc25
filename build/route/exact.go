package route

import (
	"math/bits"
	"slices"
)

// state is a point of the exact search: what is done, and where one stands.
type state struct {
	done uint64
	here uint8
}

// reached is the shortest way known to a state.
type reached struct {
	state
	walked, from int // from: the state before, -1 at the beginning
	step         uint8
}

// maxExact is how many steps the exact search can hold.
const maxExact = 63

// exact finds the shortest tour by dynamic programming over the sets of steps
// that can be done first (M. Held and R. M. Karp, "A dynamic programming
// approach to sequencing problems", Journal of the SIAM 10, 1962, restricted to
// sets that the constraints allow). A step of the thing one stands at is taken
// at once when it is free, which cannot make a tour longer. What cannot beat
// the known tour is left out: if nothing can, the known tour is the answer.
// It must not be asked for more than maxExact steps.
func (p *plan) exact(known []int) []int {
	n := len(p.steps)
	if n == 0 {
		return known
	}
	e := exactSearch{plan: p, index: map[state]int{}, layers: make([][]int, n+1), least: p.length(known), best: known}
	e.wants = make([]uint64, n)
	for i := range n {
		e.wants[i] = p.prior[i][0]
	}
	e.settle(reached{state: state{here: uint8(n)}, from: -1})
	for _, layer := range e.layers {
		for _, at := range layer {
			e.extend(at)
		}
	}
	return e.best
}

// exactSearch keeps the states by how much is done.
type exactSearch struct {
	*plan
	index  map[state]int
	all    []reached
	layers [][]int  // indexes into all, by how many steps are done
	wants  []uint64 // what must be done before each step
	least  int
	best   []int
}

// extend does each step that is free, or the one at hand alone.
func (e *exactSearch) extend(at int) {
	r := e.all[at]
	var free [maxExact]uint8
	count := 0
	for i := range e.steps {
		if r.done&(1<<i) != 0 || e.wants[i]&^r.done != 0 {
			continue
		}
		if e.between(int(r.here), i) == 0 {
			free[0], count = uint8(i), 1
			break
		}
		free[count] = uint8(i)
		count++
	}
	for _, i := range free[:count] {
		e.settle(reached{state: state{r.done | 1<<i, i}, walked: r.walked + e.between(int(r.here), int(i)), from: at, step: i})
	}
}

// settle keeps a state if it is reached by a shorter way than before and can
// still beat the best tour.
func (e *exactSearch) settle(r reached) {
	size := bits.OnesCount64(r.done)
	if size == len(e.steps) {
		if r.walked < e.least {
			e.least, e.best = r.walked, e.way(r)
		}
		return
	}
	if at, seen := e.index[r.state]; seen {
		if r.walked < e.all[at].walked {
			e.all[at] = r
		}
		return
	}
	if r.walked+e.atLeast(r.state) >= e.least {
		return
	}
	e.index[r.state] = len(e.all)
	e.layers[size] = append(e.layers[size], len(e.all))
	e.all = append(e.all, r)
}

// atLeast is a bound on what is still to walk: the least tree that joins where
// one stands and all that is not done.
func (e *exactSearch) atLeast(s state) int {
	var near [maxExact]int
	var open [maxExact]uint8
	left := 0
	for i := range e.steps {
		if s.done&(1<<i) == 0 {
			open[left], near[left] = uint8(i), e.between(int(s.here), i)
			left++
		}
	}
	tree := 0
	for left > 0 {
		next := 0
		for i := 1; i < left; i++ {
			if near[i] < near[next] {
				next = i
			}
		}
		tree += near[next]
		at := int(open[next])
		left--
		open[next], near[next] = open[left], near[left]
		for i := range left {
			if d := e.between(at, int(open[i])); d < near[i] {
				near[i] = d
			}
		}
	}
	return tree
}

// way follows a state back to the beginning.
func (e *exactSearch) way(r reached) []int {
	var tour []int
	for r.from >= 0 {
		tour = append(tour, int(r.step))
		r = e.all[r.from]
	}
	slices.Reverse(tour)
	return tour
}
