package problem

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestGather(t *testing.T) {
	whole := func(file, summary string) Problem { return New(Warning, Span{File: file}, "c", summary, "Do it.") }
	at := New(Warning, Span{File: "a", Start: Pos{1, 1}}, "c", "No bed", "Do it.")
	list := List{
		whole("a", "No bed"), whole("a", "No door"), at, whole("b", "No bed"), at, whole("c", "No bed"),
		New(Error, Span{File: "b"}, "c", "No bed", "Do it."), New(Warning, Span{File: "b"}, "c", "No bed", "Do it now."),
		New(Warning, Span{}, "c", "No bed", "Do it."),
	}
	want := List{
		whole("a", "No bed").WithNote(Span{}, "also: b, c"), whole("a", "No door"), at, at,
		list[6], list[7], list[8],
	}
	if diff := cmp.Diff(want, list.Gather()); diff != "" {
		t.Error(diff)
	}
	var many List
	for _, file := range []string{"a", "b", "c", "d", "e", "f", "g", "h", "i"} {
		many.Add(whole(file, "No bed"))
	}
	if got := many.Gather(); len(got) != 1 || got[0].Notes[0].Text != "also: b, c, d, e, f, g and 2 more" {
		t.Errorf("%+v", got)
	}
	if len(many[0].Notes) != 0 {
		t.Error("the list itself was changed")
	}
}
