package main

import (
	"regexp"
	"strings"

	"doorpocket/components/problem"
)

// block is a part of a page of help between empty lines: running text, or lines
// that stand as they are.
type block struct {
	lines []string
	asIs  bool
}

// columns is what makes a block one of lines that stand as they are: they are
// set in, or have columns.
var columns = regexp.MustCompile(`^  |\S {2,}\S`)

// blocks takes a page of help apart.
func blocks(text string) []block {
	var all []block
	for part := range strings.SplitSeq(strings.Trim(text, "\n"), "\n\n") {
		b := block{lines: strings.Split(part, "\n")}
		for _, line := range b.lines {
			b.asIs = b.asIs || columns.MatchString(line)
		}
		all = append(all, b)
	}
	return all
}

// fitted gives a page of help for a terminal of so many columns. The pages are
// written for 80.
func fitted(text string, columns int) string {
	if columns <= 0 || columns >= 80 {
		return text
	}
	var parts []string
	for i, b := range blocks(text) {
		if i > 0 && !b.asIs { // the first block says how the command is written
			b.lines = problem.Wrap(strings.Join(b.lines, " "), max(columns, 20))
		}
		parts = append(parts, strings.Join(b.lines, "\n"))
	}
	return strings.Join(parts, "\n\n") + "\n"
}
