package manifest

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"doorpocket/components/problem"
)

// builder puts the places that the scanner found and the values that the
// library read together.
type builder struct {
	source *Source
	found  *problem.List
	broken map[int]int // start of a value that was reported -> its end

	notNumbers int // how many there are
	notTexts   int // likewise
}

// table builds a table from a node and the map that belongs to it.
func (b *builder) table(n *node, span problem.Span, values map[string]any) *Table {
	t := &Table{source: b.source, span: span, root: n.depth == 0, where: b.where(n), index: make(map[string]int, len(n.members))}
	if n.origin == header && n.depth > 0 {
		t.header = strings.TrimSpace(strings.Trim(string(b.source.Data[n.start:n.end]), "[]"))
	}
	for _, m := range n.members {
		e := b.entry(m.value, b.source.Span(m.start, m.end), values[m.name])
		e.Key = m.name
		t.index[m.name] = len(t.entries)
		t.entries = append(t.entries, e)
	}
	b.sameButForCase(t)
	b.unplaced(n, span, values)
	return t
}

// where says in words where the keys of a table are written.
func (b *builder) where(n *node) string {
	switch {
	case n.depth == 0:
		return "at the top of the file, above the first [table]"
	case n.origin == written:
		return "between these braces"
	case n.origin == header:
		return "under " + cut(string(b.source.Data[n.start:n.end]))
	}
	return "in this table"
}

// entry builds one value. The key span is where to show a table in braces.
func (b *builder) entry(n *node, key problem.Span, value any) Entry {
	start, end := n.start, n.end
	if e, ok := b.broken[start]; ok {
		return Entry{KeySpan: key, ValueSpan: b.source.Span(start, e), Value: Unreadable{}}
	}
	e := Entry{KeySpan: key, ValueSpan: b.source.Span(start, end)}
	switch n.shape {
	case table:
		e.Value = b.asTable(n, e, value)
	case list:
		e.Value = b.asList(n, e.ValueSpan, value)
	default:
		e.Value = b.asLeaf(n, e.ValueSpan, value)
	}
	return e
}

// asTable builds a table that is a value.
func (b *builder) asTable(n *node, e Entry, value any) any {
	values, ok := value.(map[string]any)
	if !ok {
		return b.mismatch(e.ValueSpan)
	}
	span := e.ValueSpan
	if n.origin == written && e.KeySpan.Start.Known() {
		span = e.KeySpan
	}
	return b.table(n, span, values)
}

// asList builds a list, whether it was written in brackets or by headers.
func (b *builder) asList(n *node, span problem.Span, value any) any {
	values, ok := value.([]any)
	if tables, isTables := value.([]map[string]any); isTables {
		values, ok = make([]any, len(tables)), true
		for i, t := range tables {
			values[i] = t
		}
	}
	if !ok || len(values) != len(n.items) {
		return b.mismatch(span)
	}
	entries := make([]Entry, len(values))
	for i, item := range n.items {
		entries[i] = b.entry(item, problem.Span{}, values[i])
	}
	return entries
}

// asLeaf takes a value over, or refuses one that TOML allows and we do not.
func (b *builder) asLeaf(n *node, span problem.Span, value any) any {
	switch v := value.(type) {
	case string:
		return b.asText(v, span)
	case int64, bool:
		return v
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return b.notFinite(span)
		}
		return v
	case time.Time:
		return asDate(string(b.source.Data[n.start:n.end]))
	}
	return b.mismatch(span)
}

// asText refuses what an escape such as \u0000 has smuggled into a text.
func (b *builder) asText(text string, span problem.Span) any {
	i := strings.IndexFunc(text, unprintable)
	if i < 0 {
		return strings.Clone(text) // the library's is a part of the whole file, which it would keep
	}
	if b.notTexts++; b.notTexts <= maxReported {
		r, _ := utf8.DecodeRuneInString(text[i:])
		b.report(span, "unprintable", fmt.Sprintf("Character U+%04X in a text", r),
			"An escape stands for a character that cannot be printed. Delete it.")
	}
	return Unreadable{}
}

// asDate reads a date from the text that the library has accepted as a date, a
// time, or both. It does so without the library's value, which has a time zone.
func asDate(text string) any {
	if len(text) < len("2026-10-02") || text[4] != '-' {
		return Moment{Text: text}
	}
	var d Date
	d.Year, _ = strconv.Atoi(text[:4])
	d.Month, _ = strconv.Atoi(text[5:7])
	d.Day, _ = strconv.Atoi(text[8:10])
	if len(text) > len("2026-10-02") {
		return Moment{Text: text, Day: d}
	}
	return d
}

// notFinite reports "inf" and "nan".
func (b *builder) notFinite(span problem.Span) any {
	if b.notNumbers++; b.notNumbers > maxReported {
		return Unreadable{}
	}
	b.report(span, "not-finite", "Number without a value",
		strconv.Quote(b.source.Text(span))+" is not a number that can be used in a calculation. Write the number in digits, or leave the key out.")
	return Unreadable{}
}

// mismatch reports a value that scanner and library understand differently.
// That is a mistake of ours, but one that must not pass in silence.
func (b *builder) mismatch(span problem.Span) any {
	b.report(span, "unreadable", "Value that cannot be read",
		"This value is written in a way that is not understood here. Write it in a simpler way.")
	return Unreadable{}
}

// unplaced reports keys that the library knows and the scanner does not.
func (b *builder) unplaced(n *node, span problem.Span, values map[string]any) {
	if len(values) != len(n.members) {
		b.mismatch(span)
	}
}

// sameButForCase reports keys that differ only in the case of their letters.
func (b *builder) sameButForCase(t *Table) {
	first, same := make(map[string]int, len(t.entries)), 0
	for i, e := range t.entries {
		folded := strings.ToLower(e.Key)
		j, taken := first[folded]
		if !taken {
			first[folded] = i
			continue
		}
		t.entries[i].reported = true
		if same++; same > maxReported {
			continue
		}
		other := t.entries[j]
		b.found.Add(problem.New(problem.Error, e.KeySpan, "keys-differ-in-case",
			"Two keys that differ only in case: "+quote(other.Key)+" and "+quote(e.Key),
			"Capital and small letters count, so these are two different keys. Keep one of them.").
			WithLine(b.source.quoted(e.KeySpan.Start.Line)).WithNote(other.KeySpan, "first written here"))
	}
}

// report adds an error that quotes its line.
func (b *builder) report(span problem.Span, code, summary, detail string) {
	b.found.Add(problem.New(problem.Error, span, code, summary, detail).
		WithLine(b.source.quoted(span.Start.Line)))
}
