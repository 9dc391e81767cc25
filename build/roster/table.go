// Package roster holds a fleet as one table, a row a van: written for whoever
// keeps a spreadsheet, and read from one into specs.
package roster

import (
	"fmt"
	"strings"
	"unicode"

	"doorpocket/components/problem"
)

// Kind is the kind of a cell.
type Kind uint8

// The kinds of cells. A file of text has only words.
const (
	Words Kind = iota
	Number
	Day // written as 2027-03-14
)

// Cell is one cell. A number is written in digits with a point.
type Cell struct {
	Text string
	Kind Kind
}

// Table is what a file holds. Rows may be of different lengths.
type Table struct {
	File  string // as shown in problems
	Rows  [][]Cell
	Comma bool // numbers of the file have a decimal comma, as far as can be told from it
	// Sheets are the names of the sheets that were not read.
	Sheets []string
}

// at is the place of a cell: row and column, from 1, as a spreadsheet counts.
func (t *Table) at(row, column int) problem.Span {
	return problem.Span{File: t.File, Start: problem.Pos{Line: row + 1, Column: column + 1}}
}

// cell is a cell that may be beyond the end of its row.
func (t *Table) cell(row, column int) Cell {
	if row < len(t.Rows) && column < len(t.Rows[row]) {
		return t.Rows[row][column]
	}
	return Cell{}
}

// letters is what a spreadsheet calls a column: A, B, ..., Z, AA.
func letters(column int) string {
	name := ""
	for n := column + 1; n > 0; n = (n - 1) / 26 {
		name = string(rune('A'+(n-1)%26)) + name
	}
	return name
}

// columnName names a column by its letters and its heading.
func columnName(column int, head string) string {
	return fmt.Sprintf("column %s, %q", letters(column), head)
}

// readable is the text of a cell without what no spec may hold: control characters,
// which get into cells when they are copied from elsewhere.
func readable(text string) string {
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n':
			return r
		case r == '\r', r == unicode.ReplacementChar, unicode.IsControl(r), unicode.Is(unicode.Noncharacter_Code_Point, r):
			return -1
		}
		return r
	}, text))
}
