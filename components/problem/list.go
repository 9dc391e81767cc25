package problem

import (
	"cmp"
	"fmt"
	"slices"
)

// List gathers problems in the order in which they are found.
type List []Problem

// Add appends problems to the list.
func (l *List) Add(problems ...Problem) { *l = append(*l, problems...) }

// Errorf adds an error whose detail is formatted as by fmt.Sprintf.
func (l *List) Errorf(span Span, code, summary, detail string, args ...any) {
	l.Add(New(Error, span, code, summary, format(detail, args)))
}

// Warnf adds a warning whose detail is formatted as by fmt.Sprintf.
func (l *List) Warnf(span Span, code, summary, detail string, args ...any) {
	l.Add(New(Warning, span, code, summary, format(detail, args)))
}

// format leaves a text without arguments alone, so that "100 %" may be written
// plainly.
func format(text string, args []any) string {
	if len(args) == 0 {
		return text
	}
	return fmt.Sprintf(text, args...)
}

// HasErrors reports whether the list holds at least one error.
func (l List) HasErrors() bool {
	return slices.ContainsFunc(l, func(p Problem) bool { return p.Severity == Error })
}

// Counts returns how many errors and warnings the list holds.
func (l List) Counts() (errors, warnings int) {
	for _, p := range l {
		switch p.Severity {
		case Error:
			errors++
		case Warning:
			warnings++
		}
	}
	return errors, warnings
}

// Sort puts errors before warnings, then orders by file, line, column, summary
// and code. Problems that agree in all of these keep their order.
func (l List) Sort() {
	slices.SortStableFunc(l, func(a, b Problem) int {
		return cmp.Or(
			cmp.Compare(a.Severity, b.Severity),
			cmp.Compare(a.File, b.File),
			cmp.Compare(a.Start.Line, b.Start.Line),
			cmp.Compare(a.Start.Column, b.Start.Column),
			cmp.Compare(a.Summary, b.Summary),
			cmp.Compare(a.Code, b.Code),
		)
	})
}

// Dedupe removes every problem that says the same as an earlier one: same
// severity, code, place, summary and detail. The first stays where it was.
func (l *List) Dedupe() {
	type key struct {
		severity              Severity
		code, summary, detail string
		span                  Span
	}
	seen := make(map[key]bool, len(*l))
	*l = slices.DeleteFunc(*l, func(p Problem) bool {
		k := key{p.Severity, p.Code, p.Summary, p.Detail, p.Span}
		again := seen[k]
		seen[k] = true
		return again
	})
}
