package manifest

import (
	"fmt"
	"strconv"
	"strings"

	"doorpocket/components/problem"
)

// aText is what Text wants. An example of the caller's shows the unit that a
// number needs, so it is better than the number in quotes.
const aText = "a text in quotes"

// wrongType reports a value of another type than the one wanted.
func (r *Reader) wrongType(e Entry, w wish, want string) {
	example := w.example
	if better := reworded(e.Value, r.written(e), want); better != "" && !(w.given && want == aText) {
		example = better
	}
	r.Report(problem.New(problem.Error, e.ValueSpan, "wrong-type", "Wrong type for "+quote(e.Key),
		fmt.Sprintf("Written here: %s. Expected: %s. For example: %s = %s", r.describe(e), want, bareOrQuoted(e.Key), example)))
}

// wrongItem reports an item of a list that is not a text.
func (r *Reader) wrongItem(e Entry) {
	if unreadable(e) {
		return
	}
	r.Report(problem.New(problem.Error, e.ValueSpan, "wrong-type", "Wrong type in the list "+quote(e.Key),
		fmt.Sprintf("Written here: %s. Expected: a text in quotes. For example: %s = [\"...\"]", r.describe(e), bareOrQuoted(e.Key))))
}

// describe names what is written, and repeats it if it is short.
func (r *Reader) describe(e Entry) string {
	kind := Describe(e.Value)
	switch e.Value.(type) {
	case bool:
		return r.written(e)
	case *Table, []Entry:
		return kind
	}
	return kind + ", " + cut(r.written(e))
}

// written returns a value as it stands in the file.
func (r *Reader) written(e Entry) string { return r.table.source.Text(e.ValueSpan) }

// reworded returns the written value in the form that was wanted, if it only
// lacks quotes or has some too many; else "".
func reworded(value any, written, want string) string {
	text, isText := value.(string)
	text = strings.TrimSpace(text)
	switch {
	case isText && strings.HasPrefix(want, "a whole number"):
		return ifParses(text, func(s string) error { _, err := strconv.ParseInt(s, 10, 64); return err })
	case isText && strings.HasPrefix(want, "a number"):
		return ifParses(text, func(s string) error { _, err := strconv.ParseFloat(s, 64); return err })
	case isText && strings.HasPrefix(want, "a date"):
		if d, ok := dateIn(text); ok {
			return d.String()
		}
	case isText && strings.HasPrefix(want, "true"):
		return yesOrNo(text)
	case isText && want == "a list of texts":
		return "[" + strconv.Quote(cut(text)) + "]"
	}
	if want == aText && !isText && !manifold(value) {
		return strconv.Quote(cut(written))
	}
	if moment, ok := value.(Moment); ok && strings.HasPrefix(want, "a date") && !moment.Day.IsZero() {
		return moment.Day.String()
	}
	return ""
}

// manifold reports whether a value holds others.
func manifold(value any) bool {
	switch value.(type) {
	case *Table, []Entry:
		return true
	}
	return false
}

// ifParses returns the text if it parses.
func ifParses(text string, parse func(string) error) string {
	if text == "" || parse(text) != nil {
		return ""
	}
	return text
}

// dateIn reads a date that was written as a text.
func dateIn(text string) (Date, bool) {
	values, err := decode([]byte("date = " + text))
	if err != nil || values["date"] == nil || len(text) != len("2026-10-02") {
		return Date{}, false
	}
	d, ok := asDate(text).(Date)
	return d, ok && d.Month > 0
}

// yesOrNo turns common words into the TOML ones.
func yesOrNo(word string) string {
	switch strings.ToLower(word) {
	case "true", "yes", "on", "y":
		return "true"
	case "false", "no", "off", "n":
		return "false"
	}
	return ""
}
