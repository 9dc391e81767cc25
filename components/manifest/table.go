package manifest

import "doorpocket/components/problem"

// Table is a TOML table whose keys stand in the order of the file.
type Table struct {
	source  *Source
	span    problem.Span
	root    bool
	where   string // in words, for messages: "in this table"
	header  string // what stands between the brackets of its header, if any
	entries []Entry
	index   map[string]int
}

// Key is the name of an entry and the place where it is written.
type Key struct {
	Name string
	Span problem.Span
}

// Entry is one value of a table or list.
type Entry struct {
	// Key is the name; it is empty in a list.
	Key string
	// KeySpan is where the name stands: its own part of a dotted key or header.
	KeySpan problem.Span
	// ValueSpan is where the value stands, with its quotes and brackets. For a
	// table with a header of its own it is the header, for one that is only
	// implied it is the name.
	ValueSpan problem.Span
	// Value is a string, int64, float64, bool, Date, Moment, []Entry, *Table or
	// Unreadable.
	Value any

	reported bool // a problem already says that the key should not be here
}

// Span returns where the table is written: its header, or its key.
func (t *Table) Span() problem.Span { return t.span }

// Source returns the file that the table comes from.
func (t *Table) Source() *Source { return t.source }

// Len returns how many entries the table has.
func (t *Table) Len() int { return len(t.entries) }

// Entries returns the entries in the order of the file. They are shared: do not
// change them.
func (t *Table) Entries() []Entry { return t.entries }

// Keys returns the names in the order of the file.
func (t *Table) Keys() []Key {
	keys := make([]Key, len(t.entries))
	for i, e := range t.entries {
		keys[i] = Key{e.Key, e.KeySpan}
	}
	return keys
}

// Get returns the entry with a name.
func (t *Table) Get(name string) (Entry, bool) {
	i, ok := t.index[name]
	if !ok {
		return Entry{}, false
	}
	return t.entries[i], true
}
