package guide

import (
	"path"

	"doorpocket/build/spec"
	"doorpocket/components/problem"
)

// Origin is where a fact of a van comes from.
type Origin int

// Where a fact can come from.
const (
	FromSpec    Origin = iota // the van's own spec states it
	FromSheet                 // its build sheet does
	FromDefault               // nobody states it, and the library has a default
	Unstated                  // nobody states it
)

// Recorded is one fact that makes sense on a van, in words.
type Recorded struct {
	Fitted     *spec.Fitted
	Fact, Name string // as specs call it, and in words
	Text       string // "" where it is unstated
	From       Origin
	At         problem.Span // where it is stated
}

// Plain makes the guide of a van without anything in it: enough to say its
// facts in words.
func (k *Kit) Plain(v *spec.Van) *Guide { return k.builder(v).guide }

// Record lists all facts that make sense on the van, thing by thing in the order
// of its pages, facts in the order of the system's file, also those that nobody
// states.
func (g *Guide) Record() []Recorded {
	var all []Recorded
	for _, f := range g.Van.Fitted {
		words := f.System.Words[g.Lang]
		if words == nil {
			continue
		}
		for _, d := range f.System.Facts {
			if !g.Van.Holds(f, d.Sense) {
				continue
			}
			one := Recorded{Fitted: f, Fact: d.Name, Name: words.Facts[d.Name], From: Unstated}
			if v := g.Van.Value(f, d.Name); !v.IsZero() {
				one.Text, one.At = g.say(f, d.Name, v, ""), v.At
				one.From = g.origin(v.At)
			}
			all = append(all, one)
		}
	}
	return all
}

// origin tells by the file where a fact is stated.
func (g *Guide) origin(at problem.Span) Origin {
	fleet := path.Dir(path.Dir(g.Van.File))
	switch {
	case at.File == g.Van.File:
		return FromSpec
	case path.Dir(at.File) == path.Join(fleet, "builds"):
		return FromSheet
	}
	return FromDefault
}
