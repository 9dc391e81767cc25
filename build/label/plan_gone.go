package label

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"doorpocket/components/problem"
)

// give gives labels to what wants one and has none. Where something of the same
// kind has just gone it asks whether that is meant: a rename must not lose the
// sticker.
func (p *planner) give(v *Van) {
	for i := range v.Things {
		t := &v.Things[i]
		if p.codeOf[t] != nil || !t.Wants || p.unclear[t] || t.Label != "" || t.Letter == "" {
			continue
		}
		if e := p.lookalike(v, t); e != nil {
			p.problem(t.At, "renamed", fmt.Sprintf("Is %s what was called %s?", t.Name, e.Fitted),
				fmt.Sprintf("%s is registered for %s (%s), which is gone, and %s is new and of the same kind. If it is the same thing or in its place, write was = %q beside it: the label stays. If it is another thing, write became = \"removed\", on = %s into the line of %s in the register.",
					e.Ref, e.Fitted, e.System, t.Name, e.Fitted, v.SpecDate, e.Ref),
				problem.Note{Span: e.At, Text: "registered here"})
			p.claimed[e], p.asked[e] = true, true
			continue
		}
		code := free(t.Letter, func(code string) bool {
			ref := Ref{v.Code, code}
			return p.taken[ref] || p.next.Find(ref) != nil
		})
		if code == "" {
			p.problem(t.At, "no-code-left", fmt.Sprintf("No label code is left for %s", t.Name), fmt.Sprintf("Every number of the letter %s has been given out on %s, and none is given twice. Write label = \"none\" beside it.", t.Letter, v.Name))
			continue
		}
		e := p.register(v, t, Ref{v.Code, code}, Give)
		p.codeOf[t] = e
	}
}

// lookalike finds what a new thing may have been called before.
func (p *planner) lookalike(v *Van, t *Thing) *Entry {
	for _, e := range p.next.Of(v.Code) {
		if e.Became == Stands && e.System == t.System && v.thing(e.Fitted) == nil && !p.claimed[e] && !p.replaced(v, e) {
			return e
		}
	}
	return nil
}

// replaced reports whether a spec says what has taken the place of something.
func (p *planner) replaced(v *Van, e *Entry) bool {
	for i := range v.Things {
		if slices.Contains(v.Things[i].stated().Replaces, e.Fitted) {
			return true
		}
	}
	for _, other := range p.order {
		for i := range other.Things {
			if slices.Contains(other.Things[i].stated().Was, e.Van+" "+e.Fitted) {
				return true
			}
		}
	}
	return false
}

// replace lets labels of what was replaced or moved here lead to the new ones.
func (p *planner) replace(v *Van) {
	for i := range v.Things {
		t := &v.Things[i]
		for _, name := range t.stated().Replaces {
			van, old, other := strings.Cut(name, " ")
			if !other {
				van, old = v.Code, name
			}
			e := p.standing(van, old, p.codeOf[t])
			if e == nil {
				continue // it was seen to before
			}
			if van == v.Code && v.thing(old) != nil && !p.claimed[e] {
				p.problem(t.stated().ReplacesAt, "former-name", fmt.Sprintf("%s replaces %s, but that is still fitted", t.Name, old), "Take one of the two out.")
				continue
			}
			if p.codeOf[t] == nil {
				continue // what has no label cannot stand for another; e is released as removed
			}
			e.Became, e.Now, e.On = Replaced, p.codeOf[t].Ref, v.SpecDate
			verb := Replace
			if van != v.Code {
				e.Became, verb = Moved, Move
			}
			p.change(verb, e, "")
		}
	}
}

// release notes what is gone without anything in its place.
func (p *planner) release() {
	for _, e := range p.next.Entries {
		v := p.vans[e.Van]
		if e.Became != Stands || p.fresh[e.Ref] || v == nil || v.thing(e.Fitted) != nil || p.asked[e] {
			continue
		}
		if entry := p.next.Van(e.Van); entry == nil || entry.Became != Stands {
			continue
		}
		e.Became, e.On = Removed, v.SpecDate
		p.change(Remove, e, "")
	}
}

// gone looks at registered vans that no spec has.
func (p *planner) gone() {
	for _, code := range slices.Sorted(maps.Keys(p.wish.Leaving)) {
		p.leave(code, p.wish.Leaving[code])
	}
	for _, entry := range p.next.Vans {
		if p.vans[entry.Code] != nil || entry.Became != Stands {
			continue
		}
		n := len(p.next.Of(entry.Code))
		detail := fmt.Sprintf("%d of its labels are registered and would lead nowhere. If it has left the fleet, run doorpocket labels --sold %s, or --retired %s: its labels then lead to a page that says so. Else put its spec back.", n, entry.Code, entry.Code)
		for _, v := range p.order {
			if v.Name == entry.Name {
				detail = fmt.Sprintf("The van with the code %s has the same name. If that is the same van, give it the code %s back: the code is the address on its labels, %d of which are registered. ", v.Code, entry.Code, n) + detail
			}
		}
		p.problem(entry.At, "van-without-spec", fmt.Sprintf("No spec has the code %s (%s)", entry.Code, entry.Name), detail)
	}
}

func (p *planner) leave(code string, fate Fate) {
	entry := p.next.Van(code)
	at := problem.Span{File: p.next.File}
	switch {
	case entry == nil:
		p.problem(at, "unknown-van", fmt.Sprintf("No van %s is registered", code), "Name a van by its code, as in the register.")
	case p.vans[code] != nil:
		p.problem(p.vans[code].At, "van-still-here", fmt.Sprintf("%s has a spec, so it has not left", code), "Take its spec out of the folder vans first.")
	case entry.Became == fate:
	default:
		entry.Became, entry.On = fate, p.wish.On
		p.Changes = append(p.Changes, Change{Verb: LeaveVan, Ref: Ref{Van: code}, Fitted: entry.Name, Fate: fate})
	}
}
