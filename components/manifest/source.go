package manifest

import (
	"sort"
	"strings"
	"unicode/utf8"

	"doorpocket/components/problem"
)

// Source is a file as it was read, kept so that any later stage can quote it.
type Source struct {
	Name string
	Data []byte // without a byte order mark

	text  string // Data, so that lines can be handed out without copies
	lines []int  // offset of the first byte of each line
	runes []int  // runes before every stride-th byte
}

// stride is how many bytes lie between two counts in Source.runes. Without the
// counts, a place in a very long line would take as long as the line.
const stride = 64

// NewSource indexes a file. The data must not change afterwards.
func NewSource(name string, data []byte) *Source {
	s := &Source{Name: name, Data: data, text: string(data), lines: []int{0}}
	count := 0
	for i, b := range data {
		if i%stride == 0 {
			s.runes = append(s.runes, count)
		}
		if utf8.RuneStart(b) {
			count++
		}
		if b == '\n' {
			s.lines = append(s.lines, i+1)
		}
	}
	if len(data)%stride == 0 {
		s.runes = append(s.runes, count)
	}
	return s
}

// Lines returns how many lines the file has; an empty file has one.
func (s *Source) Lines() int { return len(s.lines) }

// Line returns the text of line n, counted from 1, without its line ending. It
// is empty for a line that does not exist.
func (s *Source) Line(n int) string {
	if n < 1 || n > len(s.lines) {
		return ""
	}
	return strings.TrimSuffix(s.text[s.lines[n-1]:s.lineEnd(n)], "\r")
}

// quoted returns a line for use in a problem, as a copy, so that a problem does
// not keep the whole file. A monstrous line is left out: it would take longer to
// print than it is worth.
func (s *Source) quoted(n int) string {
	if line := s.Line(n); len(line) <= maxQuotedLine {
		return strings.Clone(line)
	}
	return ""
}

// Text returns what stands at a span of this file, over line ends if need be.
func (s *Source) Text(span problem.Span) string {
	from, to := s.Offsets(span)
	return s.text[from:to]
}

// Offsets returns the bytes of Data between which a span of this file stands:
// twice 0 where its line does not exist.
func (s *Source) Offsets(span problem.Span) (from, to int) {
	if span.Start.Line < 1 || span.Start.Line > len(s.lines) {
		return 0, 0
	}
	before := s.countTo(s.lines[span.Start.Line-1])
	from = s.offsetOf(before + max(span.Start.Column-1, 0))
	return from, s.offsetOf(s.countTo(from) + max(span.Length, 0))
}

// LineStart returns the offset of the first byte of line n, counted from 1; the
// length of the file for a line behind its last.
func (s *Source) LineStart(n int) int {
	if n > len(s.lines) {
		return len(s.Data)
	}
	return s.lines[max(n, 1)-1]
}

// Span returns the span between two byte offsets.
func (s *Source) Span(start, end int) problem.Span {
	start = min(max(start, 0), len(s.Data))
	end = min(max(end, start), len(s.Data))
	line := s.lineAt(start)
	return problem.Span{
		File:   s.Name,
		Start:  problem.Pos{Line: line, Column: s.countTo(start) - s.countTo(s.lines[line-1]) + 1},
		Length: s.countTo(end) - s.countTo(start),
	}
}

// lineAt returns the number of the line that holds an offset.
func (s *Source) lineAt(offset int) int {
	return sort.Search(len(s.lines), func(i int) bool { return s.lines[i] > offset })
}

// lineEnd returns the offset of the line feed that ends line n, or the end of
// the file.
func (s *Source) lineEnd(n int) int {
	if n < len(s.lines) {
		return s.lines[n] - 1
	}
	return len(s.Data)
}

// countTo returns how many runes start before an offset.
func (s *Source) countTo(offset int) int {
	count := s.runes[offset/stride]
	for _, b := range s.Data[offset/stride*stride : offset] {
		if utf8.RuneStart(b) {
			count++
		}
	}
	return count
}

// offsetOf returns the offset of a rune that has so many runes before it, at
// most the length of the file.
func (s *Source) offsetOf(count int) int {
	block := sort.Search(len(s.runes), func(i int) bool { return s.runes[i] > count }) - 1
	offset := block * stride
	// A rune may have begun in the block before; its other bytes do not count.
	for offset < len(s.Data) && !utf8.RuneStart(s.Data[offset]) {
		offset++
	}
	for n := count - s.runes[block]; n > 0 && offset < len(s.Data); n-- {
		_, size := utf8.DecodeRune(s.Data[offset:])
		offset += size
	}
	return offset
}
