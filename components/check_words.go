package components

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"doorpocket/components/condition"
	"doorpocket/components/fact"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
	"doorpocket/components/quantity"
)

// words checks that a language says all that the system needs, and names only
// what exists.
func (c *checker) words(s *System, w *Words, lang string) {
	at := problem.Span{File: strings.TrimSuffix(s.At.File, "system.toml") + "lines." + lang + ".toml"}
	for _, d := range s.Facts {
		c.choiceWords(d, w, at)
		if w.Facts[d.Name] == "" {
			c.report(at, "missing-words", fmt.Sprintf("No label for fact %q", d.Name), "Add it under [fact].")
		}
	}
	c.same(w, at, "fact", names(s.Facts, func(d fact.Decl) string { return d.Name }), w.Facts)
	c.same(w, at, "choice", names(s.Facts, func(d fact.Decl) string { return d.Name }), w.Choices)
	c.same(w, at, "caution", names(s.Cautions, func(v Caution) string { return v.ID }), w.Cautions)
	c.same(w, at, "step", names(s.Steps, func(v Step) string { return v.ID }), w.Steps)
	c.same(w, at, "check", names(s.Checks, func(v Check) string { return v.ID }), w.Checks)
	c.doc(s, w.About, condition.Condition{}, true)
	for _, v := range s.Cautions {
		said, ok := w.Cautions[v.ID]
		c.said(at, "caution", v.ID, ok)
		c.doc(s, said.Hazard, v.When, true)
		c.doc(s, said.Consequence, v.When, true)
		c.doc(s, said.Avoid, v.When, true)
	}
	for _, v := range s.Steps {
		said, ok := w.Steps[v.ID]
		c.said(at, "step", v.ID, ok)
		c.doc(s, said, v.When, true)
	}
	for _, v := range s.Checks {
		said, ok := w.Checks[v.ID]
		c.said(at, "check", v.ID, ok)
		if ok && !v.Danger && said.Yes.Empty() && said.No.Empty() {
			c.report(w.places.of("check "+v.ID, at), "missing-words", fmt.Sprintf("Check %q says neither what a yes nor what a no means", v.ID), "Write yes or no, or both.")
		}
		for _, d := range []prose.Doc{said.Look, said.Yes, said.No} {
			c.doc(s, d, v.When, true)
		}
	}
	c.page(s, w)
}

func names[T any](list []T, name func(T) string) []string {
	var all []string
	for _, v := range list {
		all = append(all, name(v))
	}
	return all
}

// same reports words for something that system.toml does not have.
func (c *checker) same(w *Words, at problem.Span, what string, have []string, said any) {
	var keys []string
	switch said := said.(type) {
	case map[string]string:
		keys = slices.Sorted(maps.Keys(said))
	case map[string]map[string]string:
		keys = slices.Sorted(maps.Keys(said))
	case map[string]CautionWords:
		keys = slices.Sorted(maps.Keys(said))
	case map[string]prose.Doc:
		keys = slices.Sorted(maps.Keys(said))
	case map[string]CheckWords:
		keys = slices.Sorted(maps.Keys(said))
	}
	for _, key := range keys {
		c.known(w.places.of(what+" "+key, at), what, key, have)
	}
}

func (c *checker) said(at problem.Span, what, id string, ok bool) {
	if ok {
		return
	}
	where := fmt.Sprintf("a table [%s.%s]", what, id)
	if what == "step" {
		where = "a line under [step]"
	}
	c.report(at, "missing-words", fmt.Sprintf("No words for %s %q", what, id), "Add %s.", where)
}

func (c *checker) choiceWords(d fact.Decl, w *Words, at problem.Span) {
	for _, option := range d.Of {
		if w.Choices[d.Name][option] == "" {
			c.report(w.places.of("choice "+d.Name, at), "missing-words", fmt.Sprintf("No words for option %q of %s", option, d.Name), "Add it under [choice.%s].", d.Name)
		}
	}
	for _, option := range slices.Sorted(maps.Keys(w.Choices[d.Name])) {
		c.known(w.places.of("choice "+d.Name+" "+option, at), "option", option, d.Of)
	}
}

func (c *checker) page(s *System, w *Words) {
	c.doc(s, w.Page.Intro, condition.Condition{}, false)
	for _, section := range w.Page.Sections {
		when, err := condition.Parse(section.When)
		if err != nil {
			c.report(section.At, "bad-condition", "Condition is not understood", "%v", err)
		}
		c.condition(s, when, section.At)
		c.doc(s, section.Title, when, true)
		c.doc(s, section.Body, when, false)
	}
}

// doc checks the holes of a text. In a line that cannot be left out, every fact
// must be certain to be there.
func (c *checker) doc(s *System, d prose.Doc, when condition.Condition, certain bool) {
	for _, v := range d.Values() {
		c.value(s, v, when, certain)
	}
	for _, v := range d.Links() {
		c.link(v)
	}
	for _, v := range d.Embeds() {
		c.embed(s, v)
	}
}

func (c *checker) value(s *System, v prose.Piece, when condition.Condition, certain bool) {
	if slices.Contains(SharedValues, v.Name) {
		return
	}
	if slices.Contains(MaybeValues, v.Name) {
		if certain {
			c.uncertain(v)
		}
		return
	}
	if constant, ok := s.Constants[v.Name]; ok {
		c.unit(v, constant.Value.Quantity.Dimension())
		return
	}
	d := c.declared(s, v.Name)
	if d == nil {
		valid := slices.Concat(c.factNames(s), slices.Sorted(maps.Keys(s.Constants)), SharedValues, MaybeValues)
		c.known(v.At, "fact", v.Name, valid)
		return
	}
	if v.Unit != "" {
		c.unit(v, d.Type.Dimension)
	}
	if certain && !(d.Always() && d.When == "") && !when.Guards(v.Name) && !sameCondition(d, when) && d.Type.Kind != fact.Text {
		c.uncertain(v)
	}
}

func (c *checker) uncertain(v prose.Piece) {
	c.report(v.At, "uncertain-fact", fmt.Sprintf("Fact %q may be absent here", v.Name),
		"A step, check, caution or title cannot be left out in part: make the fact required, give it a default, or add it to when.")
}

// sameCondition reports whether a required fact makes sense exactly under a
// condition that holds here too.
func sameCondition(d *fact.Decl, when condition.Condition) bool {
	own, err := condition.Parse(d.When)
	if err != nil || !d.Always() {
		return false
	}
	return !slices.ContainsFunc(own.Terms, func(t condition.Term) bool { return !slices.Contains(when.Terms, t) })
}

func (c *checker) unit(v prose.Piece, dim quantity.Dimension) {
	if v.Unit == "" {
		return
	}
	if _, ok := quantity.UnitOf(v.Unit, dim); !ok {
		c.report(v.At, "wrong-unit", fmt.Sprintf("Unit %q does not fit %s", v.Unit, v.Name), "It is a %s.", dim)
	}
}

func (c *checker) link(v prose.Piece) {
	switch v.Scheme {
	case "system":
		c.known(v.At, "system", v.Name, c.lib.SystemIDs())
	case "routine":
		c.known(v.At, "routine", v.Name, c.routineIDs())
	case "symptom":
		c.known(v.At, "symptom", v.Name, c.symptomIDs())
	}
}

func (c *checker) embed(s *System, v prose.Piece) {
	switch v.Scheme {
	case "table":
		c.shown(s, v.At, v.Name)
	case "figure":
		plots := Plots()
		c.known(v.At, "figure", v.Name, append(slices.Sorted(maps.Keys(plots)), "locator"))
		if id := plots[v.Name]; id != "" {
			c.shown(s, v.At, id)
		}
	}
}

// shown checks that a page shows a table that its system lists.
func (c *checker) shown(s *System, at problem.Span, id string) {
	if c.lib.Tables[id] != nil && !slices.Contains(s.Tables, id) {
		c.report(at, "unlisted-table", fmt.Sprintf("Table %q is not listed", id), "Add it to tables in system.toml, or take the line out.")
		return
	}
	c.known(at, "table", id, append(slices.Sorted(maps.Keys(c.lib.Tables)), s.Tables...))
}

// CheckPage looks at a page of an operator's own, which may name what every
// page may and the facts of the body.
func (lib *Library) CheckPage(page *prose.Page) problem.List {
	c := checker{lib: lib}
	c.page(&System{}, &Words{Page: page})
	return c.found
}
