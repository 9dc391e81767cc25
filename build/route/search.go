package route

import "math/rand/v2"

// search gives a good tour: the nearest free step each time, improved until no
// exchange of neighbouring stretches and no turning round of one helps; then
// shaken and improved again, as long as its effort lasts. The exchange of
// neighbouring stretches keeps their directions, so it can be checked against
// the constraints as it is built up: L. M. Gambardella and M. Dorigo, "An ant
// colony system hybridized with a new local search for the sequential ordering
// problem", INFORMS Journal on Computing 12, 2000.
func (p *plan) search(shakes int) []int {
	s := searcher{plan: p, tour: p.nearest(), stretch: newSet(len(p.steps)), effort: effort}
	s.improve()
	best, least := append([]int(nil), s.tour...), p.length(s.tour)
	random := rand.New(rand.NewPCG(1, 2)) // always the same
	for round := 0; round < shakes && s.effort > 0 && len(p.steps) > 3; round++ {
		s.shake(random)
		s.improve()
		if all := p.length(s.tour); all <= least {
			least = all
			copy(best, s.tour)
		} else {
			copy(s.tour, best)
		}
	}
	return best
}

// How long the search goes on: moves weighed, and times that the tour is
// shaken. Measured to keep a routine of thirty steps well below a millisecond.
const (
	effort = 40_000
	shakes = 200
	// fewShakes do where the exact search follows: a good tour lets it leave out
	// much.
	fewShakes = 5
	// longest is how long a stretch is at most that a shake swaps.
	longest = 10
)

// nearest takes of the free steps the nearest each time, and of equally near
// ones the first.
func (p *plan) nearest() []int {
	n := len(p.steps)
	waiting := make([]int, n)
	for i := range n {
		for j := range n {
			if p.later[i].has(j) {
				waiting[j]++
			}
		}
	}
	tour := make([]int, 0, n)
	for here := n; len(tour) < n; {
		next := -1
		for i := range n {
			if waiting[i] == 0 && (next < 0 || p.between(here, i) < p.between(here, next)) {
				next = i
			}
		}
		waiting[next] = -1
		tour = append(tour, next)
		for j := range n {
			if p.later[next].has(j) {
				waiting[j]--
			}
		}
		here = next
	}
	return tour
}

// searcher improves one tour.
type searcher struct {
	*plan
	tour    []int
	stretch set // what comes after any step of the stretch at work
	effort  int
	spare   []int
}

// at is the step at a position; the one before the first is where one begins.
func (s *searcher) at(i int) int {
	if i < 0 {
		return len(s.steps)
	}
	return s.tour[i]
}

// leg is the walk between positions; none leads on from the end.
func (s *searcher) leg(from, to int) int {
	if to >= len(s.tour) {
		return 0
	}
	return s.between(s.at(from), s.tour[to])
}

func (s *searcher) improve() {
	for better := true; better && s.effort > 0; {
		better = false
		for i := range s.tour {
			for s.exchangeFrom(i) || s.turnFrom(i) {
				better = true
			}
		}
	}
}

// exchangeFrom swaps the stretches [i, j) and [j, k) for the first j and k that
// shorten the tour.
func (s *searcher) exchangeFrom(i int) bool {
	n := len(s.tour)
	s.stretch.clear()
	for j := i + 1; j < n; j++ {
		s.stretch.join(s.later[s.tour[j-1]])
		before, first := s.at(i-1), s.tour[i]
		lead := s.between(before, s.tour[j])
		cut := s.leg(i-1, i) + s.leg(j-1, j)
		for k := j + 1; k <= n && !s.stretch.has(s.tour[k-1]); k++ {
			s.effort--
			joined := lead + s.between(s.tour[k-1], first)
			old := cut
			if k < n {
				joined += s.between(s.tour[j-1], s.tour[k])
				old += s.between(s.tour[k-1], s.tour[k])
			}
			if joined < old {
				s.swap(i, j, k)
				return true
			}
		}
	}
	return false
}

// turnFrom turns the stretch [i, k) round for the first k that shortens the
// tour.
func (s *searcher) turnFrom(i int) bool {
	s.stretch.clear()
	s.stretch.join(s.later[s.tour[i]])
	for k := i + 2; k <= len(s.tour) && !s.stretch.has(s.tour[k-1]); k++ {
		s.effort--
		last := s.tour[k-1]
		joined, old := s.between(s.at(i-1), last), s.leg(i-1, i)
		if k < len(s.tour) {
			joined += s.between(s.tour[i], s.tour[k])
			old += s.between(last, s.tour[k])
		}
		if joined < old {
			for a, b := i, k-1; a < b; a, b = a+1, b-1 {
				s.tour[a], s.tour[b] = s.tour[b], s.tour[a]
			}
			return true
		}
		s.stretch.join(s.later[last])
	}
	return false
}

func (s *searcher) swap(i, j, k int) {
	s.spare = append(append(s.spare[:0], s.tour[j:k]...), s.tour[i:j]...)
	copy(s.tour[i:k], s.spare)
}

// shake swaps neighbouring stretches that may be swapped, a few times, whatever
// it costs.
func (s *searcher) shake(random *rand.Rand) {
	n := len(s.tour)
	for range 2 {
		i := random.IntN(n - 1)
		j := i + 1 + random.IntN(min(longest, n-1-i))
		s.stretch.clear()
		for _, at := range s.tour[i:j] {
			s.stretch.join(s.later[at])
		}
		k := j
		for end := j + 1 + random.IntN(min(longest, n-j)); k < end && !s.stretch.has(s.tour[k]); k++ {
		}
		if k > j {
			s.swap(i, j, k)
		}
	}
}
