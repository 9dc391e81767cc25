package survey

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components/fact"
)

// Kind is in what a van differs from its build sheet.
type Kind string

// The kinds of differences.
const (
	Value  Kind = "fact"   // another value
	Added  Kind = "added"  // a thing that the sheet has not
	Absent Kind = "absent" // a thing that only the sheet has
	Other  Kind = "other"  // another system under the same name
	Place  Kind = "place"  // it is somewhere else
	Named  Kind = "title"  // the operator's own name for it
	Noted  Kind = "note"   // the operator's own words
)

// Difference is one thing in which a van is not as its build sheet says.
type Difference struct {
	Kind   Kind   `json:"kind"`
	Fitted string `json:"fitted"`
	System string `json:"system"`
	Fact   string `json:"fact,omitempty"`
	Now    string `json:"now,omitempty"` // in words, "" for not stated
	Was    string `json:"was,omitempty"` // what the sheet says, in words
}

// Key names what differs, whichever way.
func (d Difference) Key() string {
	kind := d.Kind
	if kind == Absent { // some vans have not what others have added: one line
		kind = Added
	}
	return string(kind) + " " + d.Fitted + " " + d.Fact
}

// differences compares a van with its build sheet. Two values that mean the same
// are no difference, and neither are labels: every van has its own.
func differences(kit *guide.Kit, r spec.Read) []Difference {
	if r.Sheet == nil {
		return nil
	}
	c := comparing{kit: kit}
	under := map[string]*spec.Fitted{}
	for _, f := range r.Sheet.Fitted {
		under[f.Name] = f
	}
	for _, f := range r.Van.Fitted {
		sheet := under[f.Name]
		delete(under, f.Name)
		switch {
		case f.Name == "body":
			c.facts(f, r.Sheet.Body)
		case f.Automatic:
		case sheet == nil:
			c.add(f, Difference{Kind: Added})
		case sheet.System != f.System:
			c.add(f, Difference{Kind: Other, Now: f.System.ID, Was: sheet.System.ID})
		default:
			c.facts(f, sheet.Values)
			c.words(f, sheet)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(under)) {
		c.add(under[name], Difference{Kind: Absent})
	}
	return c.all
}

type comparing struct {
	kit *guide.Kit
	all []Difference
}

func (c *comparing) add(f *spec.Fitted, d Difference) {
	d.Fitted, d.System = f.Name, f.System.ID
	c.all = append(c.all, d)
}

func (c *comparing) facts(f *spec.Fitted, sheet map[string]fact.Value) {
	for i := range f.System.Facts {
		d := &f.System.Facts[i]
		now, was := f.Values[d.Name], sheet[d.Name]
		if was.IsZero() && now.At == d.Default.At || now.Same(was) {
			continue // what the library guesses is the same for all
		}
		c.add(f, Difference{Kind: Value, Fact: d.Name, Now: c.say(f, d.Name, now), Was: c.say(f, d.Name, was)})
	}
}

func (c *comparing) say(f *spec.Fitted, name string, v fact.Value) string {
	if v.IsZero() {
		return ""
	}
	return c.kit.Say(f, name, v)
}

func (c *comparing) words(f, sheet *spec.Fitted) {
	for _, d := range []Difference{
		{Kind: Named, Now: f.Title, Was: sheet.Title},
		{Kind: Noted, Now: f.Note, Was: sheet.Note},
		{Kind: Place, Now: placed(f.Place), Was: placed(sheet.Place)},
	} {
		if d.Now != d.Was {
			c.add(f, d)
		}
	}
}

// placed is a place as a spec writes it, without its keys' lengths where none is
// stated.
func placed(p spec.Place) string {
	words := []string{p.Side}
	for _, l := range []struct {
		key   string
		value fact.Value
	}{{"along", p.Along}, {"up", p.Up}, {"across", p.Across}} {
		if !l.value.IsZero() {
			words = append(words, fmt.Sprintf("%s %s", l.key, l.value.Quantity))
		}
	}
	return strings.Join(words, ", ")
}
