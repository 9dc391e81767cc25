// Package report writes what is wrong with a fleet for other programs: as JSON,
// and as SARIF 2.1.0, the open format in which hosts of source code show
// problems beside the lines they are about.
package report

import (
	"encoding/json"
	"fmt"
	"io"
	"net/url"
	"strings"

	"doorpocket/components/problem"
)

// Forms are the ways in which problems can be written for programs.
var Forms = []string{"json", "sarif"}

// Write writes the problems in one of the Forms. Both end with a line end; a
// list without problems is written too, so that whoever reads it can tell "none"
// from "not looked".
func Write(w io.Writer, form, version string, list problem.List) error {
	var document any
	switch form {
	case "json":
		document = plain(list)
	case "sarif":
		document = sarif(list, version)
	default:
		return fmt.Errorf("no form %q: there are %s", form, strings.Join(Forms, " and "))
	}
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(document)
}

// place is a piece of a file. Lines and columns count characters from 1; a zero
// one is not known and is left out.
type place struct {
	File   string `json:"file"`
	Line   int    `json:"line,omitempty"`
	Column int    `json:"column,omitempty"`
	Length int    `json:"length,omitempty"`
}

type note struct {
	place
	Text string `json:"text"`
}

type entry struct {
	Severity string `json:"severity"`
	Code     string `json:"code"`
	place
	Summary string `json:"summary"`
	Detail  string `json:"detail,omitempty"`
	Source  string `json:"source_line,omitempty"`
	Notes   []note `json:"notes,omitempty"`
}

type document struct {
	Errors   int     `json:"errors"`
	Warnings int     `json:"warnings"`
	Problems []entry `json:"problems"`
}

func plain(list problem.List) document {
	d := document{Problems: []entry{}}
	d.Errors, d.Warnings = list.Counts()
	for _, p := range list {
		e := entry{Severity: p.Severity.String(), Code: p.Code, place: placeOf(p.Span), Summary: p.Summary, Detail: p.Detail, Source: p.SourceLine}
		for _, n := range p.Notes {
			e.Notes = append(e.Notes, note{place: placeOf(n.Span), Text: n.Text})
		}
		d.Problems = append(d.Problems, e)
	}
	return d
}

func placeOf(s problem.Span) place {
	return place{File: s.File, Line: s.Start.Line, Column: s.Start.Column, Length: s.Length}
}

// address is a file's name as SARIF wants it: a relative reference by RFC 3986.
func address(file string) string {
	return (&url.URL{Path: file}).EscapedPath()
}
