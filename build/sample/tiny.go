package sample

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing/fstest"

	"doorpocket/components"
	"doorpocket/components/condition"
	"doorpocket/components/fact"
)

// Tiny is a van that has next to nothing: its body and what a test gives it,
// one fitted of a system. A Tiny is never changed.
type Tiny struct {
	lib   *components.Library
	facts map[string]map[string]string // by system: facts as TOML writes them
}

// NewTiny is a van with a body and nothing else.
func NewTiny(lib *components.Library) Tiny {
	return Tiny{lib: lib, facts: map[string]map[string]string{components.BodySystem: {}}}
}

// Ways gives the van with what a sign tells, once for each way in which the
// library can bring that about: a role has as many as there are facts of it.
func (t Tiny) Ways(sign components.Sign) []Tiny {
	if sign.System != "" {
		return []Tiny{t.with(sign.System, sign.When.Terms)}
	}
	var ways []Tiny
	for _, s := range t.lib.Systems() {
		if s.Family == sign.Family && len(s.Automatic) == 0 {
			ways = append(ways, t.with(s.ID, nil))
		}
		for _, d := range s.Facts {
			if d.Role != "" && d.Role == sign.Role {
				ways = append(ways, t.with(s.ID, []condition.Term{{Key: d.Name}}))
			}
		}
	}
	return ways
}

// Fleet is a fleet of this one van. complete stands at the top of its spec.
func (t Tiny) Fleet(complete string) fstest.MapFS {
	var b strings.Builder
	b.WriteString("code = \"TY\"\nname = \"Tiny\"\nspec_date = 2026-10-02\n" + complete + "\n")
	for _, id := range t.Systems() {
		if id == components.BodySystem {
			b.WriteString("[body]\n")
		} else {
			fmt.Fprintf(&b, "[fitted.%s]\nsystem = %q\n", strings.ReplaceAll(id, "/", "-"), id)
		}
		for _, d := range t.lib.System(id).Facts {
			if text, ok := t.facts[id][d.Name]; ok {
				fmt.Fprintf(&b, "%s = %s\n", d.Name, text)
			} else if d.Required {
				fmt.Fprintf(&b, "%s = %s\n", d.Name, value(d, 0))
			}
		}
	}
	return fstest.MapFS{"fleet.toml": {Data: []byte(FleetTOML)}, "vans/tiny.toml": {Data: []byte(b.String())}}
}

// Systems lists what is fitted, the body among them.
func (t Tiny) Systems() []string { return slices.Sorted(maps.Keys(t.facts)) }

// with fits a system, if it is not fitted yet, so that the terms hold.
func (t Tiny) with(id string, terms []condition.Term) Tiny {
	more := Tiny{lib: t.lib, facts: map[string]map[string]string{}}
	for system, facts := range t.facts {
		more.facts[system] = maps.Clone(facts)
	}
	if more.facts[id] == nil {
		more.facts[id] = map[string]string{}
	}
	for _, term := range terms {
		more.fulfil(id, term)
	}
	return more
}

// fulfil states a fact so that a term holds, and whatever makes the fact
// sensible.
func (t Tiny) fulfil(id string, term condition.Term) {
	if name, ok := strings.CutPrefix(term.Key, "body."); ok {
		id, term.Key = components.BodySystem, name
	}
	d := t.lib.System(id).Fact(term.Key)
	if d == nil {
		panic("no tiny van has " + term.Key)
	}
	t.facts[id][d.Name] = fulfilling(*d, term)
	when, err := condition.Parse(d.When)
	if err != nil {
		panic(err)
	}
	for _, needed := range when.Terms {
		t.fulfil(id, needed)
	}
}

// fulfilling is a value for which a term holds, as TOML writes it.
func fulfilling(d fact.Decl, term condition.Term) string {
	switch {
	case term.Op == condition.Present:
		return value(d, 0)
	case term.Op == condition.Equal && d.Type.Kind == fact.Choice:
		return fmt.Sprintf("%q", term.Value)
	case term.Op == condition.Equal && d.Type.Kind == fact.Choices:
		return fmt.Sprintf("[%q]", term.Value)
	case term.Op == condition.NotEqual && d.Type.Kind == fact.Choice:
		other := slices.DeleteFunc(slices.Clone(d.Of), func(o string) bool { return o == term.Value })
		return fmt.Sprintf("%q", other[0])
	case term.Op == condition.Greater && d.Type.Kind == fact.Count:
		if n, err := strconv.Atoi(term.Value); err == nil {
			return strconv.Itoa(n + 1)
		}
	}
	panic(fmt.Sprintf("no tiny van has %s %s %s", term.Key, term.Op, term.Value))
}
