package roster

import (
	"regexp"
	"slices"
	"strings"

	"doorpocket/components/fact"
	"doorpocket/components/quantity"
)

// numbered is a number with what stands behind it.
var numbered = regexp.MustCompile("^([-+\u2212]?\\d(?:[\\d., '\u2019\u00a0\u2009\u202f]*\\d)?)\\s*(.*)$")

// grouping are signs that part thousands and never decimals.
var grouping = strings.NewReplacer(" ", "", "'", "", "\u2019", "", "\u00a0", "", "\u2009", "", "\u202f", "", "\u2212", "-", "+", "")

// thousands is a number of which every comma, or every point, can part thousands.
var thousands = map[string]*regexp.Regexp{
	",": regexp.MustCompile(`^-?[1-9]\d{0,2}(?:,\d{3})+$`), ".": regexp.MustCompile(`^-?[1-9]\d{0,2}(?:\.\d{3})+$`),
}

// numbers gives what a number can mean, with a decimal point and no grouping, the
// likelier first: "5,5" is 5.5; "1,590" is 1590 or 1.590; "1.234,5" is 1234.5.
func numbers(text string, comma bool) []string {
	text = grouping.Replace(text)
	point, other := strings.LastIndex(text, "."), strings.LastIndex(text, ",")
	switch {
	case point < 0 && other < 0:
		return []string{text}
	case point >= 0 && other >= 0: // the last one is the decimal mark
		if point > other {
			return []string{strings.ReplaceAll(text, ",", "")}
		}
		return []string{strings.Replace(strings.ReplaceAll(text, ".", ""), ",", ".", 1)}
	}
	mark := "."
	if other >= 0 {
		mark = ","
	}
	var all []string
	if strings.Count(text, mark) == 1 {
		all = append(all, strings.Replace(text, mark, ".", 1))
	}
	if thousands[mark].MatchString(text) {
		all = append(all, strings.ReplaceAll(text, mark, ""))
	}
	if len(all) == 2 && mark == "," && !comma || len(all) == 2 && mark == "." && comma {
		slices.Reverse(all)
	}
	return all
}

// within reports whether a quantity can be a value of a fact.
func within(d *fact.Decl, q quantity.Quantity) bool {
	if !d.Low.IsZero() {
		if order, err := quantity.Compare(q, d.Low.Quantity); err != nil || order < 0 {
			return false
		}
	}
	if !d.High.IsZero() {
		if order, err := quantity.Compare(q, d.High.Quantity); err != nil || order > 0 {
			return false
		}
	}
	return true
}

// written reads a cell as a quantity in the form of specs. unit is that of the
// heading. doubtful tells that the number could have meant something else; bare
// that there is no unit.
func written(c Cell, d *fact.Decl, unit string, comma bool) (text string, doubtful, bare bool) {
	dim := d.Type.Dimension
	m := numbered.FindStringSubmatch(c.Text)
	alone := m != nil && m[2] == ""
	if _, err := quantity.Parse(c.Text, dim); err == nil && (unit == "" || !alone) && !(comma && strings.Contains(c.Text, ".")) {
		return c.Text, false, false
	}
	if m == nil {
		return c.Text, false, false // the fact says what is wrong
	}
	if m[2] != "" {
		unit = m[2]
	}
	if unit == "" {
		return c.Text, false, true
	}
	candidates := numbers(m[1], comma)
	if c.Kind == Number {
		candidates = []string{c.Text}
	}
	var fits []string
	for _, n := range candidates {
		if q, err := quantity.Parse(n+" "+strings.TrimSpace(unit), dim); err == nil && within(d, q) {
			fits = append(fits, n+" "+strings.TrimSpace(unit))
		}
	}
	switch {
	case len(fits) > 0:
		return fits[0], len(fits) > 1, false
	case len(candidates) > 0:
		return candidates[0] + " " + strings.TrimSpace(unit), false, false
	}
	return c.Text, false, false
}

// unitFor is the one unit in which all numbers of a column can be values of a fact;
// the zero Unit where there is none or several.
func unitFor(d *fact.Decl, texts []string, comma bool) quantity.Unit {
	var found quantity.Unit
	if d.Low.IsZero() || d.High.IsZero() || len(texts) == 0 {
		return found
	}
	for _, u := range quantity.Units(d.Type.Dimension) {
		fits := !u.Composite()
		for _, text := range texts {
			_, bad := fitting(d, text, u, comma)
			fits = fits && !bad
		}
		switch {
		case fits && !found.IsZero():
			return quantity.Unit{}
		case fits:
			found = u
		}
	}
	return found
}

func fitting(d *fact.Decl, text string, u quantity.Unit, comma bool) (string, bool) {
	m := numbered.FindStringSubmatch(text)
	if m == nil || m[2] != "" {
		return "", true
	}
	for _, n := range numbers(m[1], comma) {
		if q, err := quantity.Parse(n+" "+u.Name(), d.Type.Dimension); err == nil && within(d, q) {
			return n, false
		}
	}
	return "", true
}
