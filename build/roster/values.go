package roster

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// yes and no as people write them into a cell.
var (
	yes = []string{"yes", "y", "true", "1", "x", "✓", "✔", "fitted", "ja", "oui"}
	no  = []string{"no", "n", "false", "0", "-", "–", "nein", "non"}
)

// dayForm says in which order a column has day and month.
type dayForm uint8

const (
	dayFirst dayForm = iota
	monthFirst
)

var (
	slashed = regexp.MustCompile(`^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$`)
	dotted  = regexp.MustCompile(`^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$`)
)

// namedDays are the forms that leave no doubt.
var namedDays = []string{time.DateOnly, "2 January 2006", "2 Jan 2006", "January 2, 2006", "Jan 2, 2006", "02-Jan-2006", "2-Jan-06", "2006/01/02", "2006-01-02 15:04:05", "2006-01-02T15:04:05Z07:00"}

// day reads a day in the form of specs; ok is false where it is none.
func day(text string, form dayForm) (iso string, ok bool) {
	for _, f := range namedDays {
		if at, err := time.Parse(f, text); err == nil {
			return at.Format(time.DateOnly), true
		}
	}
	m := dotted.FindStringSubmatch(text)
	if m == nil {
		if m = slashed.FindStringSubmatch(text); m == nil {
			return "", false
		}
		if form == monthFirst {
			m[1], m[2] = m[2], m[1]
		}
	}
	at, err := time.Parse("2-1-2006", strings.TrimLeft(m[1], "0")+"-"+strings.TrimLeft(m[2], "0")+"-"+m[3])
	return at.Format(time.DateOnly), err == nil
}

// formOf tells from all days of a column which comes first, and whether that is
// certain.
func formOf(texts []string) (form dayForm, certain bool) {
	certain = true
	for _, text := range texts {
		m := slashed.FindStringSubmatch(text)
		if m == nil {
			continue
		}
		a, _ := strconv.Atoi(m[1])
		b, _ := strconv.Atoi(m[2])
		switch {
		case a > 12:
			return dayFirst, true
		case b > 12:
			return monthFirst, true
		case a != b:
			certain = false
		}
	}
	return dayFirst, certain
}

// reading turns the cells of one column into values.
type reading struct {
	comma bool
	unit  string // of the heading, or guessed for the column
	days  dayForm
}

// stated is a cell as TOML states the fact. The problem is about the cell; its
// place is for the caller to say.
func (r reading) stated(c Cell, d *fact.Decl, words *components.Words) (toml string, doubtful bool, p *problem.Problem) {
	toml, doubtful, bare := r.guess(c, d, words)
	if bare {
		bad := problem.New(problem.Error, problem.Span{}, "no-unit", fmt.Sprintf("%s has no unit", c.Text),
			fmt.Sprintf("It is %s. Write the unit in the heading, for example %q.", d.Form(), "... ("+exampleUnit(d)+")"))
		return "", false, &bad
	}
	table, found := manifest.Parse("", []byte(d.Name+" = "+toml+"\n"))
	if e, ok := table.Get(d.Name); ok && !found.HasErrors() {
		var problems problem.List
		if v := d.Decode(e, &problems); !v.IsZero() {
			return v.TOML(), doubtful, nil
		}
		if problems.HasErrors() {
			bad := problem.New(problem.Error, problem.Span{}, problems[0].Code, problems[0].Summary, problems[0].Detail)
			return "", false, &bad
		}
	}
	bad := problem.New(problem.Error, problem.Span{}, "bad-value", fmt.Sprintf("%q cannot be understood", c.Text), "Write "+d.Form()+".")
	return "", false, &bad
}

func exampleUnit(d *fact.Decl) string {
	if !d.Low.IsZero() {
		return d.Low.Quantity.Unit().Name()
	}
	return d.Type.Dimension.String()
}

// guess is what a cell seems to state.
func (r reading) guess(c Cell, d *fact.Decl, words *components.Words) (toml string, doubtful, bare bool) {
	lower := strings.ToLower(c.Text)
	switch d.Type.Kind {
	case fact.Quantity:
		toml, doubtful, bare = written(c, d, r.unit, r.comma)
		return manifest.Quote(toml), doubtful, bare
	case fact.Choice:
		return manifest.Quote(option(c.Text, d, words)), false, false
	case fact.Choices:
		if lower == nothing {
			return "[]", false, false
		}
		var all []string
		for _, part := range strings.FieldsFunc(c.Text, func(r rune) bool { return strings.ContainsRune(",;/|+", r) }) {
			if part = strings.TrimSpace(part); part != "" {
				all = append(all, manifest.Quote(option(part, d, words)))
			}
		}
		return "[" + strings.Join(all, ", ") + "]", false, false
	case fact.Count:
		if whole, ok := strings.CutSuffix(c.Text, ".0"); ok {
			return whole, false, false
		}
		if strings.Trim(c.Text, "0123456789") != "" {
			return manifest.Quote(c.Text), false, false
		}
		return strings.TrimLeft(c.Text[:len(c.Text)-1], "0") + c.Text[len(c.Text)-1:], false, false
	case fact.YesNo:
		switch {
		case slices.Contains(yes, lower):
			return "true", false, false
		case slices.Contains(no, lower):
			return "false", false, false
		}
		return manifest.Quote(c.Text), false, false
	case fact.Date:
		if iso, ok := day(c.Text, r.days); ok {
			return iso, false, false
		}
		return manifest.Quote(c.Text), false, false
	}
	return manifest.Quote(c.Text), false, false
}

// option is the option that words stand for, or else the words.
func option(text string, d *fact.Decl, words *components.Words) string {
	plain := simple(text)
	for _, o := range d.Of {
		if o == text || simple(o) == plain || words != nil && simple(words.Choices[d.Name][o]) == plain {
			return o
		}
	}
	return text
}
