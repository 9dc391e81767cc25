package manifest

import (
	"fmt"
	"math"
	"strconv"

	"doorpocket/components/problem"
)

// missing reports a key that has to be there.
func (r *Reader) missing(key string, w wish) {
	line := bareOrQuoted(key) + " = " + w.example
	if w.brackets != "" && (r.table.header != "" || r.table.root) {
		line = r.headerFor(key, w.brackets)
	}
	where := r.table.where
	if w.brackets != "" {
		where = "in this file"
	}
	r.Report(problem.New(problem.Error, r.table.span, "missing-key", "Missing key "+quote(key),
		fmt.Sprintf("This key has to be written %s. Add for example: %s", where, line)))
}

// headerFor returns the header of a table inside this one.
func (r *Reader) headerFor(key, brackets string) string {
	path := bareOrQuoted(key)
	if r.table.header != "" {
		path = r.table.header + "." + path
	}
	return fmt.Sprintf(brackets, path)
}

// empty reports a text or list that is there but says nothing.
func (r *Reader) empty(key string, w wish) {
	r.Problem(key, "empty-value", "Empty value for "+quote(key),
		fmt.Sprintf("Something has to be written here. For example: %s = %s", bareOrQuoted(key), w.example))
}

// outOfRange reports a number that is too small or too large.
func (r *Reader) outOfRange(key, want string) {
	r.Problem(key, "out-of-range", "Number out of range for "+quote(key),
		fmt.Sprintf("Written here: %s. Write a number %s.", cut(r.table.source.Text(r.Span(key))), want))
}

// intRange says which whole numbers are allowed.
func intRange(low, high int) string {
	if high == math.MaxInt {
		return fmt.Sprintf("of %d or more", low)
	}
	return fmt.Sprintf("from %d to %d", low, high)
}

// floatRange says which numbers are allowed.
func floatRange(low, high float64) string {
	write := func(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
	switch {
	case math.IsInf(high, 1):
		return "of " + write(low) + " or more"
	case math.IsInf(low, -1):
		return "of " + write(high) + " or less"
	}
	return "from " + write(low) + " to " + write(high)
}
