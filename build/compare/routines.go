package compare

import (
	"slices"

	"doorpocket/build/guide"
)

// routines tells which steps of which routines changed.
func (h *hirers) routines() {
	for _, r := range h.new.Routines {
		i := slices.IndexFunc(h.old.Routines, func(o *guide.Routine) bool { return o.ID == r.ID })
		if i < 0 {
			continue // it is a new page
		}
		if parts := h.listed(linesOf(h.old, h.old.Routines[i]), linesOf(h.new, r)); len(parts) > 0 {
			h.add(Change{Kind: Routine, Title: r.Words.Title, Path: r.Path, Text: h.voice.Say("change_steps"), Parts: parts})
		}
	}
}

// symptoms tells which checks of which symptoms changed.
func (h *hirers) symptoms() {
	for _, s := range h.new.Symptoms {
		i := slices.IndexFunc(h.old.Symptoms, func(o *guide.Symptom) bool { return o.ID == s.ID })
		if i < 0 {
			continue
		}
		if parts := h.listed(looksOf(h.old, h.old.Symptoms[i]), looksOf(h.new, s)); len(parts) > 0 {
			h.add(Change{Kind: Symptom, Title: s.Words.Title, Path: s.Path, Text: h.voice.Say("change_checks"), Parts: parts})
		}
	}
}

// listed tells what is new in a list, what says something else, what is gone, or
// else that the order is another.
func (c *comparison) listed(was, now []line) []Part {
	var parts []Part
	for _, l := range now {
		i := slices.IndexFunc(was, func(o line) bool { return o.key == l.key })
		switch {
		case i < 0:
			parts = append(parts, Part{Now: l.text, Text: c.voice.Say("change_line_new", "what", l.text)})
		case was[i].text != l.text:
			parts = append(parts, Part{Now: l.text, Was: was[i].text, Text: c.voice.Say("change_line", "now", l.text, "was", was[i].text)})
		}
	}
	for _, l := range was {
		if !slices.ContainsFunc(now, func(n line) bool { return n.key == l.key }) {
			parts = append(parts, Part{Was: l.text, Text: c.voice.Say("change_line_gone", "what", l.text)})
		}
	}
	if len(parts) == 0 && !slices.Equal(was, now) {
		parts = append(parts, Part{Text: c.voice.Say("change_order")})
	}
	return parts
}
