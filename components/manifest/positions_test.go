package manifest

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"doorpocket/components/problem"
)

// ownRules are the codes with which we refuse what the TOML library accepts.
var ownRules = []string{
	"duplicate-key", "keys-differ-in-case", "not-finite", "unprintable",
	"too-deep", "too-many-keys", "key-too-long", "file-too-large", "not-utf-8",
}

// checkAgreement holds our reading of a text against the library's.
func checkAgreement(t *testing.T, data []byte) {
	t.Helper()
	table, found := Parse("file.toml", data)
	text, _ := cutMarks(data)
	checkPlaces(t, NewSource("file.toml", text), found)
	values, err := decode(text)
	switch {
	case err != nil && !found.HasErrors():
		t.Fatalf("the library says %q and we say nothing", err)
	case err == nil && found.HasErrors():
		for _, p := range found {
			if p.Severity == problem.Error && !slices.Contains(ownRules, p.Code) {
				t.Fatalf("the library accepts what we refuse: %s", p.Text(problem.Style{}))
			}
		}
	case err == nil:
		sameTable(t, "", table, values)
	}
	for _, p := range found {
		if p.Code == "unreadable" {
			t.Fatalf("scanner and library disagree: %s", p.Text(problem.Style{}))
		}
	}
	if table == nil && !found.HasErrors() {
		t.Fatal("no table and no reason")
	}
}

// checkPlaces checks that every problem is inside the file and can be printed.
func checkPlaces(t *testing.T, s *Source, found problem.List) {
	t.Helper()
	for _, p := range found {
		if p.Code == "" || p.Summary == "" || p.Detail == "" || p.File == "" || p.Severity == 0 {
			t.Errorf("incomplete: %#v", p)
		}
		if p.Start.Line > s.Lines() || p.Start.Known() && p.Start.Column > len([]rune(s.Line(p.Start.Line)))+2 {
			t.Errorf("outside the file: %s", p.Span)
		}
		p.Text(problem.Style{})
	}
}

// sameTable checks that a table has exactly the keys and values of a map, and
// that each key and value is written where it is said to be.
func sameTable(t *testing.T, path string, table *Table, values map[string]any) {
	t.Helper()
	if table.Len() != len(values) {
		t.Errorf("%s: keys %v, want %v", path, table.Keys(), values)
	}
	for _, e := range table.Entries() {
		here := path + "." + e.Key
		value, ok := values[e.Key]
		if !ok {
			t.Errorf("%s: key that the library does not have", here)
			continue
		}
		sameKey(t, here, table.Source(), e)
		sameValue(t, here, table.Source(), e, value)
	}
}

// sameKey checks that the text at the key span is the key.
func sameKey(t *testing.T, path string, s *Source, e Entry) {
	t.Helper()
	text := s.Text(e.KeySpan)
	if alone, err := decode([]byte(text + " = 1")); err != nil || len(alone) != 1 || alone[e.Key] != int64(1) {
		t.Errorf("%s: key span %s holds %q", path, e.KeySpan, text)
	}
}

// sameValue checks one value, and whether its text means the same on its own.
func sameValue(t *testing.T, path string, s *Source, e Entry, value any) {
	t.Helper()
	switch v := e.Value.(type) {
	case *Table:
		want, ok := value.(map[string]any)
		if !ok {
			t.Fatalf("%s: a table, want %T", path, value)
		}
		sameTable(t, path, v, want)
	case []Entry:
		sameList(t, path, s, v, value)
	default:
		if got := plain(v); !equal(got, value) {
			t.Errorf("%s: %#v, want %#v", path, got, value)
		}
	}
	text := s.Text(e.ValueSpan)
	if text == "" || text[0] == '[' && isTables(e.Value) || !writtenAsValue(e, text) {
		return // made by headers, so there is no text that stands for all of it
	}
	alone, err := decode([]byte("v = " + text))
	if err != nil || !equal(alone["v"], value) {
		t.Errorf("%s: value span %s holds %q, which is %#v, want %#v (%v)", path, e.ValueSpan, text, alone["v"], value, err)
	}
}

// writtenAsValue reports whether the text at a value span is the value itself,
// not a header or a name on the way to one.
func writtenAsValue(e Entry, text string) bool {
	if _, isTable := e.Value.(*Table); isTable {
		return text[0] == '{'
	}
	return true
}

// isTables reports whether a value is a table or may be a list of [[tables]].
func isTables(value any) bool {
	items, isList := value.([]Entry)
	if !isList {
		_, isTable := value.(*Table)
		return isTable
	}
	return slices.ContainsFunc(items, func(e Entry) bool {
		t, ok := e.Value.(*Table)
		return ok && t.where != "between these braces"
	})
}

// sameList checks the items of a list.
func sameList(t *testing.T, path string, s *Source, items []Entry, value any) {
	t.Helper()
	values := asItems(value)
	if len(items) != len(values) {
		t.Fatalf("%s: %d items, want %d", path, len(items), len(values))
	}
	for i, item := range items {
		sameValue(t, fmt.Sprintf("%s[%d]", path, i), s, item, values[i])
	}
}

// asItems makes the library's two kinds of list one.
func asItems(value any) []any {
	tables, ok := value.([]map[string]any)
	if !ok {
		items, _ := value.([]any)
		return items
	}
	items := make([]any, len(tables))
	for i, t := range tables {
		items[i] = t
	}
	return items
}

// plain turns our dates into text, as equal does with the library's.
func plain(value any) any {
	switch v := value.(type) {
	case Date:
		return v.String()
	case Moment:
		return Moment{}
	}
	return value
}

// equal compares values of the library, or one of ours with one of the
// library's. Dates are compared as text, times only as times.
func equal(a, b any) bool {
	if t, ok := b.(time.Time); ok {
		switch a := a.(type) {
		case time.Time:
			return a.Equal(t)
		case string:
			return a == t.Format(time.DateOnly) && t.Location().String() == "date-local"
		}
		_, isMoment := a.(Moment)
		return isMoment && t.Location().String() != "date-local"
	}
	switch a := a.(type) {
	case float64:
		b, ok := b.(float64)
		return ok && (a == b || math.IsNaN(a) && math.IsNaN(b))
	case map[string]any:
		b, ok := b.(map[string]any)
		return ok && equalMaps(a, b)
	case []any, []map[string]any:
		return slices.EqualFunc(asItems(a), asItems(b), equal)
	}
	return a == b
}

// equalMaps compares two tables of the library.
func equalMaps(a, b map[string]any) bool {
	if len(a) != len(b) {
		return false
	}
	for key, value := range a {
		other, ok := b[key]
		if !ok || !equal(value, other) {
			return false
		}
	}
	return true
}
