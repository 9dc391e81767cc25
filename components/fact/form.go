package fact

import (
	"fmt"
	"strings"

	"doorpocket/components/quantity"
)

// Form says in words what a spec may state for the fact: `"valve" or "switch"`,
// "a mass with its unit, from 2 kg to 47 kg". It holds every option of a
// choice and never a value to copy where that could be a wrong one.
func (d *Decl) Form() string {
	switch d.Type.Kind {
	case Choice:
		return list(quoted(d.Of))
	case Choices:
		return "a list of any of " + list(quoted(d.Of))
	case YesNo:
		return "true or false"
	case Date:
		return "a day, year-month-day, without quotes"
	case Text:
		return "your own words in quotes"
	case Count:
		return "a whole number" + d.within()
	}
	return fmt.Sprintf("%s with its unit in quotes%s", a(strings.ReplaceAll(d.Type.Dimension.String(), "-", " ")), d.within())
}

// Blank is how a spec states the fact, with all options of a choice and with
// dots in place of any other value: `net = "... kg" (from 2 kg to 47 kg)`.
func (d *Decl) Blank() string {
	line := d.Name + " = "
	switch d.Type.Kind {
	case Choice:
		return line + list(quoted(d.Of))
	case Choices:
		return line + "[...] of " + list(quoted(d.Of))
	case Text:
		return line + `"..."`
	case YesNo:
		return line + "true or false"
	case Date:
		return line + "a day, year-month-day"
	case Count:
		return line + "..." + d.inBrackets()
	}
	unit := quantity.Units(d.Type.Dimension)[0]
	if !d.Low.IsZero() {
		unit = d.Low.Quantity.Unit()
	}
	return fmt.Sprintf("%s\"... %s\"%s", line, unit.Name(), d.inBrackets())
}

func (d *Decl) inBrackets() string {
	if d.Low.IsZero() && d.High.IsZero() {
		return ""
	}
	return " (" + d.RangeText() + ")"
}

func (d *Decl) within() string {
	if d.Low.IsZero() && d.High.IsZero() {
		return ""
	}
	return ", " + d.RangeText()
}

// a puts the article before a name.
func a(name string) string {
	if strings.ContainsAny(name[:1], "aeiou") {
		return "an " + name
	}
	return "a " + name
}

func quoted(names []string) []string {
	var all []string
	for _, name := range names {
		all = append(all, fmt.Sprintf("%q", name))
	}
	return all
}
