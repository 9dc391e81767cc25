// Package route orders the steps of a routine: constraints first, then the
// least walking, then the least waiting.
//
// It is the sequential ordering problem: the shortest open path that begins at
// a given place and respects which steps come before which (L. F. Escudero, "An
// inexact algorithm for the sequential ordering problem", European Journal of
// Operational Research 37, 1988). Short routines are ordered exactly, longer
// ones by a search that ends where no move of neighbours helps. The same steps
// always get the same order.
package route

import "slices"

// Step is one thing to do.
type Step struct {
	ID    string // names the step in a cycle
	Place Place
	Thing int     // steps of one thing, at one place, rather stand together
	After []int   // indexes of the steps that must come before
	Await []int   // those of them whose Wait must be over
	Wait  float64 // s, how long the steps that await it wait when it is done
}

// Order gives the order in which to do the steps, as indexes, for somebody who
// begins at a place. The error is a *CycleError.
func Order(body Body, begin Place, steps []Step) ([]int, error) {
	if cycle := findCycle(steps); cycle != nil {
		return nil, cycle
	}
	later := followers(steps)
	p := newPlan(body, begin, steps, later)
	tour := p.solve()
	order := make([]int, len(tour))
	for i, at := range tour {
		order[i] = p.steps[at]
	}
	return fillWaits(body, begin, steps, later, withLoose(steps, later, order)), nil
}

// plan is what the search works on: the steps that have a place, with the
// walks between them in millimetres. Whole numbers keep the order the same on
// every machine.
type plan struct {
	steps []int // indexes into the steps of the routine
	walk  []int // from*(n+1)+to; from = n is where one begins
	later []set // which of these steps come after each, at whatever remove
	prior []set
}

func newPlan(body Body, begin Place, steps []Step, later []set) *plan {
	p := &plan{}
	for i, s := range steps {
		if s.Place.Zone != Anywhere {
			p.steps = append(p.steps, i)
		}
	}
	n := len(p.steps)
	p.walk = make([]int, (n+1)*(n+1))
	p.later, p.prior = newSets(n), newSets(n)
	for i, from := range p.steps {
		for j, to := range p.steps {
			p.walk[i*(n+1)+j] = millimetres(body, steps[from], steps[to])
			if later[from].has(to) {
				p.later[i].add(j)
				p.prior[j].add(i)
			}
		}
		p.walk[n*(n+1)+i] = millimetres(body, Step{Place: begin, Thing: -1}, steps[from])
	}
	return p
}

// turn is what going from one thing to another at the same spot costs, in
// millimetres of walking: one looks for it. Our own estimate; it keeps the
// steps of a thing together where walking does not decide.
const turn = 200

func millimetres(body Body, from, to Step) int {
	if from.Thing == to.Thing && from.Place == to.Place {
		return 0
	}
	return int(body.Metres(from.Place, to.Place)*1000+0.5) + turn
}

// between is the walk from one step to another; n stands for the beginning.
func (p *plan) between(from, to int) int { return p.walk[from*(len(p.steps)+1)+to] }

// length is the walk of a whole tour.
func (p *plan) length(tour []int) int {
	all, here := 0, len(p.steps)
	for _, at := range tour {
		all += p.between(here, at)
		here = at
	}
	return all
}

// exactSteps is up to how many steps with a place are ordered exactly.
const exactSteps = 18

// solve gives a tour: the shortest there is where the steps are few enough to
// find it, or else a searched one.
func (p *plan) solve() []int {
	if len(p.steps) <= exactSteps {
		return p.exact(p.search(fewShakes))
	}
	return p.search(shakes)
}

// withLoose puts the steps without a place into an order of the others: each
// as soon as it is free, but not between two steps of one place unless the
// second waits for it.
func withLoose(steps []Step, later []set, placed []int) []int {
	order := make([]int, 0, len(steps))
	done := newSet(len(steps))
	take := func(i int) {
		done.add(i)
		order = append(order, i)
	}
	free := func(i int) bool {
		return !slices.ContainsFunc(steps[i].After, func(j int) bool { return !done.has(j) })
	}
	loose := func(wanted func(i int) bool) {
		for again := true; again; {
			again = false
			for i, s := range steps {
				if s.Place.Zone == Anywhere && !done.has(i) && wanted(i) && free(i) {
					take(i)
					again = true
				}
			}
		}
	}
	for at, i := range placed {
		if at == 0 || steps[placed[at-1]].Place != steps[i].Place {
			loose(func(int) bool { return true })
		}
		loose(func(l int) bool { return later[l].has(i) })
		take(i)
	}
	loose(func(int) bool { return true })
	return order
}
