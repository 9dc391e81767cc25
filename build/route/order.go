// Package route orders the steps of a routine: constraints first, then the
// least walking.
package route

import (
	"slices"
	"strings"
)

// Step is one thing to do.
type Step struct {
	ID    string // names the step in a cycle
	Place Place
	After []int // indexes of the steps that must come before
}

// CycleError tells that steps wait for each other.
type CycleError struct {
	Steps []int    // indexes, each waiting for the next and the last for the first
	IDs   []string // their names
}

func (e *CycleError) Error() string {
	return "steps wait for each other: " + strings.Join(append(slices.Clone(e.IDs), e.IDs[0]), " waits for ")
}

// Order gives the order in which to do the steps, as indexes, for somebody who
// begins at a place. Among the steps that are free it takes the nearest to
// where one stands, and of equally near ones the one that was listed first, so
// the order is always the same. The error is a *CycleError.
func Order(body Body, begin Place, steps []Step) ([]int, error) {
	waiting := make([]int, len(steps))
	followers := make([][]int, len(steps))
	for i, s := range steps {
		for _, before := range s.After {
			waiting[i]++
			followers[before] = append(followers[before], i)
		}
	}
	done := make([]bool, len(steps))
	order := make([]int, 0, len(steps))
	here := begin
	for len(order) < len(steps) {
		next := nearest(body, steps, here, func(i int) bool { return !done[i] && waiting[i] == 0 })
		if next < 0 {
			return nil, cycle(steps, done)
		}
		done[next] = true
		order = append(order, next)
		if steps[next].Place.Zone != Anywhere {
			here = steps[next].Place
		}
		for _, f := range followers[next] {
			waiting[f]--
		}
	}
	return order, nil
}

func nearest(body Body, steps []Step, here Place, free func(int) bool) int {
	best, least := -1, 0.0
	for i, s := range steps {
		if !free(i) {
			continue
		}
		if d := body.Metres(here, s.Place); best < 0 || d < least {
			best, least = i, d
		}
	}
	return best
}

// cycle finds one ring among the steps that never became free: following the
// waits from any of them must come back.
func cycle(steps []Step, done []bool) *CycleError {
	at := slices.Index(done, false)
	var path []int
	for !slices.Contains(path, at) {
		path = append(path, at)
		for _, before := range steps[at].After {
			if !done[before] {
				at = before
				break
			}
		}
	}
	e := &CycleError{Steps: path[slices.Index(path, at):]}
	for _, i := range e.Steps {
		e.IDs = append(e.IDs, steps[i].ID)
	}
	return e
}
