package spec

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
)

// sides are where on a van a thing can be.
var sides = []string{"offside", "nearside", "front", "rear", "roof", "under", "inside"}

// fitted reads one [fitted.NAME] on top of what the build sheet says of it,
// nil for nothing. It gives nil where the system is not known.
func (l *loader) fitted(r *manifest.Reader, name string, under *Fitted) *Fitted {
	switch {
	case !validName(name):
		r.ProblemAt(r.At(), "bad-name", fmt.Sprintf("A fitted system cannot be called %q", name), nameRule)
	case name == bodyName:
		r.ProblemAt(r.At(), "bad-name", `A fitted system cannot be called "body"`, "That is the name of the van's own body, whose facts stand in [body]. Give it another.")
	}
	system := l.system(r, under)
	if system == nil {
		r.Rest() // nothing can be said of its facts
		return nil
	}
	f := &Fitted{Name: name, System: system, Values: map[string]fact.Value{}, Span: r.At()}
	if under != nil && under.System == system {
		*f = *under
		f.Values = maps.Clone(under.Values)
		f.Span = r.At()
	}
	l.unstate(r, f)
	l.about(r, f)
	l.facts(r, system, f.Values)
	return f
}

func (l *loader) system(r *manifest.Reader, under *Fitted) *components.System {
	if under != nil && !r.Has("system") {
		return under.System
	}
	id, ok := r.Text("system", manifest.Required, manifest.Example(`"gas/cylinder-locker"`))
	if !ok {
		return nil
	}
	lib := l.fleet.Library
	system := lib.System(id)
	switch {
	case system == nil:
		r.Problem("system", "unknown-system", fmt.Sprintf("Unknown system %q", id), lib.SystemHint(id))
		return nil
	case id == components.BodySystem:
		r.Problem("system", "body-fitted", "The body is not fitted", "State its facts in [body].")
		return nil
	}
	return system
}

// about reads what every fitted system may state besides its facts.
func (l *loader) about(r *manifest.Reader, f *Fitted) {
	l.statedLabel(r, f)
	if text, ok := r.Text("title"); ok {
		f.Title = strings.TrimSpace(text)
	}
	if text, ok := r.Text("note"); ok {
		f.Note = strings.Join(strings.Fields(text), " ")
	}
	l.place(r.Table("at"), f)
	l.pictures(r, f)
}

func (l *loader) place(r *manifest.Reader, f *Fitted) {
	if r == nil {
		return
	}
	f.Place = Place{}
	side, ok := r.Text("side", manifest.Required, manifest.Example(`"nearside"`))
	if ok && !slices.Contains(sides, side) {
		detail := "Use " + strings.Join(sides, ", ") + "."
		if near := problem.Nearest(side, sides); near != "" {
			detail = fmt.Sprintf("Did you mean %q? ", near) + detail
		}
		r.Problem("side", "unknown-option", fmt.Sprintf("Unknown side %q", side), detail)
		side = ""
	}
	f.Place.Side = side
	f.Place.Along = l.length(r, "along")
	f.Place.Up = l.length(r, "up")
	f.Place.Across = l.length(r, "across")
}

func (l *loader) length(r *manifest.Reader, key string) fact.Value {
	e, ok := r.Raw(key)
	if !ok {
		return fact.Value{}
	}
	d := fact.Decl{Name: key, Type: fact.Type{Kind: fact.Quantity, Dimension: quantity.Length}}
	return d.Decode(e, &l.problems)
}

// facts reads every fact that the system declares and the table states.
func (l *loader) facts(r *manifest.Reader, system *components.System, values map[string]fact.Value) {
	for i := range system.Facts {
		d := &system.Facts[i]
		e, ok := r.Raw(d.Name)
		if !ok {
			continue
		}
		if v := d.Decode(e, &l.problems); !v.IsZero() {
			values[d.Name] = v
		} else {
			// It was stated, if badly: do not call it missing too.
			values[d.Name] = fact.Value{Kind: d.Type.Kind, At: problem.Span{File: broken}}
		}
	}
}

// broken marks a value that was stated but could not be read; a fleet with one
// has an error and is never published.
const broken = "\x00"

// Sides lists where on a van a thing can be.
func Sides() []string { return slices.Clone(sides) }
