package compare

import (
	"fmt"
	"maps"
	"slices"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components/fact"
)

// hirers tells what changed in the guide of one van. It is given nothing that
// only staff may see.
func (c *comparison) hirers(old, new *guide.Guide) []Change {
	h := hirers{comparison: c, old: old, new: new}
	if old.Van.Name != new.Van.Name {
		h.add(Change{Kind: Named, Now: new.Van.Name, Was: old.Van.Name, Text: c.voice.Say("change_van_name", "now", new.Van.Name, "was", old.Van.Name)})
	}
	h.pairs = pair(old.Van, new.Van)
	for _, p := range h.pairs {
		h.thing(p)
	}
	for _, p := range h.pairs {
		h.tables(p)
	}
	h.routines()
	h.symptoms()
	h.pages()
	return h.changes
}

type hirers struct {
	*comparison
	old, new *guide.Guide
	pairs    []couple
	changes  []Change
}

func (h *hirers) add(c Change) { h.changes = append(h.changes, c) }

// couple is one thing on both sides; nil where it is not there.
type couple struct{ old, new *spec.Fitted }

// pair finds what is the same thing on both sides: by its name, by its former
// name, or by the label on it. New things stand in the order of the new van, and
// those that are gone at the end.
func pair(old, new *spec.Van) []couple {
	taken := map[*spec.Fitted]bool{}
	partner := map[*spec.Fitted]*spec.Fitted{}
	match := func(same func(n, o *spec.Fitted) bool) {
		for _, n := range new.Fitted {
			if partner[n] != nil {
				continue
			}
			i := slices.IndexFunc(old.Fitted, func(o *spec.Fitted) bool { return !taken[o] && same(n, o) })
			if i >= 0 {
				partner[n] = old.Fitted[i]
				taken[old.Fitted[i]] = true
			}
		}
	}
	match(func(n, o *spec.Fitted) bool { return n.Name == o.Name })
	match(func(n, o *spec.Fitted) bool { return slices.Contains(n.Was(), o.Name) })
	match(func(n, o *spec.Fitted) bool { return n.Label != "" && n.Label == o.Label && n.System.ID == o.System.ID })
	var all []couple
	for _, n := range new.Fitted {
		all = append(all, couple{partner[n], n})
	}
	for _, o := range old.Fitted {
		if !taken[o] {
			all = append(all, couple{o, nil})
		}
	}
	return all
}

// titleOf is what a thing is called on its page.
func titleOf(g *guide.Guide, f *spec.Fitted) string {
	if p := g.Page(f.Name); p != nil {
		return p.Title
	}
	return f.Name
}

// about begins a change of a thing as it is on one side.
func about(kind Kind, g *guide.Guide, f *spec.Fitted) Change {
	return Change{Kind: kind, Fitted: f.Name, Label: f.Label, Title: titleOf(g, f)}
}

// thing tells what changed of one thing.
func (h *hirers) thing(p couple) {
	switch {
	case p.old == nil:
		c := about(Fitted, h.new, p.new)
		c.Now = h.voice.Where(h.new, p.new.Place)
		key := "change_fitted"
		if c.Now == "" {
			key = "change_fitted_somewhere"
		}
		c.Text = h.voice.Say(key, "where", c.Now)
		h.add(c)
		return
	case p.new == nil:
		c := about(Removed, h.old, p.old)
		c.Text = h.voice.Say("change_removed")
		h.add(c)
		return
	}
	was, now := titleOf(h.old, p.old), titleOf(h.new, p.new)
	if p.old.System.ID != p.new.System.ID {
		c := about(Replaced, h.new, p.new)
		c.Now, c.Was = now, was
		c.Text = h.voice.Say("change_replaced", "was", was)
		h.add(c)
	} else if was != now {
		c := about(Named, h.new, p.new)
		c.Now, c.Was = now, was
		c.Text = h.voice.Say("change_named", "was", was)
		h.add(c)
	}
	h.worded(Moved, p, h.voice.Where(h.new, p.new.Place), h.voice.Where(h.old, p.old.Place), "change_place")
	h.worded(Noted, p, p.new.Note, p.old.Note, "change_note")
	if !slices.Equal(h.comparison.old.side.picturesOf(p.old), h.comparison.new.side.picturesOf(p.new)) {
		c := about(Pictured, h.new, p.new)
		c.Text = h.voice.Say("change_pictures")
		h.add(c)
	}
	if p.old.System.ID == p.new.System.ID {
		h.facts(p)
	}
}

// worded tells of words that changed: where something is, what is noted of it.
func (h *hirers) worded(kind Kind, p couple, now, was, what string) {
	if now == was {
		return
	}
	c := about(kind, h.new, p.new)
	c.Now, c.Was, c.What = now, was, h.voice.Say(what)
	c.Text = h.inWords(c, false)
	h.add(c)
}

func (s *Side) picturesOf(f *spec.Fitted) []string {
	var all []string
	for _, p := range f.Pictures {
		all = append(all, s.pictures[p.File], p.Alt)
		for _, m := range p.Marks {
			all = append(all, fmt.Sprint(m.Across, m.Down), m.Text)
		}
	}
	return all
}

// facts tells of the facts that mean something on the van.
func (h *hirers) facts(p couple) {
	words := p.new.System.Words[h.lang]
	for i := range p.new.System.Facts {
		d := &p.new.System.Facts[i]
		was, wasText := valueOf(h.old, p.old, p.old.System.Fact(d.Name))
		now, nowText := valueOf(h.new, p.new, d)
		if was.Same(now) {
			continue
		}
		c := about(Fact, h.new, p.new)
		c.Fact, c.Now, c.Was = d.Name, nowText, wasText
		if c.What = words.Facts[d.Name]; c.What == "" {
			c.What = d.Name
		}
		c.Text = h.inWords(c, d.Type.Numeric())
		h.add(c)
	}
}

// inWords says that something is now this and was that. Numbers run on in the
// sentence.
func (h *hirers) inWords(c Change, number bool) string {
	key := "change_words"
	switch {
	case c.Was == "":
		key = "change_stated"
	case c.Now == "":
		key = "change_unstated"
	case number:
		key = "change_number"
	}
	return h.voice.Say(key, "what", c.What, "now", c.Now, "was", c.Was)
}

// valueOf is a fact of a thing and its words, zero where it is not stated or
// makes no sense.
func valueOf(g *guide.Guide, f *spec.Fitted, d *fact.Decl) (fact.Value, string) {
	if d == nil || !g.Van.Holds(f, d.Sense) {
		return fact.Value{}, ""
	}
	v := f.Values[d.Name]
	if v.IsZero() {
		return v, ""
	}
	text, _ := g.Value(f, d.Name, "")
	return v, text
}

// pagesOf gives the pages of a guide by their paths.
func (s *Side) pagesOf(g *guide.Guide) map[string]page {
	all := map[string]page{}
	for _, p := range g.Pages {
		all[p.Path] = page{label: p.Code, title: p.Title, content: append(contentOf(g, p), s.picturesOf(p.Fitted)...)}
	}
	for _, r := range g.Routines {
		all[r.Path] = page{title: r.Words.Title, content: stepsOf(g, r)}
	}
	for _, x := range g.Symptoms {
		all[x.Path] = page{title: x.Words.Title, content: checksOf(g, x)}
	}
	if len(g.Changed) > 0 {
		all[guide.ChangedPath] = page{content: changedOf(g)}
	}
	for _, x := range g.Gone {
		all[x.Path] = page{label: x.Code, title: x.Title, content: goneContent(x)}
	}
	return all
}

// pages tells which pages are new, gone and changed.
func (h *hirers) pages() {
	was, now := h.comparison.old.side.pagesOf(h.old), h.comparison.new.side.pagesOf(h.new)
	for _, kind := range []Kind{PageNew, PageChanged, PageGone} {
		from := now
		if kind == PageGone {
			from = was
		}
		for _, path := range slices.Sorted(maps.Keys(from)) {
			before, there := was[path]
			after, stays := now[path]
			is := kind == PageNew && !there || kind == PageGone && !stays ||
				kind == PageChanged && there && !slices.Equal(before.content, after.content)
			if is {
				p := from[path]
				if path == guide.ChangedPath {
					p.title = h.voice.Say("changed_title")
				}
				h.add(Change{Kind: kind, Path: path, Label: p.label, Title: p.title, Text: p.title})
			}
		}
	}
}
