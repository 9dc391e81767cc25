package manifest

import (
	"strings"
	"testing"
	"unicode/utf8"
)

func TestSourceLines(t *testing.T) {
	s := NewSource("f", []byte("one\r\n\ttwo é\n\nlast"))
	for i, want := range []string{"", "one", "\ttwo é", "", "last", ""} {
		if got := s.Line(i); got != want {
			t.Errorf("line %d is %q, want %q", i, got, want)
		}
	}
	if s.Lines() != 4 || s.Line(-1) != "" || NewSource("f", nil).Lines() != 1 {
		t.Error(s.Lines())
	}
}

// TestSpanAndText goes to every place of a text whose characters have all sizes
// and lie across the places at which runes are counted.
func TestSpanAndText(t *testing.T) {
	text := strings.Repeat("aé注😀\n", 3) + strings.Repeat("é注😀a", 60) + "\r\nx"
	s := NewSource("f", []byte(text))
	for start := range len(text) + 1 {
		if start < len(text) && !utf8.RuneStart(text[start]) {
			continue
		}
		end := min(start+40, len(text))
		for end < len(text) && !utf8.RuneStart(text[end]) {
			end++
		}
		span := s.Span(start, end)
		before := text[:start]
		line := before[strings.LastIndexByte(before, '\n')+1:]
		if span.Start.Line != strings.Count(before, "\n")+1 || span.Start.Column != utf8.RuneCountInString(line)+1 {
			t.Fatalf("offset %d is at %v", start, span.Start)
		}
		if got := s.Text(span); got != text[start:end] {
			t.Fatalf("text at %v is %q, want %q", span, got, text[start:end])
		}
	}
}

func TestSpanOutsideTheFile(t *testing.T) {
	s := NewSource("f", []byte("ab"))
	if got := s.Span(-5, 90); got.Start.Column != 1 || got.Length != 2 {
		t.Error(got)
	}
	if got := s.Span(90, 3); got.Start.Column != 3 || got.Length != 0 {
		t.Error(got)
	}
	beyond := s.Span(0, 2)
	beyond.Start.Line, beyond.Length = 7, 9
	if got := s.Text(beyond); got != "" {
		t.Errorf("%q", got)
	}
	beyond.Start.Line = 1
	if got := s.Text(beyond); got != "ab" {
		t.Errorf("%q", got)
	}
}

func TestMonstrousLinesAreNotQuoted(t *testing.T) {
	_, found := Parse("f", []byte("a = "+strings.Repeat("b", maxQuotedLine+1)))
	if len(found) != 1 || found[0].SourceLine != "" || len(found[0].Detail) > 200 {
		t.Error(briefs(found))
	}
}
