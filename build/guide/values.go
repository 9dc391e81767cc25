package guide

import (
	"strconv"

	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/quantity"
)

// sections lists the sections of a page that stand on this van.
func (b *builder) sections(f *spec.Fitted, words *components.Words) []int {
	var standing []int
	for i, s := range words.Page.Sections {
		if b.guide.Van.Holds(f, s.Stands) {
			standing = append(standing, i)
		}
	}
	return standing
}

// Value is a fact in words, by the name that the library's words use. ok is
// false where the van lacks it; a missing text says nothing instead, since the
// operator's own words may always be absent.
func (g *Guide) Value(f *spec.Fitted, name, unit string) (text string, ok bool) {
	if shared, found := g.shared(name); found {
		return shared, shared != ""
	}
	if f == nil {
		f = &spec.Fitted{}
	}
	if f.System != nil {
		if c, found := f.System.Constants[name]; found {
			return g.quantity(c.Value.Quantity, unit), true
		}
	}
	v := g.Van.Value(f, name)
	if v.IsZero() {
		return "", g.isText(f, name)
	}
	return g.say(f, name, v, unit), true
}

// shared is a value of the van or the fleet, "" where the fleet does not state
// it.
func (g *Guide) shared(name string) (string, bool) {
	switch name {
	case "van.name":
		return g.Van.Name, true
	case "van.code":
		return g.Van.Code, true
	case "fleet.name":
		return g.Operator.Name, true
	case "fleet.helpline":
		return g.Operator.Call.Helpline, true
	case "fleet.emergency":
		return g.Operator.Call.Emergency, true
	case "fleet.hours":
		return g.Operator.Call.Hours, true
	case "fleet.mail":
		return g.Operator.Call.Mail, true
	}
	return "", false
}

// declared finds a fact and the fitted system that declares it.
func (g *Guide) declared(f *spec.Fitted, name string) (*spec.Fitted, string, *fact.Decl) {
	const body = "body."
	if len(name) > len(body) && name[:len(body)] == body {
		f, name = g.Van.Body, name[len(body):]
	}
	if f == nil || f.System == nil {
		return nil, name, nil
	}
	return f, name, f.System.Fact(name)
}

func (g *Guide) isText(f *spec.Fitted, name string) bool {
	_, _, d := g.declared(f, name)
	return d != nil && d.Type.Kind == fact.Text
}

func (g *Guide) say(f *spec.Fitted, name string, v fact.Value, unit string) string {
	switch v.Kind {
	case fact.Quantity:
		return g.quantity(v.Quantity, unit)
	case fact.Choice, fact.Choices:
		f, name, _ := g.declared(f, name)
		var words []string
		for _, option := range v.Options {
			words = append(words, f.System.Words[g.Lang].Choices[name][option])
		}
		return g.values.List(words)
	case fact.Count:
		return strconv.Itoa(v.Count)
	case fact.YesNo:
		if v.Yes {
			return g.values.Yes
		}
		return g.values.No
	case fact.Date:
		return g.values.Date(v.Date)
	default:
		return v.Text
	}
}

// Said is one fact of a fitted system in words.
type Said struct{ Name, Text string }

// Facts are the facts that are stated of a fitted system and mean something on
// this van, in the order of the system's file.
func (g *Guide) Facts(f *spec.Fitted) []Said {
	var all []Said
	words := f.System.Words[g.Lang]
	for _, d := range f.System.Facts {
		v := g.Van.Value(f, d.Name)
		if v.IsZero() || words == nil || !g.Van.Holds(f, d.Sense) {
			continue
		}
		all = append(all, Said{words.Facts[d.Name], g.say(f, d.Name, v, "")})
	}
	return all
}

// quantity shows a value in the unit asked for, or as it was written.
func (g *Guide) quantity(q quantity.Quantity, unit string) string {
	u, ok := quantity.UnitOf(unit, q.Dimension())
	if !ok || u == q.Unit() {
		return g.format.Format(q, quantity.Style{})
	}
	return g.format.Format(q, quantity.In(u))
}

// Quantity is a stated quantity as it was written, for places and waits.
func (g *Guide) Quantity(v fact.Value) string { return g.quantity(v.Quantity, "") }

// SpecDate is the day of the van's spec in words.
func (g *Guide) SpecDate() string { return g.values.Date(g.Van.SpecDate) }

// Language is that of the kit's guides.
func (k *Kit) Language() string { return k.lang }

// Say is a value of a fact of something fitted, in words.
func (k *Kit) Say(f *spec.Fitted, name string, v fact.Value) string {
	g := Guide{Lang: k.lang, values: k.values, format: k.format}
	return g.say(f, name, v, "")
}
