package components

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"

	"doorpocket/components/problem"
	"doorpocket/components/reading"
)

// hole is what words may name instead of writing it: {$fact} and {when="..."}.
var hole = regexp.MustCompile(`\{\$[^}]*\}|\{when=[^}]*\}`)

// FiguresInWords warns of numbers with a unit that the words of a page hold
// themselves: they would stay as they are when the fact changes.
func FiguresInWords(name string, page []byte) problem.List {
	var found problem.List
	for i, line := range strings.Split(string(page), "\n") {
		span := problem.Span{File: name, Start: problem.Pos{Line: i + 1, Column: 1}}
		if p, ok := figureInWords(span, line); ok {
			found.Add(p.WithLine(strings.TrimRight(line, "\r")))
		}
	}
	return found
}

// figureInWords looks for a figure in one line that begins at a span.
func figureInWords(at problem.Span, line string) (problem.Problem, bool) {
	blank := func(s string) string { return strings.Repeat("x", utf8.RuneCountInString(s)) } // keeps the columns
	text := hole.ReplaceAllStringFunc(line, blank)
	figure := reading.Figure(text)
	if figure == "" {
		return problem.Problem{}, false
	}
	if before, _, ok := strings.Cut(text, figure); ok && at.Length == 0 {
		at.Start.Column += utf8.RuneCountInString(before)
		at.Length = utf8.RuneCountInString(figure)
	}
	return problem.New(problem.Warning, at, "figure-in-words", fmt.Sprintf("%q stands in the words", figure),
		"One value has one source: make it a fact, or a [constant] with its source, and name it as {$name}."), true
}
