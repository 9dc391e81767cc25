package schema

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/quantity"
)

// facts are the keys of the facts of a system.
func (m *maker) facts(s *components.System) node {
	words := s.Words[m.lang]
	all := node{}
	for i := range s.Facts {
		d := &s.Facts[i]
		n := m.value(d)
		n["description"] = m.about(d, words)
		all[d.Name] = n
	}
	return all
}

// value says what may be written for a fact.
func (m *maker) value(d *fact.Decl) node {
	switch d.Type.Kind {
	case fact.Quantity:
		return node{"allOf": []node{m.quantity(d.Type.Dimension)}}
	case fact.Choice:
		return node{"type": "string", "enum": d.Of}
	case fact.Choices:
		return node{"type": "array", "items": node{"type": "string", "enum": d.Of}}
	case fact.Count:
		n := node{"type": "integer", "minimum": 0}
		if !d.Low.IsZero() {
			n["minimum"] = d.Low.Count
		}
		if !d.High.IsZero() {
			n["maximum"] = d.High.Count
		}
		return n
	case fact.YesNo:
		return node{"type": "boolean"}
	case fact.Date:
		return node{"type": "string", "format": "date"}
	default:
		return node{"type": "string"}
	}
}

// about explains a fact: what it is, its range, when it is needed, and what the
// options of a choice mean.
func (m *maker) about(d *fact.Decl, words *components.Words) string {
	parts := []string{d.Name}
	if words != nil && words.Facts[d.Name] != "" {
		parts[0] = words.Facts[d.Name]
	}
	if r := d.RangeText(); r != "" {
		parts = append(parts, r)
	}
	switch {
	case d.Required && d.When != "":
		parts = append(parts, "needed where "+d.When)
	case d.Required:
		parts = append(parts, "needed")
	case d.When != "":
		parts = append(parts, "only where "+d.When)
	}
	if words != nil && len(words.Choices[d.Name]) > 0 {
		var options []string
		for _, o := range d.Of {
			options = append(options, o+" ("+words.Choices[d.Name][o]+")")
		}
		parts = append(parts, "one of: "+strings.Join(options, "; "))
	}
	return sentence(parts...)
}

// quantity refers to the text of a quantity of a dimension.
func (m *maker) quantity(dim quantity.Dimension) node {
	name := "quantity of " + dim.String()
	var names []string
	for _, u := range quantity.Units(dim) {
		names = append(names, u.Name())
	}
	m.shared[name] = node{"type": "string", "pattern": pattern(dim),
		"description": fmt.Sprintf("A number and a unit of %s in quotes: %s.", dim, strings.Join(names, ", "))}
	return node{"$ref": "#/definitions/" + strings.ReplaceAll(name, " ", "%20")}
}

// pattern is a regular expression for what quantity.Parse accepts; it accepts a
// little more, such as a mass below zero.
func pattern(dim quantity.Dimension) string {
	var quoted []string
	for _, s := range quantity.Spellings(dim) {
		quoted = append(quoted, strings.ReplaceAll(regexp.QuoteMeta(s), " ", "[ \u00a0]"))
	}
	const space = "[ \u00a0\u2009\u202f\t]*"
	number := "-?[0-9]+([ \u00a0\u2009\u202f][0-9]{3})*(\\.[0-9]+)?"
	unit := "(" + strings.Join(quoted, "|") + ")"
	shape := number + space + unit
	switch {
	case dim == quantity.Ratio:
		shape += "?"
	case slices.ContainsFunc(quantity.Units(dim), quantity.Unit.Composite):
		shape += "(" + space + shape + ")?" // 9 ft 2 in
	}
	return "^" + space + shape + space + "$"
}
