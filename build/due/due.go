// Package due lists what falls due on the vans of a fleet: checks by qualified
// people, and things that wear out by themselves. It is for staff alone.
//
// No clock is read here. Whoever wants to know what is late says which day it is.
package due

import (
	"cmp"
	"slices"
	"time"

	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// Item is one duty of one van. It holds nothing of the van but what lists show,
// so that it can be kept from one publish to the next.
type Item struct {
	Code, Name string        // of the van
	SpecDate   manifest.Date // of the van's spec
	Duty       string        // by its name in the library
	Fitted     string        `json:",omitempty"` // what it is about, by its name on the van; "" for the van
	Day        manifest.Date `json:",omitzero"`  // when it is due; zero where nobody stated it
	Years      int           `json:",omitempty"` // the life that was reckoned with, 0 for a stated day
	At         problem.Span  // where the day, or else the van, is stated
}

// List gives what falls due in a fleet, the earliest day first, and apart from
// it what the vans should state and do not.
func List(fleet *spec.Fleet) (stated, missing []Item) {
	var all []Item
	for _, r := range fleet.Reads() {
		all = append(all, OfVan(&fleet.Operator, r)...)
	}
	return Split(all)
}

// Split parts the items that have a day, the earliest first, from the others.
func Split(all []Item) (stated, missing []Item) {
	for _, i := range all {
		if i.Day.IsZero() {
			missing = append(missing, i)
		} else {
			stated = append(stated, i)
		}
	}
	slices.SortStableFunc(stated, func(a, b Item) int {
		return cmp.Or(a.Day.Compare(b.Day), cmp.Compare(a.Code, b.Code))
	})
	return stated, missing
}

// OfVan gives the items of a van, in the order of the library's duties. What is
// stated of it and what it should state are among them.
func OfVan(op *spec.Operator, r spec.Read) []Item {
	var all []Item
	for _, d := range op.Library.Duties {
		item := Item{Code: r.Van.Code, Name: r.Van.Name, SpecDate: r.Van.SpecDate, Duty: d.Name, At: r.Van.At}
		if d.System != "" {
			all = append(all, ofSystem(item, r.Van, d)...)
		} else if ofStaff(&item, r.Staff, d, op.Due); !item.Day.IsZero() || r.Van.Wants(d) {
			all = append(all, item)
		}
	}
	return all
}

// ofStaff takes the day from what the spec keeps for staff.
func ofStaff(item *Item, staff *spec.Staff, d *components.Duty, rules spec.DueRules) {
	if staff == nil {
		return
	}
	for _, e := range staff.Entries {
		if e.Key == d.Staff && !e.Own {
			item.Day, item.At = e.Date, e.At
		}
	}
	if !item.Day.IsZero() && d.Years > 0 {
		item.Years = cmp.Or(rules.Years[d.Name], d.Years)
		item.Day = later(item.Day, item.Years)
	}
}

// ofSystem takes the days from the fitted systems of a kind.
func ofSystem(item Item, v *spec.Van, d *components.Duty) []Item {
	var items []Item
	for _, f := range v.Fitted {
		if f.System.ID != d.System {
			continue
		}
		item.Fitted, item.Day, item.At = f.Name, manifest.Date{}, f.Span
		if value := f.Values[d.Fact]; value.Kind == fact.Date {
			item.Day, item.At = value.Date, value.At
		}
		items = append(items, item)
	}
	return items
}

// later is the same day some years on; the 29th of February becomes the 28th
// where there is none.
func later(d manifest.Date, years int) manifest.Date {
	d.Year += years
	if last := time.Date(d.Year, time.Month(d.Month)+1, 0, 0, 0, 0, 0, time.UTC).Day(); d.Day > last {
		d.Day = last
	}
	return d
}

// Days is how many days there are from one day to another, negative for an
// earlier one.
func Days(from, to manifest.Date) int {
	at := func(d manifest.Date) time.Time {
		return time.Date(d.Year, time.Month(d.Month), d.Day, 0, 0, 0, 0, time.UTC)
	}
	return int(at(to).Sub(at(from)).Hours() / 24)
}

// State is how urgent an item is on a certain day.
type State uint8

// The states, the most urgent last.
const (
	Later State = iota
	Soon
	Overdue
)

// On gives the state of an item on a day. On the very day it is due, not late.
func (i Item) On(day manifest.Date, soon int) State {
	switch left := Days(day, i.Day); {
	case left < 0:
		return Overdue
	case left <= soon:
		return Soon
	}
	return Later
}

// Warnings tells as problems what is late or near on a day, for whoever inspects
// the fleet.
func Warnings(fleet *spec.Fleet, day manifest.Date) problem.List {
	lang := fleet.Languages[0]
	values := fleet.Library.Values[lang]
	var found problem.List
	stated, _ := List(fleet)
	for _, item := range stated {
		words := fleet.Library.Duty(item.Duty).Words[lang]
		switch item.On(day, fleet.Due.Soon) {
		case Overdue:
			found.Warnf(item.At, "overdue", item.Name+": "+words.Title+" is overdue", "It was due on %s. %s", values.Date(item.Day), words.Reason)
		case Soon:
			found.Warnf(item.At, "due-soon", item.Name+": "+words.Title+" is due soon", "It is due on %s. %s", values.Date(item.Day), words.Reason)
		}
	}
	return found
}
