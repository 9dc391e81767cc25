package problem

import "testing"

func TestQuote(t *testing.T) {
	l := List{
		New(Error, Span{"a", Pos{2, 1}, 1}, "c", "s", "d"),
		New(Error, Span{"a", Pos{2, 1}, 1}, "c", "s", "d").WithLine("kept"),
		New(Error, Span{File: "a"}, "c", "s", "d"),
		New(Error, Span{"unknown", Pos{1, 1}, 1}, "c", "s", "d"),
		New(Error, Span{"a", Pos{9, 1}, 1}, "c", "s", "d"),
	}
	l.Quote(map[string][]byte{"a": []byte("one\r\ntwo\r\nthree")})
	for i, want := range []string{"two", "kept", "", "", ""} {
		if l[i].SourceLine != want {
			t.Errorf("%d: %q, want %q", i, l[i].SourceLine, want)
		}
	}
}
