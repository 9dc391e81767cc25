package compare

import (
	"cmp"
	"encoding/json"
	"slices"
	"strings"
)

// gather puts together what changed alike on several vans, so that a reader reads
// it once: first what most vans share, then van by van.
func (c *comparison) gather(results []result) (joined, left []VanRef, groups []Group, same int) {
	g := gathering{builds: map[string]int{}, at: map[string]*Group{}}
	for _, r := range results {
		if r.isNew {
			g.builds[r.build]++
		}
	}
	hirers, staff := sharers[Change]{}, sharers[StaffChange]{}
	for i, r := range results {
		switch {
		case !r.isOld:
			joined = append(joined, r.ref)
		case !r.isNew:
			left = append(left, r.ref)
		case r.changes.empty():
			same++
		}
		hirers.add(i, r.changes.Hirers)
		staff.add(i, r.changes.Staff)
	}
	for _, s := range hirers.order {
		group := g.of(results, s.vans)
		group.Hirers = append(group.Hirers, s.change)
	}
	for _, s := range staff.order {
		group := g.of(results, s.vans)
		group.Staff = append(group.Staff, s.change)
	}
	for _, group := range g.at {
		groups = append(groups, *group)
	}
	slices.SortFunc(groups, func(a, b Group) int {
		return cmp.Or(cmp.Compare(len(b.Vans), len(a.Vans)), slices.CompareFunc(a.Vans, b.Vans, func(x, y VanRef) int { return cmp.Compare(x.Code, y.Code) }))
	})
	return joined, left, groups, same
}

// sharers are the vans that share each change, in the order in which the changes
// came up.
type sharers[C any] struct {
	order []*shared[C]
	known map[string]*shared[C]
}

type shared[C any] struct {
	change C
	vans   []int
}

func (s *sharers[C]) add(van int, changes []C) {
	if s.known == nil {
		s.known = map[string]*shared[C]{}
	}
	for _, c := range changes {
		key, err := json.Marshal(c)
		if err != nil {
			panic(err) // nothing but texts and finite numbers
		}
		known := s.known[string(key)]
		if known == nil {
			known = &shared[C]{change: c}
			s.known[string(key)] = known
			s.order = append(s.order, known)
		}
		if n := len(known.vans); n == 0 || known.vans[n-1] != van {
			known.vans = append(known.vans, van)
		}
	}
}

type gathering struct {
	builds map[string]int // how many vans a build sheet has
	at     map[string]*Group
}

// of is the group of just these vans.
func (g gathering) of(results []result, vans []int) *Group {
	var key strings.Builder
	for _, i := range vans {
		key.WriteString(results[i].ref.Code + " ")
	}
	if known := g.at[key.String()]; known != nil {
		return known
	}
	group := &Group{Build: results[vans[0]].build}
	for _, i := range vans {
		group.Vans = append(group.Vans, VanRef{Code: results[i].ref.Code, Name: results[i].ref.Name})
		if results[i].build != group.Build {
			group.Build = ""
		}
	}
	group.Whole = group.Build != "" && len(vans) == g.builds[group.Build]
	g.at[key.String()] = group
	return group
}
