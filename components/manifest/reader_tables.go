package manifest

import "iter"

// Table returns a reader of the table under a key, or nil if there is none. The
// Done of this reader includes the other's.
func (r *Reader) Table(key string, options ...Option) *Reader {
	w := wishFor("{ ... }", options)
	w.brackets = "[%s]"
	table, ok := take[*Table](r, key, w, "a table")
	if !ok {
		return nil
	}
	return r.child(table)
}

// Tables returns a reader for each table of a list: each [[key]], or each item
// of [{ ... }, { ... }].
func (r *Reader) Tables(key string, options ...Option) []*Reader {
	w := wishFor("[{ ... }]", options)
	w.brackets = "[[%s]]"
	const want = "a list of tables"
	items, ok := take[[]Entry](r, key, w, want)
	if !ok {
		return nil
	}
	if len(items) == 0 && w.required {
		r.empty(key, w)
	}
	var readers []*Reader
	wrong := 0
	for _, item := range items {
		table, ok := item.Value.(*Table)
		if !ok {
			item.Key = key
			if wrong++; !unreadable(item) && wrong <= maxReported {
				r.wrongType(item, w, want)
			}
			continue
		}
		readers = append(readers, r.child(table))
	}
	return readers
}

// Each goes through a table of tables, such as [fitted.panel] and
// [fitted.heater], in the order of the file, with the name of each. An absent
// key gives nothing.
func (r *Reader) Each(key string, options ...Option) iter.Seq2[string, *Reader] {
	return r.Table(key, options...).EachTable()
}

// EachTable goes through the tables of this table that were not asked for yet,
// in the order of the file. Values that are no tables are reported.
func (r *Reader) EachTable() iter.Seq2[string, *Reader] {
	type named struct {
		name   string
		reader *Reader
	}
	var all []named
	wrong := 0
	for _, e := range r.Rest() {
		table, ok := e.Value.(*Table)
		if !ok {
			if wrong++; wrong <= maxReported {
				r.wrongType(e, wish{example: "{ ... }"}, "a table")
			}
			continue
		}
		all = append(all, named{e.Key, r.child(table)})
	}
	return func(yield func(string, *Reader) bool) {
		for _, n := range all {
			if !yield(n.name, n.reader) {
				return
			}
		}
	}
}

// child returns a reader of a table inside this one.
func (r *Reader) child(table *Table) *Reader {
	c := NewReader(table, r.found)
	r.children = append(r.children, c)
	return c
}
