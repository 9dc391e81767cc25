package components

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"doorpocket/components/condition"
	"doorpocket/components/fact"
	"doorpocket/components/problem"
)

// BodySystem is the system whose facts a spec states in [body]: every van has
// exactly one, and every page may name its facts as body.NAME.
const BodySystem = "vehicle/body"

// SharedValues are what every page may name besides its own facts and body.NAME.
var SharedValues = []string{"van.name", "van.code", "fleet.name", "fleet.helpline", "fleet.emergency"}

// MaybeValues are what every page may name too, but not every fleet states.
var MaybeValues = []string{"fleet.hours", "fleet.mail"}

// checker looks for what is wrong between the files of a library.
type checker struct {
	lib   *Library
	own   []Step // steps of an operator's own, where one of them is looked at
	found problem.List
}

// check looks at some systems in the light of the whole library.
func (lib *Library) check(systems []*System) problem.List {
	c := checker{lib: lib}
	for _, s := range systems {
		c.header(s)
		c.facts(s)
		c.parts(s)
		c.order(s)
		for _, lang := range slices.Sorted(maps.Keys(s.Words)) {
			c.words(s, s.Words[lang], lang)
		}
		if len(s.Words) == 0 {
			c.report(s.At, "missing-words", "System without words", "Write lines.en.toml and page.en.md beside it.")
		}
	}
	return c.found
}

func (c *checker) report(at problem.Span, code, summary, detail string, args ...any) {
	c.found.Errorf(at, code, summary, detail, args...)
}

// known reports a name that is not in a list, with the nearest that is.
func (c *checker) known(at problem.Span, what, name string, valid []string) {
	if slices.Contains(valid, name) {
		return
	}
	c.found.Add(problem.New(problem.Error, at, "unknown-"+what, fmt.Sprintf("Unknown %s %q", what, name), c.instead(what, name, valid)))
}

// fewNames is up to how many valid names are listed if none is near.
const fewNames = 30

// homes are where the library lists what several systems share.
var homes = map[string]string{
	"family": "families.toml", "hazard": "hazards.toml", "role": "roles.toml", "routine": "routines.toml", "symptom": "symptoms.toml",
}

// instead says what to write in place of an unknown name.
func (c *checker) instead(what, name string, valid []string) string {
	if what == "system" {
		return c.lib.SystemHint(name)
	}
	if near := problem.Nearest(name, valid); near != "" {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	detail := "Remove it, or correct it."
	if n := len(valid); n > 0 && n <= fewNames {
		detail = "There is " + strings.Join(valid, ", ") + "."
	}
	if file := homes[what]; file != "" {
		detail += " They stand in " + libraryPrefix + file + "."
	}
	return detail
}

func (c *checker) header(s *System) {
	var families []string
	for _, f := range c.lib.Families {
		families = append(families, f.ID)
	}
	c.known(s.places.of("family", s.At), "family", s.Family, families)
	for _, id := range s.Related {
		c.known(s.places.of("related", s.At), "system", id, c.lib.SystemIDs())
	}
	for _, id := range s.Automatic {
		c.known(s.places.of("automatic", s.At), "system", id, c.lib.SystemIDs())
	}
	for _, id := range s.Tables {
		c.known(s.places.of("tables", s.At), "table", id, slices.Sorted(maps.Keys(c.lib.Tables)))
	}
	c.hazards(s)
	if len(s.Automatic) == 0 {
		return
	}
	for _, d := range s.Facts {
		if d.Required {
			c.report(d.At, "required-fact", "A required fact of a system that joins by itself", "Nobody states its facts: give it a default or make it optional.")
		}
	}
}

func (c *checker) hazards(s *System) {
	at := s.places.of("hazards", s.At)
	var ids []string
	for _, h := range c.lib.Hazards {
		ids = append(ids, h.ID)
		if h.brought(s) && !slices.Contains(s.Hazards, h.ID) {
			c.report(at, "missing-hazard", fmt.Sprintf("Hazard %q is not listed", h.ID), "A system of this kind carries it: add it to hazards and write a caution for it.")
		}
	}
	for _, id := range s.Hazards {
		c.known(at, "hazard", id, ids)
		if !slices.ContainsFunc(s.Cautions, func(v Caution) bool { return v.Hazard == id }) {
			c.report(at, "missing-caution", fmt.Sprintf("No caution for hazard %q", id), "A page with a hazard is not published without its caution: add a [[caution]] with hazard = %q.", id)
		}
	}
}

// brought reports whether a system of this kind always carries the hazard.
func (h Hazard) brought(s *System) bool {
	return slices.Contains(h.Families, s.Family) || slices.Contains(h.Systems, s.ID) ||
		slices.ContainsFunc(s.Facts, func(d fact.Decl) bool { return slices.Contains(h.Roles, d.Role) })
}

func (c *checker) facts(s *System) {
	for _, d := range s.Facts {
		c.role(d)
		when, err := condition.Parse(d.When)
		if err != nil {
			c.report(d.At, "bad-condition", "Condition is not understood", "%v", err)
		}
		c.condition(s, when, d.At)
		if s.Constants[d.Name].Source != "" {
			c.report(d.At, "duplicate-name", "A fact and a constant share a name", "Rename one of them.")
		}
	}
}

func (c *checker) role(d fact.Decl) {
	if d.Role == "" {
		return
	}
	c.known(d.At, "role", d.Role, slices.Sorted(maps.Keys(c.lib.Roles)))
	role, ok := c.lib.Roles[d.Role]
	if !ok {
		return
	}
	for _, name := range role.Types {
		if t, ok := fact.TypeNamed(name); ok && t == d.Type {
			return
		}
	}
	c.report(d.At, "wrong-type", fmt.Sprintf("Role %s does not fit the type", d.Role), "A fact of this role is a %s.", strings.Join(role.Types, " or a "))
}

// parts checks cautions, steps and checks, words aside.
func (c *checker) parts(s *System) {
	seen := map[string]bool{}
	once := func(at problem.Span, kind, id string) {
		if seen[kind+id] {
			c.report(at, "duplicate-id", fmt.Sprintf("A second %s %q", kind, id), "Ids are unique within a system: rename one of them.")
		}
		seen[kind+id] = true
	}
	for _, v := range s.Cautions {
		once(v.At, "caution", v.ID)
		c.condition(s, v.When, v.At)
		if !slices.Contains(s.Hazards, v.Hazard) {
			c.report(v.At, "missing-hazard", fmt.Sprintf("Hazard %q of a caution is not listed", v.Hazard), "Add it to hazards.")
		}
		if v.Signal == "" {
			c.report(v.At, "missing-key", "A caution without signal word", "Write signal = \"danger\", \"warning\", \"caution\" or \"notice\".")
		}
	}
	for _, v := range s.Steps {
		once(v.At, "step", v.ID)
		c.condition(s, v.When, v.At)
		c.condition(s, v.WhereIf, v.At)
		for _, id := range v.Routines {
			c.known(v.At, "routine", id, c.routineIDs())
		}
		if v.Caution != "" {
			c.known(v.At, "caution", v.Caution, names(s.Cautions, func(v Caution) string { return v.ID }))
		}
	}
	for _, v := range s.Checks {
		once(v.At, "check", v.ID)
		c.condition(s, v.When, v.At)
		c.known(v.At, "symptom", v.Symptom, c.symptomIDs())
		if !v.Danger && (v.Likelihood == 0 || v.Effort.IsZero()) {
			c.report(v.At, "missing-key", "A check without likelihood or effort", "Write how often it finds the cause and how long it takes, so that checks can be put in order.")
		}
	}
}

func (c *checker) routineIDs() []string {
	var ids []string
	for _, r := range c.lib.Routines {
		ids = append(ids, r.ID)
	}
	return ids
}

func (c *checker) symptomIDs() []string {
	var ids []string
	for _, r := range c.lib.Symptoms {
		ids = append(ids, r.ID)
	}
	return ids
}

// condition checks that every term names something and compares it with a
// value it can have.
func (c *checker) condition(s *System, when condition.Condition, at problem.Span) {
	for _, t := range when.Terms {
		if t.IsSystem() {
			c.known(at, "system", t.Key, c.lib.SystemIDs())
			continue
		}
		d := c.declared(s, t.Key)
		if d == nil {
			c.known(at, "fact", t.Key, c.factNames(s))
			continue
		}
		if t.Op == condition.Present || t.Op == condition.Absent {
			continue
		}
		if err := d.Comparable(t.Value, t.Op != condition.Equal && t.Op != condition.NotEqual); err != nil {
			c.report(at, "bad-condition", fmt.Sprintf("Condition %q cannot be decided", when), "%v", err)
		}
	}
}

// declared finds a fact by the name that conditions and words use.
func (c *checker) declared(s *System, key string) *fact.Decl {
	if name, ok := strings.CutPrefix(key, "body."); ok {
		if body := c.lib.System(BodySystem); body != nil {
			return body.Fact(name)
		}
		return nil
	}
	return s.Fact(key)
}

// factNames lists what conditions and words of a system may name.
func (c *checker) factNames(s *System) []string {
	var names []string
	for _, d := range s.Facts {
		names = append(names, d.Name)
	}
	if body := c.lib.System(BodySystem); body != nil {
		for _, d := range body.Facts {
			names = append(names, "body."+d.Name)
		}
	}
	return names
}
