package manifest

// shape is what a node of the scanned tree is.
type shape uint8

const (
	leaf shape = iota // a text, number, date, yes or no
	list
	table
)

// origin is how a table or list came to be. TOML decides by it what may be
// added later.
type origin uint8

const (
	written  origin = iota // as a value: a leaf, [1, 2], { a = 1 }
	header                 // by [name], or one element of [[name]]; also the root
	implied                // by being on the way to another header
	dotted                 // by being on the way to a dotted key
	repeated               // the list that [[name]] headers fill
)

// node is one value with its place. Offsets are bytes of the file.
type node struct {
	shape      shape
	origin     origin
	depth      int
	start, end int // the value itself; for a table made by a header, the header
	members    []*member
	index      map[string]*member
	items      []*node
}

// member is a named value in a table.
type member struct {
	name       string
	start, end int // the key
	value      *node
}

// keyPart is one name of a key that may be dotted.
type keyPart struct {
	name       string
	start, end int
}

// conflict is a key that may not be added because its name is taken.
type conflict struct {
	name       string
	start, end int // the key that comes second
	first      *member
	header     bool // the second is a header
	through    bool // the name is on the way to the key, not its last one
	from, to   int  // what to leave out so that the rest can be read
}

// newTable returns an empty table.
func newTable(origin origin, depth, start, end int) *node {
	return &node{shape: table, origin: origin, depth: depth, start: start, end: end, index: map[string]*member{}}
}

// add puts a value under a name that is free.
func (n *node) add(part keyPart, value *node) *member {
	m := &member{part.name, part.start, part.end, value}
	n.members = append(n.members, m)
	n.index[part.name] = m
	return m
}

// set adds a value under a key that may be dotted. It returns the member in the
// way if the key is taken.
func (n *node) set(parts []keyPart, value *node) *member {
	last := len(parts) - 1
	for _, part := range parts[:last] {
		m := n.index[part.name]
		if m == nil {
			m = n.add(part, newTable(dotted, n.depth+1, part.start, part.end))
		}
		if m.value.shape != table || m.value.origin != dotted {
			return m
		}
		n = m.value
	}
	if m := n.index[parts[last].name]; m != nil {
		return m
	}
	n.add(parts[last], value)
	return nil
}

// reach walks from the root to the table that a header's last name belongs in,
// making tables on the way.
func (n *node) reach(parts []keyPart) (*node, *member) {
	for _, part := range parts {
		m := n.index[part.name]
		if m == nil {
			m = n.add(part, newTable(implied, n.depth+1, part.start, part.end))
		}
		switch {
		case m.value.shape == table && m.value.origin != written:
			n = m.value
		case m.value.origin == repeated:
			n = m.value.items[len(m.value.items)-1]
		default:
			return nil, m
		}
	}
	return n, nil
}

// open makes the table of a [header] and returns it, or the member in the way.
func (n *node) open(parts []keyPart, start, end int) (*node, *member) {
	last := parts[len(parts)-1]
	parent, taken := n.reach(parts[:len(parts)-1])
	if taken != nil {
		return nil, taken
	}
	m := parent.index[last.name]
	switch {
	case m == nil:
		m = parent.add(last, newTable(header, parent.depth+1, start, end))
	case m.value.shape == table && m.value.origin == implied:
		// The header that was only implied so far is the better place to show.
		m.start, m.end = last.start, last.end
		m.value.origin, m.value.start, m.value.end = header, start, end
	default:
		return nil, m
	}
	return m.value, nil
}

// openItem makes the next table of a [[header]] and returns it, or the member
// in the way.
func (n *node) openItem(parts []keyPart, start, end int) (*node, *member) {
	last := parts[len(parts)-1]
	parent, taken := n.reach(parts[:len(parts)-1])
	if taken != nil {
		return nil, taken
	}
	m := parent.index[last.name]
	if m == nil {
		m = parent.add(last, &node{shape: list, origin: repeated, depth: parent.depth + 1, start: start, end: end})
	}
	if m.value.origin != repeated {
		return nil, m
	}
	item := newTable(header, m.value.depth+1, start, end)
	m.value.items = append(m.value.items, item)
	return item, nil
}
