package label

import (
	"fmt"
	"slices"
	"strings"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// Verb is what a change does to the register.
type Verb string

// The changes.
const (
	AddVan      Verb = "van"
	RenameVan   Verb = "rename van"
	LeaveVan    Verb = "van leaves"
	Enter       Verb = "enter"     // a code that a spec states
	Give        Verb = "give"      // a code of our own choice
	Rename      Verb = "rename"    // the same code under another name
	Refit       Verb = "refit"     // the same name and code, another system
	Bring       Verb = "bring"     // what was removed is there again
	Remove      Verb = "remove"    // what it stood for is gone
	Replace     Verb = "replace"   // another label stands in its place
	Move        Verb = "move"      // another van has it
	MoveAddress Verb = "address"   // the fleet's address changes
	SetAddress  Verb = "addressed" // it is noted for the first time, or before anything was printed
)

// Change is one change of the register.
type Change struct {
	Verb
	Ref           // the label, or only the van
	Fitted string // what it is about, by its name on the van; the van's name for a van
	Was    string // the former name or system, for Rename, Refit and RenameVan
	Now    Ref    // for Replace and Move
	Fate   Fate   // for LeaveVan
}

// Plan is what the register should become so that it agrees with the specs.
type Plan struct {
	Changes  []Change
	Problems problem.List // nothing may be written where one is an error

	next  *Register
	codes map[thingKey]string
	fresh map[Ref]bool
}

type thingKey struct{ van, name string }

// Code gives the label code of something fitted, "" for none. One that the
// register has not given out yet counts only where the spec states it.
func (p *Plan) Code(van, name string) string { return p.codes[thingKey{van, name}] }

// Register is what the register becomes. It has no text yet: Revise makes that.
func (p *Plan) Register() *Register { return p.next }

// Wish is what an operator tells besides the specs.
type Wish struct {
	Address string          // of the fleet, as written
	Former  string          // the address the fleet had before, "" for none
	At      problem.Span    // the address in fleet.toml
	Leaving map[string]Fate // vans that leave the fleet, Sold or Retired
	On      manifest.Date   // when they leave
}

// Make compares a register, nil for none yet, with the vans as their specs have
// them.
func Make(register *Register, vans []Van, wish Wish) *Plan {
	p := newPlanner(register.clone(), vans, wish)
	p.address()
	p.gone()
	for i := range p.order {
		p.van(&p.order[i])
	}
	p.release()
	return p.Plan
}

func newPlanner(next *Register, vans []Van, wish Wish) *planner {
	p := &planner{
		Plan:  &Plan{next: next, codes: map[thingKey]string{}, fresh: map[Ref]bool{}},
		wish:  wish,
		vans:  map[string]*Van{},
		taken: map[Ref]bool{},
		asked: map[*Entry]bool{}, unclear: map[*Thing]bool{},
		order: slices.Clone(vans),
	}
	for i := range p.order {
		v := &p.order[i]
		v.Things = slices.Clone(v.Things) // what leads to them is noted there
		p.vans[v.Code] = v
	}
	return p
}

// MakeOne compares a register with one van alone: for its codes, and for what of
// it is gone. What concerns other vans, and problems, are for Make.
func MakeOne(register *Register, v Van) *Plan {
	sub := (*Register)(nil).clone()
	if entry := register.Van(v.Code); entry != nil {
		copied := *entry
		sub.addVan(&copied)
	}
	for _, e := range register.Of(v.Code) {
		copied := *e
		sub.add(&copied)
	}
	p := newPlanner(sub, []Van{v}, Wish{})
	p.alone = true
	p.van(&p.order[0])
	p.release()
	return p.Plan
}

type planner struct {
	alone bool
	*Plan
	wish    Wish
	vans    map[string]*Van
	order   []Van
	taken   map[Ref]bool      // codes that a spec states
	claimed map[*Entry]bool   // entries of the van at work that lead on
	codeOf  map[*Thing]*Entry // for the van at work
	unclear map[*Thing]bool   // things whose former name is not known
	asked   map[*Entry]bool   // entries of which somebody must say what became of them
}

func (p *planner) change(verb Verb, e *Entry, was string) {
	p.Changes = append(p.Changes, Change{Verb: verb, Ref: e.Ref, Fitted: e.Fitted, Was: was, Now: e.Now})
}

func (p *planner) problem(at problem.Span, code, summary, detail string, notes ...problem.Note) {
	found := problem.New(problem.Error, at, code, summary, detail)
	for _, n := range notes {
		if n.Span.File != "" {
			found = found.WithNote(n.Span, n.Text)
		}
	}
	p.Problems.Add(found)
}

// van agrees the register with one van.
func (p *planner) van(v *Van) {
	if v.Code == "" || !p.enter(v) {
		return
	}
	p.claimed, p.codeOf = map[*Entry]bool{}, map[*Thing]*Entry{}
	for i := range v.Things {
		if t := &v.Things[i]; t.Label != "" && t.Label != None {
			p.taken[Ref{v.Code, t.Label}] = true
		}
	}
	for _, match := range []func(*Van, *Thing){p.byName, p.byFormerName, p.byCode, p.byReturn} {
		for i := range v.Things {
			if t := &v.Things[i]; p.codeOf[t] == nil {
				match(v, t)
			}
		}
	}
	p.give(v)
	p.replace(v)
	for i := range v.Things {
		t := &v.Things[i]
		if e := p.codeOf[t]; e != nil && (!p.fresh[e.Ref] || t.Label != "") {
			p.codes[thingKey{v.Code, t.Name}] = e.Code
		}
	}
}

// enter makes sure that the van is registered and has not left.
func (p *planner) enter(v *Van) bool {
	entry := p.next.Van(v.Code)
	switch {
	case entry == nil:
		labelled := slices.ContainsFunc(v.Things, func(t Thing) bool { return t.Wants && t.Label != None || t.Label != "" && t.Label != None })
		if labelled {
			p.next.addVan(&VanEntry{Code: v.Code, Name: v.Name, Since: v.SpecDate})
			p.Changes = append(p.Changes, Change{Verb: AddVan, Ref: Ref{Van: v.Code}, Fitted: v.Name})
		}
	case entry.Became != Stands:
		p.problem(v.At, "van-code-reused", fmt.Sprintf("Code %s of a van that was %s", v.Code, entry.Became),
			fmt.Sprintf("It was that of %s until %s, and labels with it may still be about: give this van another code. The name may be used again. Where it is the same van and is back, take became and on out of its line in the register.", entry.Name, entry.On),
			problem.Note{Span: entry.At, Text: "registered here"})
		return false
	case entry.Name != v.Name && v.Name != "":
		p.Changes = append(p.Changes, Change{Verb: RenameVan, Ref: Ref{Van: v.Code}, Fitted: v.Name, Was: entry.Name})
		entry.Name = v.Name
	}
	return true
}

// standing finds the entry that stood for a name on a van before, but for one.
func (p *planner) standing(van, name string, but *Entry) *Entry {
	for _, e := range p.next.Of(van) {
		if e.Became == Stands && e.Fitted == name && !p.fresh[e.Ref] && e != but {
			return e
		}
	}
	return nil
}

// byName finds what is registered under the name that it still has.
func (p *planner) byName(v *Van, t *Thing) {
	e := p.standing(v.Code, t.Name, nil)
	if e == nil {
		return
	}
	switch {
	case t.Label == None:
		p.problem(t.stated().LabelAt, "label-conflict", fmt.Sprintf("No label wanted for %s, but %s is registered for it", t.Name, e.Ref),
			"A label that was given out leads to its page for good: take label = \"none\" out.", problem.Note{Span: e.At, Text: "registered here"})
	case t.Label != "" && t.Label != e.Code:
		p.conflict(v, t, e)
	case t.System == e.System:
	case t.Letter == e.Code[:1] || t.Letter == "" || !t.Wants:
		was := e.System
		e.System = t.System
		p.change(Refit, e, was)
	default:
		p.lead(e, t)
		return
	}
	p.codeOf[t] = e
}

// conflict reports a spec and a register that say different codes.
func (p *planner) conflict(v *Van, t *Thing, e *Entry) {
	detail := fmt.Sprintf("Take label out of the spec: %s stays.", e.Ref)
	if other := p.next.Find(Ref{v.Code, t.Label}); other == nil {
		detail += fmt.Sprintf(" If %s %s is to be its label from now on, write became = \"replaced\", now = \"%s %s\" and on into the line of %s and run doorpocket labels: both labels then lead to its page.", v.Code, t.Label, v.Code, t.Label, e.Ref)
	}
	p.problem(t.stated().LabelAt, "label-conflict", fmt.Sprintf("Label %s of %s, which is registered as %s", t.Label, t.Name, e.Ref), detail, problem.Note{Span: e.At, Text: "registered here"})
}

// lead lets the label of something that is gone lead to what is there instead.
// The code of that may not be known yet.
func (p *planner) lead(e *Entry, t *Thing) {
	p.claimed[e] = true
	t.replaces(e.Fitted)
}

// byFormerName follows the former names that a spec states.
func (p *planner) byFormerName(v *Van, t *Thing) {
	for _, was := range t.stated().Was {
		if van, name, other := strings.Cut(was, " "); other {
			p.moved(v, t, van, name)
			continue
		}
		if v.thing(was) != nil {
			p.problem(t.stated().WasAt, "former-name", fmt.Sprintf("%s was %s, but that is still fitted", t.Name, was), "Take one of the two out.")
			return
		}
		e := p.standing(v.Code, was, nil)
		switch {
		case e == nil:
			p.unknownName(v, t, was)
		case p.claimed[e]:
		case t.Label != "" && t.Label != e.Code:
			p.conflict(v, t, e)
			p.codeOf[t] = e
			return
		case t.Letter == e.Code[:1] || t.Letter == "":
			p.rename(t, e)
			return
		default:
			p.lead(e, t)
		}
	}
}

// unknownName reports a former name that was never registered, which is a
// mistake, unless nothing of the van is registered yet.
func (p *planner) unknownName(v *Van, t *Thing, was string) {
	var names []string
	for _, e := range p.next.Of(v.Code) {
		if e.Fitted == was {
			return // it is gone already
		}
		if !p.fresh[e.Ref] {
			names = append(names, e.Fitted)
		}
	}
	if len(names) == 0 {
		return
	}
	detail := "Correct it, or take it out."
	if near := problem.Nearest(was, names); near != "" {
		detail = fmt.Sprintf("Did you mean %q?", near)
	}
	p.unclear[t] = true
	p.problem(t.stated().WasAt, "former-name", fmt.Sprintf("Nothing on %s is registered as %q", v.Name, was), detail)
}

func (p *planner) rename(t *Thing, e *Entry) {
	was := e.Fitted
	e.Fitted, e.System = t.Name, t.System
	p.change(Rename, e, was)
	p.codeOf[t] = e
}

// moved notes that something came from another van. Its label there leads here.
func (p *planner) moved(v *Van, t *Thing, van, name string) {
	if p.alone {
		return
	}
	from := p.vans[van]
	if from != nil && from.thing(name) != nil {
		p.problem(t.stated().WasAt, "former-name", fmt.Sprintf("%s was %s in %s, but it is still fitted there", t.Name, name, van), "Take it out of the spec of "+from.Name+", or take this out.", problem.Note{Span: from.thing(name).At, Text: "fitted here"})
		return
	}
	if p.next.Van(van) == nil {
		p.problem(t.stated().WasAt, "former-name", fmt.Sprintf("No van %s is registered", van), "Write the code of the van that it came from and its name there, as in was = \"RW grill\".")
		return
	}
	if p.standing(van, name, nil) != nil {
		t.replaces(van + " " + name)
	}
}

// byCode takes the codes that a spec states.
func (p *planner) byCode(v *Van, t *Thing) {
	if t.Label == "" || t.Label == None {
		return
	}
	ref := Ref{v.Code, t.Label}
	e := p.next.Find(ref)
	if e == nil {
		p.codeOf[t] = p.register(v, t, ref, Enter)
		return
	}
	other := v.thing(e.Fitted)
	note := problem.Note{Span: e.At, Text: "registered here"}
	detail := "A code is never given to something else: take label out, and doorpocket labels gives a new one."
	switch {
	case e.Became == Stands && other != nil:
		if other != t {
			p.problem(t.stated().LabelAt, "label-taken", fmt.Sprintf("Label %s of %s stands for %s", ref, t.Name, e.Fitted), detail, note)
		}
	case e.Became == Stands && e.System == t.System:
		p.rename(t, e)
	case e.Became == Stands:
		p.problem(t.stated().LabelAt, "label-taken", fmt.Sprintf("Label %s of %s stood for %s (%s)", ref, t.Name, e.Fitted, e.System), fmt.Sprintf("%s If %s has taken the place of %s, write was = %q beside it.", detail, t.Name, e.Fitted, e.Fitted), note)
	case e.Became == Removed && e.Fitted == t.Name && e.System == t.System:
		p.bring(t, e)
	default:
		p.problem(t.stated().LabelAt, "label-taken", fmt.Sprintf("Label %s of %s was that of %s, which was %s", ref, t.Name, e.Fitted, e.Became), detail, note)
	}
}

// byReturn gives what was removed and is there again its label back.
func (p *planner) byReturn(v *Van, t *Thing) {
	if t.Label != "" || !t.Wants {
		return
	}
	for _, e := range p.next.Of(v.Code) {
		if e.Became == Removed && e.Fitted == t.Name && e.System == t.System {
			p.bring(t, e)
			return
		}
	}
}

func (p *planner) bring(t *Thing, e *Entry) {
	e.Became, e.On = Stands, manifest.Date{}
	p.change(Bring, e, "")
	p.codeOf[t] = e
}

// register adds a label.
func (p *planner) register(v *Van, t *Thing, ref Ref, verb Verb) *Entry {
	e := &Entry{Ref: ref, Fitted: t.Name, System: t.System, Since: v.SpecDate}
	p.next.add(e)
	p.fresh[ref] = true
	p.change(verb, e, "")
	return e
}
