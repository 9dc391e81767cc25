package manifest

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// outline writes a table as its keys with their places and values.
func outline(t *Table, indent string) (lines []string) {
	for _, e := range t.Entries() {
		lines = append(lines, outlineEntry(e, fmt.Sprintf("%s%s %s", indent, e.Key, spot(e)), indent)...)
	}
	return lines
}

// spot writes where the key and the value of an entry are.
func spot(e Entry) string {
	k, v := e.KeySpan, e.ValueSpan
	return fmt.Sprintf("%d:%d+%d %d:%d+%d", k.Start.Line, k.Start.Column, k.Length, v.Start.Line, v.Start.Column, v.Length)
}

func outlineEntry(e Entry, line, indent string) []string {
	switch v := e.Value.(type) {
	case *Table:
		return append([]string{line}, outline(v, indent+"  ")...)
	case []Entry:
		lines := []string{line}
		for _, item := range v {
			lines = append(lines, outlineEntry(item, indent+"  - "+spot(item), indent+"    ")...)
		}
		return lines
	}
	return []string{fmt.Sprintf("%s %T %v", line, e.Value, e.Value)}
}

func TestPlaces(t *testing.T) {
	text := "\ufeffcode = \"RW\"\r\n" +
		"\t\"größe\" = \"ß\" # comment\r\n" +
		"a . 'b' = 2026-10-02\r\n" +
		"at = { side = 'x', up.y = 1 }\r\n" +
		"list = [\r\n  1,\r\n\t[true],\r\n]\r\n" +
		"long = \"\"\"\r\none\r\n\"\"\"\r\n" +
		"[fitted.gas-locker]\r\n" +
		"[[fitted.gas-locker.caution]]\r\n" +
		"x = 0.5\r\n" +
		"[[fitted.gas-locker.caution]]\r\n" +
		"[ body ]\r\n"
	want := `
code 1:1+4 1:8+4 string RW
größe 2:2+7 2:12+3 string ß
a 3:1+1 3:1+1
  b 3:5+3 3:11+10 manifest.Date 2026-10-02
at 4:1+2 4:6+24
  side 4:8+4 4:15+3 string x
  up 4:20+2 4:20+2
    y 4:23+1 4:27+1 int64 1
list 5:1+4 5:8+20
  - 0:0+0 6:3+1 int64 1
  - 0:0+0 7:2+6
      - 0:0+0 7:3+4 bool true
long 9:1+4 9:8+13 string one` + "\r\n" + `
fitted 12:2+6 12:2+6
  gas-locker 12:9+10 12:1+19
    caution 13:21+7 13:1+29
      - 0:0+0 13:1+29
          x 14:1+1 14:5+3 float64 0.5
      - 0:0+0 15:1+29
body 16:3+4 16:1+8
`
	table, found := Parse("file.toml", []byte(text))
	if len(found) != 1 || found[0].Code != "byte-order-mark" {
		t.Error(briefs(found))
	}
	if diff := cmp.Diff(strings.TrimSpace(want), strings.Join(outline(table, ""), "\n")); diff != "" {
		t.Error(diff)
	}
	if e, ok := table.Get("code"); !ok || table.Source().Text(e.ValueSpan) != `"RW"` {
		t.Error(e)
	}
	if _, ok := table.Get("nothing"); ok || table.Len() != 8 || table.Keys()[7].Name != "body" {
		t.Error(table.Keys())
	}
}

// An implied table that gets its own header later is shown at that header, but
// stays where it first appeared.
func TestLateHeader(t *testing.T) {
	table, found := Parse("f", []byte("[a.b]\n[c]\n[a]\nx = 1\n"))
	want := []string{"a 3:2+1 3:1+3", "  b 1:4+1 1:1+5", "  x 4:1+1 4:5+1 int64 1", "c 2:2+1 2:1+3"}
	if diff := cmp.Diff(want, outline(table, "")); diff != "" || found != nil {
		t.Error(diff, briefs(found))
	}
}

// What is left out because its name is taken is not read, and costs no more
// than one message.
func TestDuplicatesLeaveTheFirst(t *testing.T) {
	table, found := Parse("f", []byte("a = 1\na = 2\n[t]\nb = 3\n[t]\nb = 4\nc = 5\n[t.u]\nd = { e = 6, e = 7 }\n[v]\n"))
	want := []string{
		"a 1:1+1 1:5+1 int64 1", "t 3:2+1 3:1+3", "  b 4:1+1 4:5+1 int64 3",
		"  u 8:4+1 8:1+5", "    d 9:1+1 9:5+16", "      e 9:7+1 9:11+1 int64 6", "v 10:2+1 10:1+3",
	}
	if diff := cmp.Diff(want, outline(table, "")); diff != "" || len(found) != 3 {
		t.Error(diff, briefs(found))
	}
}

func TestFileTooLarge(t *testing.T) {
	table, found := Parse("f", make([]byte, maxBytes+1))
	want := []string{"0:0+0 file-too-large: File that is too large. The file has 1048577 bytes; at most 1048576 are read. Check that it is the right file, or split it."}
	if diff := cmp.Diff(want, briefs(found)); diff != "" || table != nil {
		t.Error(diff)
	}
}

func TestDate(t *testing.T) {
	a, b := Date{2026, 9, 30}, Date{2026, 10, 1}
	if a.Compare(b) != -1 || b.Compare(a) != 1 || a.Compare(a) != 0 {
		t.Error("dates are in the wrong order")
	}
	if a.String() != "2026-09-30" || a.IsZero() || !(Date{}).IsZero() {
		t.Error(a.String())
	}
}

// BenchmarkParse reads a spec of about 200 lines to the end.
func BenchmarkParse(b *testing.B) {
	text := spec
	for i := range 30 {
		text += fmt.Sprintf("[fitted.system-%d]\nsystem = \"gas/cylinder-locker\"\nlabel = \"G%d\"\nat = { side = \"nearside\", along = \"5.1 m\", up = \"0.6 m\" }\nnet = \"6 kg\"\n\n", i, i)
	}
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		table, found := Parse("file.toml", []byte(text))
		r := NewReader(table, &found)
		r.Rest()
		if r.Done(); len(found) > 0 {
			b.Fatal(briefs(found))
		}
	}
}
