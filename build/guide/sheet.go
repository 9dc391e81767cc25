package guide

import (
	"slices"
	"strings"

	"doorpocket/build/due"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/fact"
)

// Sheet is what staff carry round a van: a routine of theirs in walking order,
// with what is written down beside it.
type Sheet struct {
	*Routine
	Paper      spec.Paper
	Legs       []Leg
	Readings   []Reading
	Conditions []string // the operator's own, paragraph by paragraph
	// Backstage is what only staff may see. It is nil on a sheet that the hirer
	// signs, whatever the spec holds.
	Backstage *Backstage
}

// Leg is a part of the walk on one side of the van or inside it.
type Leg struct {
	Where string // a side of the body, "inside", "cab", or "" where it does not matter
	Steps []SheetStep
}

// SheetStep is a step with the facts to say at it.
type SheetStep struct {
	*Step
	Say []Said
}

// Reading is something to read off and write down.
type Reading struct {
	*components.Reading
	Words  components.ReadingWords
	Page   *Page // whose facts its words may name, nil for none
	Number int   // which of several, from 1; 0 where there is one
}

// Backstage is what only staff may see, on sheets that stay with them.
type Backstage struct {
	Notes string
	Days  []Day
}

// Day is the day on which something falls due, in words.
type Day struct{ Title, Of, On string }

// Sheets makes a sheet of each routine for staff. What the record of the van
// holds for staff alone goes on no sheet that the hirer signs.
func (g *Guide) Sheets(routines []*Routine, r spec.Read) []*Sheet {
	var all []*Sheet
	for _, routine := range routines {
		s := &Sheet{Routine: routine, Paper: r.Staff.Paper(), Legs: legs(g, routine), Readings: g.readings(routine)}
		s.Conditions = paragraphs(g.Operator.Conditions[routine.ID][g.Lang])
		if !routine.Hirer {
			s.Backstage = g.backstage(r)
		}
		all = append(all, s)
	}
	return all
}

// legs cuts a routine where one goes to another side. What is done anywhere, or
// under the floor or to the roof while one is outside, belongs to the side where
// one is.
func legs(g *Guide, r *Routine) []Leg {
	var all []Leg
	said := map[*Page]bool{}
	for _, s := range r.Steps {
		where := s.leg()
		last := len(all) - 1
		stays := last >= 0 && (where == "" || (where == "under" || where == "roof") && all[last].Where != "inside" && all[last].Where != "cab")
		if !stays && (last < 0 || all[last].Where != where) {
			all = append(all, Leg{Where: where})
			last++
		}
		step := SheetStep{Step: s}
		if r.Facts && s.Page != nil && !said[s.Page] {
			said[s.Page] = true
			step.Say = g.Facts(s.Page.Fitted)
		}
		all[last].Steps = append(all[last].Steps, step)
	}
	return all
}

// leg is where one stands for a step.
func (s *Step) leg() string {
	switch {
	case s.done == components.WhereCab:
		return "cab"
	case s.done == components.WhereAnywhere:
		return ""
	case s.done == components.WhereOutside:
		return s.Place.Side
	case s.done == components.WhereInside, s.done == components.WhereAnywhereInside, s.Place.Side == "inside", s.Place.Side == "roof":
		return "inside"
	case s.Place.Side == "" && s.Page != nil && slices.Contains(insideFamilies, s.Page.Fitted.System.Family):
		return "inside"
	}
	return s.Place.Side
}

// readings are what is written down on the sheet of a routine.
func (g *Guide) readings(r *Routine) []Reading {
	var all []Reading
	for _, reading := range g.Operator.Library.Readings {
		if !slices.Contains(reading.Sheets, r.ID) || !g.Van.Reads(reading) {
			continue
		}
		one := Reading{Reading: reading, Words: reading.Words[g.Lang], Page: g.readOf(reading)}
		times := g.times(one)
		for n := range times {
			if times > 1 {
				one.Number = n + 1
			}
			all = append(all, one)
		}
	}
	return all
}

// readOf is the page of what a reading is taken from, where that is one thing.
func (g *Guide) readOf(r *components.Reading) *Page {
	if len(r.Has) != 1 {
		return nil
	}
	i := slices.IndexFunc(g.Pages, func(p *Page) bool { return p.Fitted.System.ID == r.Has[0].System })
	if i < 0 {
		return nil
	}
	return g.Pages[i]
}

func (g *Guide) times(r Reading) int {
	if r.Each == "" || r.Page == nil {
		return 1
	}
	if v := g.Van.Value(r.Page.Fitted, r.Each); v.Kind == fact.Count {
		return max(v.Count, 1)
	}
	return 1
}

func (g *Guide) backstage(r spec.Read) *Backstage {
	b := &Backstage{Notes: r.Staff.Notes()}
	items, _ := due.Split(due.OfVan(g.Operator, r))
	for _, item := range items {
		day := Day{Title: g.Operator.Library.Duty(item.Duty).Words[g.Lang].Title, On: g.values.Date(item.Day)}
		if p := g.byName[item.Fitted]; p != nil && p.Code != "" {
			day.Of = p.Code
		}
		b.Days = append(b.Days, day)
	}
	return b
}

// paragraphs cuts a text at its empty lines.
func paragraphs(text string) []string {
	var all []string
	for part := range strings.SplitSeq(strings.ReplaceAll(text, "\r\n", "\n"), "\n\n") {
		if part = strings.Join(strings.Fields(part), " "); part != "" {
			all = append(all, part)
		}
	}
	return all
}
