package manifest

import (
	"math"
	"slices"
	"testing"

	"doorpocket/components/problem"

	"github.com/google/go-cmp/cmp"
)

var negativeInf = math.Inf(-1)

const spec = `code = "RW" # on every label
spec_date = 2026-10-02
berths = 4
fill = 0.85
whole = 3
winter = true
after = ["a", 'b']
one = "c"

[body]
steering = "right"
at = { side = "nearside", along.front = "5.1 m" }

[fitted.panel]
label = "P1"
[fitted.heater]
label = "H1"
[[caution]]
text = "one"
[[caution]]
text = "two"
`

func TestReaderValues(t *testing.T) {
	found := reading(t, spec, func(r *Reader) {
		check(t, "code")(r.Text("code", Required))("RW")
		check(t, "spec_date")(r.Date("spec_date"))(Date{2026, 10, 2})
		check(t, "berths")(r.Int("berths", 1, 9))(4)
		check(t, "fill")(r.Float("fill"))(0.85)
		check(t, "whole")(r.Float("whole"))(3.0)
		check(t, "winter")(r.Bool("winter"))(true)
		check(t, "after")(r.Texts("after"))([]string{"a", "b"})
		check(t, "one")(r.Texts("one", OrSingle))([]string{"c"})
		body := r.Table("body")
		check(t, "steering")(body.Choice("steering", []string{"left", "right"}))("right")
		at := body.Table("at")
		check(t, "side")(at.Text("side"))("nearside")
		check(t, "front")(at.Table("along").Text("front"))("5.1 m")
		var names, labels, texts []string
		for name, fitted := range r.Each("fitted") {
			label, _ := fitted.Text("label")
			names, labels = append(names, name), append(labels, label)
		}
		for _, caution := range r.Tables("caution") {
			text, _ := caution.Text("text")
			texts = append(texts, text)
		}
		check(t, "names")(names, true)([]string{"panel", "heater"})
		check(t, "labels")(labels, true)([]string{"P1", "H1"})
		check(t, "texts")(texts, true)([]string{"one", "two"})
	})
	if found != nil {
		t.Error(found)
	}
}

// check compares what a reader returns with what it should.
func check(t *testing.T, name string) func(any, bool) func(any) {
	return func(got any, ok bool) func(any) {
		return func(want any) {
			t.Helper()
			if diff := cmp.Diff(want, got); diff != "" || !ok {
				t.Errorf("%s (%v): %s", name, ok, diff)
			}
		}
	}
}

func TestBrokenValuesAreReportedOnce(t *testing.T) {
	table, found := Parse("file.toml", []byte("name = Rowan\ncount = 2,5\nlist = [\"a\", b]\nat = { side = left }\npath = \"\\q\"\nx = nan\n"))
	if len(found) != 6 {
		t.Fatalf("%v", briefs(found))
	}
	r := NewReader(table, &found)
	r.Text("name", Required)
	r.Int("count", 1, 2)
	r.Texts("list", Required)
	r.Table("at").Text("side", Required)
	r.Date("path")
	if _, ok := r.Raw("x"); ok {
		t.Error("a broken value was handed out")
	}
	r.Done()
	if len(found) != 6 {
		t.Errorf("%v", briefs(found[6:]))
	}
}

func TestRestAndSpans(t *testing.T) {
	table, found := Parse("file.toml", []byte("system = \"x\"\nnet = \"6 kg\"\ngas = \"y\"\n"))
	r := NewReader(table, &found)
	r.Text("system")
	var keys []string
	for _, e := range r.Rest() {
		keys = append(keys, e.Key)
	}
	if !slices.Equal(keys, []string{"net", "gas"}) || len(r.Rest()) != 0 {
		t.Error(keys)
	}
	if got := r.Span("net"); got != (problem.Span{File: "file.toml", Start: problem.Pos{Line: 2, Column: 7}, Length: 6}) {
		t.Error(got)
	}
	if got := r.KeySpan("gas").String(); got != "file.toml:3:1" {
		t.Error(got)
	}
	if got := r.Span("absent"); got != table.Span() {
		t.Error(got)
	}
	r.Problem("gas", "a-code", "Summary", "Detail.")
	r.Warn("gas", "a-code", "Summary", "Detail.")
	r.Done()
	if len(found) != 2 || found[0].SourceLine != `gas = "y"` || found[1].Severity != problem.Warning {
		t.Errorf("%#v", found)
	}
}

func TestManyUnknownKeysAreCut(t *testing.T) {
	text := ""
	for i := range 100 {
		text += "k" + string(rune('a'+i/10)) + string(rune('a'+i%10)) + " = 1\n"
	}
	if found := reading(t, text, func(*Reader) {}); len(found) != maxReported+1 {
		t.Errorf("%d problems", len(found))
	}
}

func TestAskingWithoutReading(t *testing.T) {
	table, found := Parse("f", []byte("a = 1\n[t]\nb = 2\n"))
	r := NewReader(table, &found)
	if !r.Has("a") || r.Has("c") {
		t.Error("wrong about what is there")
	}
	inner := r.Table("t")
	if inner.At().String() != "f:2:1" || inner.Source() != table.Source() || inner.KeySpan("c") != inner.At() {
		t.Error(inner.At())
	}
	inner.Has("b")
	if r.Done(); len(found) > 0 {
		t.Error(briefs(found))
	}
	var none *Reader
	if none.Has("a") || none.Source() != nil || none.At() != none.Span("a") || none.KeySpan("a").File != "" || none.Keys() != nil {
		t.Error("a reader of nothing has something")
	}
}
