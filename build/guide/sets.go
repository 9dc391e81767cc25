package guide

import (
	"math/bits"

	"doorpocket/build/route"
	"doorpocket/components"
)

// waits is which step waits for which, while constraints are added.
type waits struct {
	steps     []route.Step
	after     []indexSet // of a step: those it waits for
	followers []indexSet // of a step: those that wait for it
}

func newWaits(steps []route.Step) *waits {
	w := &waits{steps: steps, after: make([]indexSet, len(steps)), followers: make([]indexSet, len(steps))}
	for i := range steps {
		w.after[i], w.followers[i] = newIndexSet(len(steps)), newIndexSet(len(steps))
	}
	return w
}

// add lets step i wait for step j.
func (w *waits) add(i, j int) {
	if i != j {
		w.after[i].put(j)
		w.followers[j].put(i)
	}
}

// setAfter lets step i wait for a whole set. Steps of the set that wait for i
// themselves are left out: what a step says of itself outweighs a set.
func (w *waits) setAfter(i int, set string) {
	if !isSet(set) {
		return
	}
	later := reach(i, w.followers)
	for j := range w.steps {
		if inSet(set, w.steps[j]) && !later.has(j) {
			w.add(i, j)
		}
	}
}

// setBefore lets a whole set wait for step i, but for what i waits for.
func (w *waits) setBefore(i int, set string) {
	if !isSet(set) {
		return
	}
	earlier := reach(i, w.after)
	for j := range w.steps {
		if inSet(set, w.steps[j]) && !earlier.has(j) {
			w.add(j, i)
		}
	}
}

// list gives the steps with what each waits for.
func (w *waits) list() []route.Step {
	for i := range w.steps {
		w.steps[i].After = w.after[i].list()
	}
	return w.steps
}

func isSet(set string) bool {
	return set == components.SetAll || set == components.SetInside || set == components.SetOutside
}

// inSet reports whether a step belongs to a set that a constraint names: all
// steps, those inside, or those outside.
func inSet(set string, s route.Step) bool {
	switch set {
	case components.SetAll:
		return true
	case components.SetInside:
		return s.Place.Zone == route.Inside
	case components.SetOutside:
		return s.Place.Zone != route.Inside && s.Place.Zone != route.Anywhere
	}
	return false
}

// reach is the step itself and all that can be reached from it.
func reach(from int, next []indexSet) indexSet {
	seen := newIndexSet(len(next))
	seen.put(from)
	for queue := []int{from}; len(queue) > 0; queue = queue[1:] {
		for _, j := range next[queue[0]].list() {
			if !seen.has(j) {
				seen.put(j)
				queue = append(queue, j)
			}
		}
	}
	return seen
}

// indexSet is a set of small numbers, a bit each.
type indexSet []uint64

func newIndexSet(size int) indexSet { return make(indexSet, (size+63)/64) }

func (s indexSet) put(i int)      { s[i/64] |= 1 << (i % 64) }
func (s indexSet) has(i int) bool { return s[i/64]&(1<<(i%64)) != 0 }

// list gives the numbers in order.
func (s indexSet) list() []int {
	var all []int
	for k, word := range s {
		for ; word != 0; word &= word - 1 {
			all = append(all, k*64+bits.TrailingZeros64(word))
		}
	}
	return all
}
