package problem

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// summaries returns what tells the problems of a test apart.
func summaries(l List) (s []string) {
	for _, p := range l {
		s = append(s, p.Summary)
	}
	return s
}

func TestSort(t *testing.T) {
	span := func(file string, line, column int) Span { return Span{file, Pos{line, column}, 1} }
	var l List
	l.Warnf(span("a", 1, 1), "c", "6", "")
	l.Errorf(span("b", 1, 1), "c", "5", "")
	l.Errorf(span("a", 10, 1), "c", "4", "")
	l.Errorf(span("a", 2, 9), "c", "3", "")
	l.Errorf(span("a", 2, 1), "c", "2", "")
	l.Errorf(span("a", 2, 1), "c", "1", "")
	l.Sort()
	if diff := cmp.Diff([]string{"1", "2", "3", "4", "5", "6"}, summaries(l)); diff != "" {
		t.Error(diff)
	}
}

func TestDedupe(t *testing.T) {
	var l List
	here, there := Span{"a", Pos{1, 1}, 1}, Span{"a", Pos{1, 2}, 1}
	l.Errorf(here, "c", "one", "d")
	l.Errorf(there, "c", "one there", "d")
	l.Errorf(here, "c", "one", "d")
	l.Warnf(here, "c", "one", "d")
	l.Dedupe()
	if diff := cmp.Diff([]string{"one", "one there", "one"}, summaries(l)); diff != "" {
		t.Error(diff)
	}
}

func TestCounts(t *testing.T) {
	var l List
	if l.HasErrors() {
		t.Error("an empty list has errors")
	}
	l.Warnf(Span{}, "c", "s", "")
	if l.HasErrors() {
		t.Error("a warning counts as an error")
	}
	l.Errorf(Span{}, "c", "s", "")
	if e, w := l.Counts(); e != 1 || w != 1 || !l.HasErrors() {
		t.Errorf("%d errors, %d warnings", e, w)
	}
}

func TestErrorfTakesPlainText(t *testing.T) {
	var l List
	l.Errorf(Span{}, "c", "s", "Fill it to 80 % only.")
	l.Errorf(Span{}, "c", "s", "Fill it to %d %% only.", 80)
	if l[0].Detail != l[1].Detail {
		t.Errorf("%q and %q", l[0].Detail, l[1].Detail)
	}
}

func TestCopiesShareNoNotes(t *testing.T) {
	base := New(Error, Span{}, "c", "s", "d").WithNote(Span{}, "one")
	a, b := base.WithNote(Span{}, "two"), base.WithNote(Span{}, "three")
	if a.Notes[1].Text != "two" || b.Notes[1].Text != "three" || len(base.Notes) != 1 {
		t.Errorf("%v %v %v", base.Notes, a.Notes, b.Notes)
	}
}

func TestForgottenSeverityShows(t *testing.T) {
	p := Problem{Summary: "Something"}
	if got := p.String(); got != "invalid severity 0: Something" {
		t.Error(got)
	}
	if (List{p}).HasErrors() {
		t.Error("it counts as an error")
	}
}
