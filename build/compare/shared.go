package compare

import (
	"slices"
	"strings"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components"
)

// shared tells what changed of what all vans have in common.
func (c *comparison) shared() Both {
	old, new := c.old.side.operator(), c.new.side.operator()
	var b Both
	say := func(kind Kind, what, now, was string) {
		if now != was {
			h := hirers{comparison: c}
			change := Change{Kind: kind, What: c.voice.Say(what), Now: now, Was: was}
			change.Text = h.inWords(change, false)
			b.Hirers = append(b.Hirers, change)
		}
	}
	say(Fleet, "change_fleet_name", new.Name, old.Name)
	say(Fleet, "change_helpline", new.Call.Helpline, old.Call.Helpline)
	say(Fleet, "change_emergency", new.Call.Emergency, old.Call.Emergency)
	say(Fleet, "change_hours", new.Call.Hours, old.Call.Hours)
	say(Fleet, "change_mail", new.Call.Mail, old.Call.Mail)
	say(Fleet, "change_languages", strings.Join(new.Languages, ", "), strings.Join(old.Languages, ", "))
	b.Hirers = append(b.Hirers, c.ownPages(old, new)...)
	b.Hirers = append(b.Hirers, c.ownSystems(old, new)...)
	if old.Address.To("") != new.Address.To("") {
		was, now := old.Address.Reading(""), new.Address.Reading("")
		b.Staff = append(b.Staff, StaffChange{Kind: Restick, Now: now, Was: was, Text: c.voice.Say("change_address", "now", now, "was", was)})
	}
	return b
}

// ownPages tells which of the operator's own pages are new, gone and changed.
func (c *comparison) ownPages(old, new *spec.Operator) []Change {
	var all []Change
	find := func(op *spec.Operator, name string) (spec.OwnWords, bool) {
		for _, p := range op.Pages {
			if p.Name == name {
				w, ok := p.Words[c.lang]
				return w, ok
			}
		}
		return spec.OwnWords{}, false
	}
	add := func(kind Kind, name, title string) {
		all = append(all, Change{Kind: kind, Path: guide.OwnPath(name), Title: title, Text: title})
	}
	for _, p := range new.Pages {
		now, ok := find(new, p.Name)
		was, there := find(old, p.Name)
		switch {
		case ok && !there:
			add(PageNew, p.Name, now.Title)
		case ok && !slices.Equal(ownContent(was), ownContent(now)):
			add(PageChanged, p.Name, now.Title)
		}
	}
	for _, p := range old.Pages {
		was, ok := find(old, p.Name)
		if _, stays := find(new, p.Name); ok && !stays {
			add(PageGone, p.Name, was.Title)
		}
	}
	return all
}

// asWritten fills the holes of words with their names.
type asWritten struct{}

func (asWritten) Value(name, unit string) (string, bool)    { return "{$" + name + " " + unit + "}", true }
func (asWritten) Link(scheme, target string) (string, bool) { return scheme + ":" + target, true }
func (asWritten) Embed(scheme, target, alt string) (string, bool) {
	return scheme + ":" + target + " " + alt, true
}

func ownContent(w spec.OwnWords) []string {
	all := []string{w.Title}
	if w.Page == nil {
		return all
	}
	for _, d := range w.Page.Docs() {
		all = append(all, d.HTML(asWritten{}))
	}
	for _, s := range w.Page.Sections {
		all = append(all, s.When)
	}
	return all
}

// ownSystems tells which of the fleet's own systems are new and gone; what
// changed of one shows on the vans that have it.
func (c *comparison) ownSystems(old, new *spec.Operator) []Change {
	var all []Change
	add := func(kind Kind, lib *components.Library, id, key string) {
		title := id
		if words := lib.System(id).Words[c.lang]; words != nil {
			title = words.Title
		}
		all = append(all, Change{Kind: kind, Title: title, What: id, Text: c.voice.Say(key, "title", title, "system", id)})
	}
	was, now := c.old.side.own(), c.new.side.own()
	for _, id := range now {
		if !slices.Contains(was, id) {
			add(System, new.Library, id, "change_system_new")
		}
	}
	for _, id := range was {
		if !slices.Contains(now, id) {
			add(System, old.Library, id, "change_system_gone")
		}
	}
	return all
}

// own lists the systems that one side has of its own.
func (s *Side) own() []string {
	var all []string
	for _, system := range s.operator().Library.Systems() {
		if s.library.System(system.ID) != system {
			all = append(all, system.ID)
		}
	}
	return all
}
