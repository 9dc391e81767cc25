package manifest

import "doorpocket/components/problem"

// Reader takes values out of a table by name and reports what does not fit. It
// remembers which names it was asked for, so that Done can report the others.
//
// Each method that returns a value also returns whether there is one. If not,
// the reason has been reported, unless the key is merely absent and was not
// required.
//
// All methods may be called on a nil Reader, which has no keys and reports
// nothing: the reader of an absent table.
type Reader struct {
	table    *Table
	found    *problem.List
	asked    map[string]bool
	names    []string // what was asked for, in order
	children []*Reader
	done     bool
}

// NewReader returns a reader of a table that adds its problems to a list. A nil
// table gives a nil reader.
func NewReader(table *Table, found *problem.List) *Reader {
	if table == nil {
		return nil
	}
	return &Reader{table: table, found: found, asked: map[string]bool{}}
}

// Has reports whether a key is there. The key counts as asked for.
func (r *Reader) Has(key string) bool {
	_, ok := r.get(key)
	return ok
}

// Raw returns an entry as it is, for a value that is read elsewhere. Done does
// not look into it.
func (r *Reader) Raw(key string) (Entry, bool) {
	e, ok := r.get(key)
	if !ok || unreadable(e) {
		return Entry{}, false
	}
	return e, true
}

// Rest returns the entries that were not asked for yet, in the order of the
// file, and counts them as asked for. It serves tables in which names are free.
func (r *Reader) Rest() []Entry {
	if r == nil {
		return nil
	}
	var rest []Entry
	for _, e := range r.table.entries {
		if !r.asked[e.Key] && !e.reported {
			r.asked[e.Key] = true
			if !unreadable(e) {
				rest = append(rest, e)
			}
		}
	}
	return rest
}

// Keys returns all keys of the table in the order of the file.
func (r *Reader) Keys() []Key {
	if r == nil {
		return nil
	}
	return r.table.Keys()
}

// At returns where the table is written: its header, or its key.
func (r *Reader) At() problem.Span {
	if r == nil {
		return problem.Span{}
	}
	return r.table.span
}

// Source returns the file that is read.
func (r *Reader) Source() *Source {
	if r == nil {
		return nil
	}
	return r.table.source
}

// Span returns where the value of a key is, or where the table is if the key is
// absent.
func (r *Reader) Span(key string) problem.Span {
	if r == nil {
		return problem.Span{}
	}
	if e, ok := r.table.Get(key); ok {
		return e.ValueSpan
	}
	return r.table.span
}

// KeySpan returns where the name of a key is, or where the table is if the key
// is absent.
func (r *Reader) KeySpan(key string) problem.Span {
	if r == nil {
		return problem.Span{}
	}
	if e, ok := r.table.Get(key); ok {
		return e.KeySpan
	}
	return r.table.span
}

// Problem reports an error at the value of a key, or at the table if the key is
// absent.
func (r *Reader) Problem(key, code, summary, detail string) {
	r.ProblemAt(r.Span(key), code, summary, detail)
}

// ProblemAt reports an error at any place of the file.
func (r *Reader) ProblemAt(span problem.Span, code, summary, detail string) {
	r.Report(problem.New(problem.Error, span, code, summary, detail))
}

// Warn reports a warning at the value of a key, or at the table if the key is
// absent.
func (r *Reader) Warn(key, code, summary, detail string) {
	r.Report(problem.New(problem.Warning, r.Span(key), code, summary, detail))
}

// Report adds a problem of this file, with the line it stands on.
func (r *Reader) Report(p problem.Problem) {
	if r == nil {
		return
	}
	if p.SourceLine == "" && p.File == r.table.source.Name {
		p = p.WithLine(r.table.source.quoted(p.Start.Line))
	}
	r.found.Add(p)
}

// get looks a key up and counts it as asked for.
func (r *Reader) get(key string) (Entry, bool) {
	if r == nil {
		return Entry{}, false
	}
	if !r.asked[key] {
		r.asked[key] = true
		r.names = append(r.names, key)
	}
	return r.table.Get(key)
}

// unreadable reports whether the entry's value was reported by Parse.
func unreadable(e Entry) bool {
	_, yes := e.Value.(Unreadable)
	return yes
}
