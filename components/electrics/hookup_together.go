package electrics

import (
	"cmp"
	"slices"

	"doorpocket/components/table"
)

// More than three large appliances at once are nobody's plan, and more rows
// than these nobody reads on a phone.
const (
	mostLarge = 3
	mostRows  = 16
)

// combination is some large appliances, each at one setting, on top of what
// runs by itself. News is where it does worse than the worst of its parts,
// which a reader cannot see from the rows of the parts.
type combination struct {
	judged
	name     table.Cell // of the large ones; a reader knows what runs by itself
	chosen   []load     // the large ones
	last     int        // the place of the last of them among the large appliances
	known    bool       // a part of it trips on every pitch, so that it needs no row
	news     int        // pitches with a worse verdict
	surprise int        // of these, pitches on which every part stays on
}

// combine lists the combinations worth a row, at most mostRows of them, from
// the smallest power to the largest. What runs by itself is part of every one,
// because it is always on: a kettle that alone would stay on may trip with the
// charger.
func (s supply) combine(all []appliance) ([]combination, error) {
	var itself []load
	var large []appliance
	for _, a := range all {
		if a.itself {
			itself = append(itself, a.settings[0])
		} else {
			large = append(large, a)
		}
	}
	var found []combination
	if len(itself) > 0 {
		j, err := s.judge(together(itself...))
		if err != nil {
			return nil, err
		}
		found = append(found, combination{judged: j, name: table.Cell{Uses: j.uses, Word: "nothing-else"}})
	}
	level := []combination{{last: -1}}
	for range mostLarge {
		next, err := s.extend(level, large, itself)
		if err != nil {
			return nil, err
		}
		found, level = append(found, next...), next
	}
	return mostTelling(found), nil
}

// extend puts one more large appliance, at each of its settings, to every
// combination, always one that stands later in the list, so that no combination
// is made twice.
func (s supply) extend(level []combination, large []appliance, itself []load) ([]combination, error) {
	var next []combination
	for _, c := range level {
		for i := c.last + 1; i < len(large); i++ {
			for _, setting := range large[i].settings {
				n, err := s.newCombination(append(slices.Clone(c.chosen), setting), itself)
				if err != nil {
					return nil, err
				}
				if n.last = i; !n.known {
					next = append(next, n)
				}
			}
		}
	}
	return next, nil
}

// newCombination judges a combination and holds it against its parts.
func (s supply) newCombination(chosen, itself []load) (combination, error) {
	j, err := s.judge(together(slices.Concat(chosen, itself)...))
	if err != nil {
		return combination{}, err
	}
	c := combination{judged: j, name: table.Cell{Uses: together(chosen...).uses}, chosen: chosen}
	worst := make([]Verdict, len(j.on))
	for _, part := range partsOf(chosen, itself) {
		p, err := s.judge(together(part...))
		if err != nil {
			return combination{}, err
		}
		c.known = c.known || p.trips()
		for i, v := range p.on {
			worst[i] = max(worst[i], v)
		}
	}
	for i, v := range j.on {
		if v == worst[i] {
			continue
		}
		c.news++
		if worst[i] == StaysOn {
			c.surprise++
		}
	}
	return c, nil
}

// partsOf lists what a reader knows of a combination from other rows: it without
// one of its large appliances.
func partsOf(chosen, itself []load) [][]load {
	var parts [][]load
	for i := range chosen {
		if rest := slices.Concat(chosen[:i], chosen[i+1:], itself); len(rest) > 0 {
			parts = append(parts, rest)
		}
	}
	return parts
}

// mostTelling keeps those first that have fewer appliances to remember, then
// those that do worse than their parts on more pitches, then those with more
// power, and puts them in the order of their power.
func mostTelling(found []combination) []combination {
	slices.SortStableFunc(found, func(a, b combination) int {
		return cmp.Or(cmp.Compare(len(a.chosen), len(b.chosen)), cmp.Compare(b.surprise, a.surprise),
			cmp.Compare(b.news, a.news), cmp.Compare(b.power, a.power))
	})
	found = found[:min(len(found), mostRows)]
	slices.SortStableFunc(found, func(a, b combination) int { return cmp.Compare(a.power, b.power) })
	return found
}
