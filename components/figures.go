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
		for _, p := range figuresInWords(span, line) {
			found.Add(p.WithLine(strings.TrimRight(line, "\r")))
		}
	}
	return found
}

// FigureInWords warns of numbers with a unit in a line of an operator's own
// words.
func FigureInWords(at problem.Span, line string) problem.List { return figuresInWords(at, line) }

// figuresInWords looks for figures in one line that begins at a span. A span
// that has a length stands for all of the line.
func figuresInWords(at problem.Span, line string) problem.List {
	blank := func(s string) string { return strings.Repeat("x", utf8.RuneCountInString(s)) } // keeps the columns
	text := hole.ReplaceAllStringFunc(line, blank)
	var found problem.List
	passed := 0 // bytes of the text
	for _, figure := range reading.Figures(text) {
		span := at
		if i := strings.Index(text[passed:], figure); i >= 0 && at.Length == 0 {
			span.Start.Column += utf8.RuneCountInString(text[:passed+i])
			span.Length = utf8.RuneCountInString(figure)
			passed += i + len(figure)
		}
		found.Add(problem.New(problem.Warning, span, "figure-in-words", fmt.Sprintf("%q stands in the words", figure),
			"One value has one source: make it a fact, or a [constant] with its source, and name it as {$name}."))
	}
	return found
}
