package route

// set is a set of small numbers, a bit each.
type set []uint64

// newSets makes n empty sets of the numbers below n.
func newSets(n int) []set {
	words := (n + 63) / 64
	all := make([]uint64, n*words)
	sets := make([]set, n)
	for i := range sets {
		sets[i] = all[i*words : (i+1)*words : (i+1)*words]
	}
	return sets
}

// newSet makes an empty set of the numbers below n.
func newSet(n int) set { return make(set, (n+63)/64) }

func (s set) add(i int) { s[i>>6] |= 1 << (i & 63) }

func (s set) has(i int) bool { return s[i>>6]&(1<<(i&63)) != 0 }

func (s set) clear() { clear(s) }

// join adds the members of another set.
func (s set) join(other set) {
	for i, w := range other {
		s[i] |= w
	}
}

// followers gives for each step the steps that come after it, at whatever
// remove. The steps must not wait for each other in a ring.
func followers(steps []Step) []set {
	later := newSets(len(steps))
	known := make([]bool, len(steps))
	next := make([][]int, len(steps))
	for i, s := range steps {
		for _, before := range s.After {
			next[before] = append(next[before], i)
		}
	}
	var visit func(i int)
	visit = func(i int) {
		if known[i] {
			return
		}
		known[i] = true
		for _, f := range next[i] {
			visit(f)
			later[i].add(f)
			later[i].join(later[f])
		}
	}
	for i := range steps {
		visit(i)
	}
	return later
}
