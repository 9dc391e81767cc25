package route

import (
	"slices"
	"strings"
)

// CycleError tells that steps wait for each other.
type CycleError struct {
	Steps []int    // indexes, each waiting for the next and the last for the first
	IDs   []string // their names
}

func (e *CycleError) Error() string {
	return "steps wait for each other: " + strings.Join(append(slices.Clone(e.IDs), e.IDs[0]), " waits for ")
}

// findCycle gives a shortest ring among steps that wait for each other, nil
// where every step can be done.
func findCycle(steps []Step) *CycleError {
	stuck := neverFree(steps)
	var shortest []int
	for i := range steps {
		if stuck[i] {
			if ring := ringThrough(steps, i); ring != nil && (shortest == nil || len(ring) < len(shortest)) {
				shortest = ring
			}
		}
	}
	if shortest == nil {
		return nil
	}
	e := &CycleError{Steps: shortest}
	for _, i := range shortest {
		e.IDs = append(e.IDs, steps[i].ID)
	}
	return e
}

// neverFree marks the steps that can never be done: those on a ring and those
// that wait for one.
func neverFree(steps []Step) []bool {
	waiting := make([]int, len(steps))
	next := make([][]int, len(steps))
	var free []int
	for i, s := range steps {
		waiting[i] = len(s.After)
		for _, before := range s.After {
			next[before] = append(next[before], i)
		}
		if waiting[i] == 0 {
			free = append(free, i)
		}
	}
	stuck := make([]bool, len(steps))
	for i := range stuck {
		stuck[i] = true
	}
	for ; len(free) > 0; free = free[1:] {
		stuck[free[0]] = false
		for _, f := range next[free[0]] {
			if waiting[f]--; waiting[f] == 0 {
				free = append(free, f)
			}
		}
	}
	return stuck
}

// ringThrough is the shortest way from a step through what it waits for back
// to itself, nil where there is none.
func ringThrough(steps []Step, start int) []int {
	from := map[int]int{}
	for queue := []int{start}; len(queue) > 0; queue = queue[1:] {
		for _, before := range steps[queue[0]].After {
			if before == start {
				ring := []int{queue[0]}
				for at := queue[0]; at != start; {
					at = from[at]
					ring = append(ring, at)
				}
				slices.Reverse(ring)
				return ring
			}
			if _, seen := from[before]; !seen {
				from[before] = queue[0]
				queue = append(queue, before)
			}
		}
	}
	return nil
}
