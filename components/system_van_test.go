package components_test

import (
	"slices"
	"strconv"
	"strings"

	"golang.org/x/text/language"

	"doorpocket/components"
	"doorpocket/components/condition"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/quantity"
)

// onVan is one system on one imagined van. It answers conditions and fills in
// words, so that a test reads what a hirer of such a van reads.
type onVan struct {
	lib    *components.Library
	system *components.System
	body   map[string]fact.Value
	values map[string]fact.Value
	aboard bool // whether the van has every other system or none
}

// vansWith imagines vans that together show every option of every choice of a
// system, both answers of every yes or no, with all that may be stated and with
// no more than must be, among all other systems and alone.
func vansWith(lib *components.Library, s *components.System) []*onVan {
	most := 2
	for _, d := range s.Facts {
		most = max(most, len(d.Of))
	}
	var vans []*onVan
	for option := range most {
		for _, full := range []bool{true, false} {
			for _, aboard := range []bool{true, false} {
				v := &onVan{lib: lib, system: s, aboard: aboard}
				v.body = v.stated(lib.System(components.BodySystem), option, true)
				v.values = v.stated(s, option, full)
				vans = append(vans, v)
			}
		}
	}
	return vans
}

// stated gives the facts of a system that make sense together.
func (v *onVan) stated(s *components.System, option int, full bool) map[string]fact.Value {
	v.values = map[string]fact.Value{}
	for _, d := range s.Facts {
		if d.Type.Kind == fact.Text && d.Required || full || d.Always() {
			v.values[d.Name] = stated(d, option)
		}
	}
	for changed := true; changed; {
		changed = false
		for _, d := range s.Facts {
			when, err := condition.Parse(d.When)
			if _, there := v.values[d.Name]; there && err == nil && !when.Holds(v) {
				delete(v.values, d.Name)
				changed = true
			}
		}
	}
	return v.values
}

// stated is a value that a van may state.
func stated(d fact.Decl, option int) fact.Value {
	value := fact.Value{Kind: d.Type.Kind}
	switch d.Type.Kind {
	case fact.Choice:
		value.Options = []string{d.Of[option%len(d.Of)]}
	case fact.Choices:
		value.Options = someOf(d.Of, option)
	case fact.Count:
		value.Count = 1 + option
		if !d.Low.IsZero() {
			value.Count = min(d.Low.Count+option, max(d.High.Count, d.Low.Count))
		}
	case fact.YesNo:
		value.Yes = option%2 == 0
	case fact.Date:
		value.Date = manifest.Date{Year: 2028, Month: 3, Day: 14}
	case fact.Text:
		value.Text = "It is beside the door."
	case fact.Quantity:
		switch {
		case option%2 == 1 && !d.High.IsZero():
			return d.High
		case !d.Low.IsZero():
			return d.Low
		}
		value.Quantity, _ = quantity.New(2, quantity.Units(d.Type.Dimension)[0])
	}
	return value
}

// someOf is up to three options: a sentence that lists more is as long as the
// list that somebody put into their spec.
func someOf(all []string, option int) []string {
	var some []string
	for i := range min(len(all), 3) {
		some = append(some, all[(option+i)%len(all)])
	}
	return some
}

// Aboard answers a condition about another system.
func (v *onVan) Aboard(system string) bool { return v.aboard || system == v.system.ID }

// Present answers a condition about a fact.
func (v *onVan) Present(key string) bool {
	value := v.value(key)
	return !value.IsZero() && (value.Kind != fact.YesNo || value.Yes)
}

// Compare answers a condition that compares a fact.
func (v *onVan) Compare(key, value string) (int, bool) { return v.value(key).Compare(value) }

func (v *onVan) value(key string) fact.Value {
	if name, ok := strings.CutPrefix(key, "body."); ok {
		return v.body[name]
	}
	return v.values[key]
}

func (v *onVan) holds(when string) bool {
	c, err := condition.Parse(when)
	return err == nil && c.Holds(v)
}

// Value is a fact as the page says it.
func (v *onVan) Value(name, unit string) (string, bool) {
	if slices.Contains(components.MaybeValues, name) {
		return "", false
	}
	if slices.Contains(components.SharedValues, name) {
		return map[string]string{"van.name": "Rowan", "van.code": "RW", "fleet.name": "Sample Fleet", "fleet.helpline": "01632 960111", "fleet.emergency": "112"}[name], true
	}
	value := v.value(name)
	if c, ok := v.system.Constants[name]; ok {
		value = c.Value
	}
	system := v.system
	if own, ok := strings.CutPrefix(name, "body."); ok {
		system, name = v.lib.System(components.BodySystem), own
	}
	if value.IsZero() {
		d := system.Fact(name)
		return "", d != nil && d.Type.Kind == fact.Text
	}
	return v.say(system, name, value, unit), true
}

var english = quantity.NewFormatter(language.English)

func (v *onVan) say(system *components.System, name string, value fact.Value, unit string) string {
	words := v.lib.Values["en"]
	switch value.Kind {
	case fact.Quantity:
		style := quantity.Style{}
		if u, ok := quantity.UnitOf(unit, value.Quantity.Dimension()); ok {
			style = quantity.In(u)
		}
		return english.Format(value.Quantity, style)
	case fact.Choice, fact.Choices:
		var said []string
		for _, option := range value.Options {
			said = append(said, system.Words["en"].Choices[name][option])
		}
		return words.List(said)
	case fact.Count:
		return strconv.Itoa(value.Count)
	case fact.YesNo:
		return map[bool]string{true: words.Yes, false: words.No}[value.Yes]
	case fact.Date:
		return words.Date(value.Date)
	default:
		return value.Text
	}
}

// Link makes plain text of every link.
func (v *onVan) Link(string, string) (string, bool) { return "", false }

// Embed leaves tables and figures away.
func (v *onVan) Embed(string, string, string) (string, bool) { return "", true }
