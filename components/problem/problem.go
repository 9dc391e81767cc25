// Package problem holds the one type in which every stage says what is wrong
// with a file that somebody wrote: where it is, what it is, and what to do.
//
// A stage gathers problems and carries on; it does not print, and it does not
// stop at the first one:
//
//	var found problem.List
//	found.Errorf(span, "unknown-key", "Unknown key \"nmae\"", "Write \"name\" instead.")
//	if found.HasErrors() {
//		found.Sort()
//		return problem.Write(out, found, problem.Style{})
//	}
//
// The words follow one pattern. Summary is a short noun phrase without a final
// stop. Detail is whole sentences; the last one says what to do. Both are meant
// for somebody who knows vans, not programs.
package problem

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// Severity says whether a problem stops the work. The zero value is invalid on
// purpose, so that a forgotten field shows.
type Severity uint8

const (
	// Error means that nothing is published until it is put right.
	Error Severity = iota + 1
	// Warning means that the result stands, but somebody should look.
	Warning
)

// String returns the word that is printed for the severity.
func (s Severity) String() string {
	switch s {
	case Error:
		return "error"
	case Warning:
		return "warning"
	}
	return fmt.Sprintf("invalid severity %d", uint8(s))
}

// Pos is a place in a text file. Line and Column count from 1; Column counts
// characters (runes), not bytes. Zero means unknown.
type Pos struct{ Line, Column int }

// Known reports whether at least the line is known.
func (p Pos) Known() bool { return p.Line > 0 }

// MarshalText gives "line:column".
func (p Pos) MarshalText() ([]byte, error) { return fmt.Appendf(nil, "%d:%d", p.Line, p.Column), nil }

// UnmarshalText reads what MarshalText gives.
func (p *Pos) UnmarshalText(text []byte) error {
	line, column, _ := strings.Cut(string(text), ":")
	var errs [2]error
	p.Line, errs[0] = strconv.Atoi(line)
	p.Column, errs[1] = strconv.Atoi(column)
	return errors.Join(errs[:]...)
}

// Span is the exact piece of a file that a problem is about.
type Span struct {
	File  string `json:",omitempty"`
	Start Pos    `json:",omitzero"`
	// Length is counted in runes from Start. Zero marks a single place.
	Length int `json:",omitempty"`
}

// String returns "file:line:column", leaving out what is unknown.
func (s Span) String() string {
	switch {
	case s.Start.Line <= 0:
		return s.File
	case s.Start.Column <= 0:
		return fmt.Sprintf("%s:%d", s.File, s.Start.Line)
	}
	return fmt.Sprintf("%s:%d:%d", s.File, s.Start.Line, s.Start.Column)
}

// Note points at a second place that helps to understand a problem, such as
// where a name was written first.
type Note struct {
	Span
	Text string // a phrase that reads well before a place: "first written here"
}

// Problem is one thing that is wrong at one place.
type Problem struct {
	Severity
	// Code names the kind of problem in kebab-case, such as "unknown-key". It
	// never changes once published, so that tests and scripts can rely on it.
	Code string
	Span
	Summary string
	Detail  string `json:",omitempty"`
	// SourceLine is the whole line at Span, without its line ending, or empty.
	SourceLine string `json:",omitempty"`
	Notes      []Note `json:",omitempty"`
}

// New makes a problem without a source line. Code, summary and detail are
// described at Problem.
func New(severity Severity, span Span, code, summary, detail string) Problem {
	return Problem{Severity: severity, Code: code, Span: span, Summary: summary, Detail: detail}
}

// WithLine returns a copy of the problem that quotes the given source line.
func (p Problem) WithLine(line string) Problem {
	p.SourceLine = line
	return p
}

// WithNote returns a copy of the problem with one more note.
func (p Problem) WithNote(span Span, text string) Problem {
	// The slice is copied so that two problems made from one never share notes.
	p.Notes = append(append([]Note(nil), p.Notes...), Note{Span: span, Text: text})
	return p
}

// String returns the first line of the printed form: "place: error: Summary".
// It settles which of the embedded fields speaks for the whole.
func (p Problem) String() string {
	place := p.Span.String()
	if place == "" {
		return safe(p.Severity.String() + ": " + p.Summary)
	}
	return safe(place + ": " + p.Severity.String() + ": " + p.Summary)
}
