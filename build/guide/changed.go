package guide

import (
	"doorpocket/build/spec"
	"doorpocket/components/fact"
)

// ChangedPath is where the page of what changed lately stands below the van.
const ChangedPath = "changed/"

// Changed is one thing that changed lately, in words as far as values go.
type Changed struct {
	Day    string // in words
	Page   *Page  // what it is about, nil for nothing
	What   string // the fact, "" for none
	Number bool   // the fact is a number
	Now    string // "" where the fact is not stated
	Was    string // "" where it was not
	Gone   string // the title of what is not there any more
	Text   string // the operator's own words
}

// changed puts what changed lately into words.
func (b *builder) changed() {
	g := b.guide
	for _, c := range g.Van.Changed {
		x := Changed{Day: g.values.Date(c.On), Page: g.byName[c.Fitted], Text: c.Words[g.Lang]}
		if c.Gone != nil {
			x.Gone = b.kit.titleOf(c.Gone, c.Gone.ID)
		}
		if c.Fact != "" {
			if x.Page == nil {
				continue // it has no words in this language, which is told elsewhere
			}
			b.factChanged(&x, c, x.Page.Fitted)
		}
		g.Changed = append(g.Changed, x)
	}
}

func (b *builder) factChanged(x *Changed, c spec.Changed, f *spec.Fitted) {
	d := f.System.Fact(c.Fact)
	x.Number = d.Type.Numeric()
	if x.What = x.Page.Words.Facts[c.Fact]; x.What == "" {
		x.What = c.Fact
	}
	say := func(v fact.Value) string {
		if v.IsZero() {
			return ""
		}
		return b.guide.say(f, c.Fact, v, "")
	}
	x.Now, x.Was = say(f.Values[c.Fact]), say(c.Was)
}
