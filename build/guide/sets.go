package guide

import (
	"slices"

	"doorpocket/build/route"
	"doorpocket/components"
)

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

// setAfter lets step i wait for a whole set. Steps of the set that wait for i
// themselves are left out: what a step says of itself outweighs a set.
func setAfter(steps []route.Step, i int, set string) {
	later := reach(i, func(at int) []int { return waitingFor(steps, at) })
	for j := range steps {
		if inSet(set, steps[j]) && !later[j] && !slices.Contains(steps[i].After, j) {
			steps[i].After = append(steps[i].After, j)
		}
	}
}

// setBefore lets a whole set wait for step i, but for what i waits for.
func setBefore(steps []route.Step, i int, set string) {
	earlier := reach(i, func(at int) []int { return steps[at].After })
	for j := range steps {
		if inSet(set, steps[j]) && !earlier[j] && !slices.Contains(steps[j].After, i) {
			steps[j].After = append(steps[j].After, i)
		}
	}
}

func waitingFor(steps []route.Step, at int) []int {
	var list []int
	for j, s := range steps {
		if slices.Contains(s.After, at) {
			list = append(list, j)
		}
	}
	return list
}

// reach is the step itself and all that can be reached from it.
func reach(from int, next func(int) []int) map[int]bool {
	seen := map[int]bool{from: true}
	for queue := []int{from}; len(queue) > 0; queue = queue[1:] {
		for _, j := range next(queue[0]) {
			if !seen[j] {
				seen[j] = true
				queue = append(queue, j)
			}
		}
	}
	return seen
}
