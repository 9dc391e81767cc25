package compare

import (
	"slices"

	"doorpocket/build/guide"
	"doorpocket/build/label"
	"doorpocket/build/spec"
)

// staff tells what changed of one van that only staff may know.
func (c *comparison) staff(old, new van) []StaffChange {
	s := staff{comparison: c, old: old, new: new}
	s.labels()
	s.words(Sheet, "", c.voice.Say("staff_build"), new.read.Van.Build, old.read.Van.Build)
	s.words(Dated, "", c.voice.Say("staff_spec_date"), new.guide.SpecDate(), old.guide.SpecDate())
	s.entries()
	s.duties()
	return s.changes
}

type staff struct {
	*comparison
	old, new van
	changes  []StaffChange
}

func (s *staff) add(c StaffChange) { s.changes = append(s.changes, c) }

func (s *staff) words(kind Kind, key, what, now, was string) {
	if now == was {
		return
	}
	words := "change_words"
	switch {
	case was == "":
		words = "change_stated"
	case now == "":
		words = "change_unstated"
	}
	s.add(StaffChange{Kind: kind, Key: key, Now: now, Was: was, Text: s.voice.Say(words, "what", what, "now", now, "was", was)})
}

// labelsOf lists the codes of a van in order.
func labelsOf(v *spec.Van) []string {
	var all []string
	for _, f := range v.Fitted {
		if f.Label != "" {
			all = append(all, f.Label)
		}
	}
	slices.SortFunc(all, label.CompareCodes)
	return all
}

// labels tells which stickers to stick, to take off and to change.
func (s *staff) labels() {
	was, now := s.stickers(s.old.guide.Operator, s.old.read.Van), s.stickers(s.new.guide.Operator, s.new.read.Van)
	for _, code := range labelsOf(s.new.read.Van) {
		sticker := now[code]
		before, there := was[code]
		switch {
		case !there:
			s.label(Stick, code, sticker.Title)
		case before != sticker:
			s.label(Restick, code, sticker.Title)
		}
	}
	for _, code := range labelsOf(s.old.read.Van) {
		if _, stays := now[code]; !stays {
			s.label(TakeOff, code, was[code].Title)
		}
	}
	for _, f := range s.new.read.Van.Fitted {
		old := s.old.read.Van.Named(f.Name)
		if f.WantsLabel() && f.Label == "" && (old == nil || old.Label != "") {
			s.label(NoCode, "", titleOf(s.new.guide, f))
		}
	}
}

func (s *staff) label(kind Kind, code, title string) {
	s.add(StaffChange{Kind: kind, Label: code, Title: title, Text: title})
}

// entries tells what changed in [staff].
func (s *staff) entries() {
	was, now := s.stated(s.old), s.stated(s.new)
	all := slices.Clone(now)
	for _, e := range was {
		if text(now, e.key) == "" {
			all = append(all, e)
		}
	}
	for _, e := range all {
		s.words(Entry, e.key, e.what, text(now, e.key), text(was, e.key))
	}
}

// entry is one entry of [staff]: its key, what that is called, what it says.
type entry struct{ key, what, text string }

// text is what the entry of a key says, "" where there is none.
func text(list []entry, key string) string {
	for _, e := range list {
		if e.key == key {
			return e.text
		}
	}
	return ""
}

func (s *staff) stated(v van) []entry {
	var all []entry
	if v.read.Staff == nil {
		return nil
	}
	for _, e := range v.read.Staff.Entries {
		x := entry{e.Key, s.called(e), e.Text}
		if e.Own {
			x.key = "own." + e.Key
		}
		if !e.Date.IsZero() {
			x.text = s.new.guide.Operator.Library.Values[s.lang].Date(e.Date)
		}
		all = append(all, x)
	}
	return all
}

// called is what an entry is called.
func (s *staff) called(e spec.StaffEntry) string {
	switch {
	case e.Own:
		return e.Key
	case slices.Contains(spec.StaffTexts, e.Key):
		return s.voice.Say("staff_" + e.Key)
	}
	for _, d := range s.new.guide.Operator.Library.Duties {
		if d.Staff == e.Key {
			if d.Years > 0 {
				return s.voice.Say("staff_made", "what", d.Words[s.lang].Title)
			}
			return d.Words[s.lang].Title
		}
	}
	return e.Key
}

// duties tells what changed in the routines for staff.
func (s *staff) duties() {
	for _, r := range s.new.duties {
		i := slices.IndexFunc(s.old.duties, func(o *guide.Routine) bool { return o.ID == r.ID })
		var was []line
		if i >= 0 {
			was = linesOf(s.old.guide, s.old.duties[i])
		}
		if parts := s.listed(was, linesOf(s.new.guide, r)); len(parts) > 0 {
			s.add(StaffChange{Kind: Duty, Title: r.Words.Title, Text: s.voice.Say("change_steps"), Parts: parts})
		}
	}
}
