// Package survey looks over vans for the fleet manager: what each has, where
// every fact comes from, what nobody stated, what was guessed, how vans of one
// build sheet differ. It is for staff alone.
package survey

import (
	"strings"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components/fact"
)

// Origin is where the value of a fact comes from.
type Origin uint8

// The origins.
const (
	Lacking Origin = iota // nobody stated it
	Spec                  // the van's own spec
	Sheet                 // its build sheet, or one under that
	Guess                 // the library's default
)

// Fact is one fact that means something on a van.
type Fact struct {
	Key    string // as a spec writes it
	Name   string // in words
	Text   string // the value in words, "" where it is lacking
	Origin Origin
	File   string // below the fleet folder, of a Spec or a Sheet
	Line   int
}

// Thing is one fitted system with its facts.
type Thing struct {
	Fitted *spec.Fitted
	Title  string
	Facts  []Fact
}

// Things lists what is fitted on a van that was read, in its order, with every
// fact that means something there.
func Things(kit *guide.Kit, r spec.Read) []Thing {
	v := r.Van
	var all []Thing
	for _, f := range v.Fitted {
		words := f.System.Words[kit.Language()]
		if words == nil {
			continue
		}
		t := Thing{Fitted: f, Title: f.Title}
		if t.Title == "" {
			t.Title = words.Title
		}
		for i := range f.System.Facts {
			d := &f.System.Facts[i]
			if v.Holds(f, d.Sense) {
				t.Facts = append(t.Facts, factOf(kit, r, f, d))
			}
		}
		all = append(all, t)
	}
	return all
}

func factOf(kit *guide.Kit, r spec.Read, f *spec.Fitted, d *fact.Decl) Fact {
	made := Fact{Key: d.Name, Name: f.System.Words[kit.Language()].Facts[d.Name]}
	value, stated := f.Values[d.Name]
	if !stated {
		return made
	}
	made.Text, made.Origin = kit.Say(f, d.Name, value), Guess
	if value.At == d.Default.At {
		return made
	}
	made.Origin, made.Line = Sheet, value.At.Start.Line
	if value.At.File == r.Van.File {
		made.Origin = Spec
	}
	made.File = strings.TrimPrefix(value.At.File, prefix(r))
	return made
}

// prefix is what stands before the names of a fleet's files in problems.
func prefix(r spec.Read) string { return strings.TrimSuffix(r.Van.File, r.Listings[0].File) }
