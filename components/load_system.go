package components

import (
	"path"
	"regexp"
	"slices"
	"strings"

	"doorpocket/components/condition"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
)

// Names of systems, steps, checks and cautions; names of facts.
var (
	idForm   = regexp.MustCompile(`^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$`)
	factForm = regexp.MustCompile(`^[a-z][a-z0-9_]*$`)
)

// taken are the keys of a fitted table that are not facts.
var taken = []string{"system", "label", "at", "title", "pictures", "note", "without"}

var signals = []string{"danger", "warning", "caution", "notice"}

var likelihoods = map[string]Likelihood{"common": Common, "occasional": Occasional, "rare": Rare}

// system reads FAMILY/NAME/system.toml.
func (l *loader) system(folder string) *System {
	table := l.read(folder + "/system.toml")
	if table == nil {
		return nil
	}
	r := manifest.NewReader(table, &l.problems)
	s := &System{ID: folder, Words: map[string]*Words{}, At: problem.Span{File: l.prefix + folder + "/system.toml"}}
	s.Family, _ = r.Text("family", manifest.Required)
	if s.Family != "" && s.Family != path.Dir(folder) {
		r.Problem("family", "wrong-family", "Family differs from the folder", "Write family = \""+path.Dir(folder)+"\".")
	}
	s.Label, _ = r.Bool("label")
	s.Urgent, _ = r.Bool("urgent")
	s.Automatic, _ = r.Texts("automatic")
	s.Hazards, _ = r.Texts("hazards")
	s.Tables, _ = r.Texts("tables")
	s.Related, _ = r.Texts("related")
	s.places = places{}
	for _, key := range []string{"family", "automatic", "hazards", "tables", "related"} {
		if r.Has(key) {
			s.places[key] = r.Span(key)
		}
	}
	for name, f := range r.Each("fact") {
		s.Facts = append(s.Facts, l.fact(f, name))
	}
	s.Constants = l.constants(r)
	l.cautions(s, r)
	l.steps(s, r)
	l.checks(s, r)
	r.Done()
	return s
}

func (l *loader) fact(r *manifest.Reader, name string) fact.Decl {
	d := fact.Decl{Name: name, At: r.At()}
	if !factForm.MatchString(name) || slices.Contains(taken, name) {
		r.ProblemAt(r.At(), "bad-name", "A fact cannot be called "+name,
			"Use small letters, digits and underscores, and none of "+strings.Join(taken, ", ")+".")
	}
	typeName, _ := r.Text("type", manifest.Required)
	var ok bool
	if d.Type, ok = fact.TypeNamed(typeName); !ok && typeName != "" {
		r.Problem("type", "unknown-type", "Unknown type of fact", "Use choice, choices, count, yes-no, date, text, or a quantity such as mass, length or power.")
	}
	if d.Type.Kind == fact.Choice || d.Type.Kind == fact.Choices {
		d.Of, _ = r.Texts("of", manifest.Required)
	}
	d.Required, _ = r.Bool("required")
	d.When, _ = r.Text("when")
	d.Sense, _ = condition.Parse(d.When) // what is not understood, check reports
	d.Role, _ = r.Text("role")
	l.limits(r, &d)
	if e, ok := r.Raw("default"); ok && d.Type.Kind != 0 {
		d.Default = d.Decode(e, &l.problems)
		if d.Required {
			r.Problem("default", "default-and-required", "A required fact has a default", "Leave out one of the two.")
		}
	}
	return d
}

// limits reads range = [least, greatest].
func (l *loader) limits(r *manifest.Reader, d *fact.Decl) {
	e, ok := r.Raw("range")
	if !ok {
		return
	}
	ends, isList := e.Value.([]manifest.Entry)
	if !isList || len(ends) != 2 || !d.Type.Numeric() {
		r.Problem("range", "bad-range", "Range is not understood", "A quantity or count has a range of two: [\"2 kg\", \"47 kg\"] or [1, 4].")
		return
	}
	open := *d // without limits of its own
	d.Low, d.High = open.Decode(ends[0], &l.problems), open.Decode(ends[1], &l.problems)
}

func (l *loader) constants(r *manifest.Reader) map[string]Constant {
	all := map[string]Constant{}
	for name, c := range r.Each("constant") {
		text, _ := c.Text("value", manifest.Required)
		source, _ := c.Text("source", manifest.Required)
		value, ok := anyQuantity(text)
		if !ok && text != "" {
			c.Problem("value", "bad-quantity", "Constant is no quantity with a unit", "Write for example \"5 °C\" or \"1 min\".")
		}
		value.At = c.Span("value")
		all[name] = Constant{Value: value, Source: source, At: c.At()}
	}
	return all
}

// anyQuantity reads a quantity of whatever dimension its unit has.
func anyQuantity(text string) (fact.Value, bool) {
	for _, d := range quantity.Dimensions() {
		if q, err := quantity.Parse(text, d); err == nil {
			return fact.Value{Kind: fact.Quantity, Quantity: q}, true
		}
	}
	return fact.Value{}, false
}

func (l *loader) cautions(s *System, r *manifest.Reader) {
	for _, c := range r.Tables("caution") {
		v := Caution{At: c.At(), ID: l.id(c)}
		v.Signal = l.oneOf(c, "signal", signals)
		v.Hazard, _ = c.Text("hazard", manifest.Required)
		v.Signs, _ = c.Texts("signs")
		v.signs = c.Span("signs")
		v.When = l.when(c)
		s.Cautions = append(s.Cautions, v)
	}
}

func (l *loader) steps(s *System, r *manifest.Reader) {
	for _, c := range r.Tables("step") {
		s.Steps = append(s.Steps, l.step(c))
	}
}

func (l *loader) step(c *manifest.Reader) Step {
	v := Step{At: c.At(), ID: l.id(c)}
	v.Routines, _ = c.Texts("routine", manifest.Required, manifest.OrSingle)
	v.After, _ = c.Texts("after")
	v.Before, _ = c.Texts("before")
	v.Wait = l.time(c, "wait")
	if v.Holds, _ = c.Texts("holds"); len(v.Holds) > 0 && v.Wait.IsZero() {
		c.Problem("holds", "missing-key", "Steps that are held up by no wait", "Write how long they wait, for example wait = \"3 min\", or remove holds.")
	}
	v.Where = l.oneOf(c, "where", wheres)
	v.WhereIf = l.whenIn(c, "where_if")
	v.Caution, _ = c.Text("caution")
	v.When = l.when(c)
	return v
}

func (l *loader) checks(s *System, r *manifest.Reader) {
	for _, c := range r.Tables("check") {
		v := Check{At: c.At(), ID: l.id(c)}
		v.Symptom, _ = c.Text("symptom", manifest.Required)
		v.Likelihood = likelihoods[l.oneOf(c, "likelihood", []string{"common", "occasional", "rare"})]
		v.Effort = l.time(c, "effort")
		v.Danger, _ = c.Bool("danger")
		v.When = l.when(c)
		s.Checks = append(s.Checks, v)
	}
}

func (l *loader) id(r *manifest.Reader) string {
	id, ok := r.Text("id", manifest.Required)
	if ok && !idForm.MatchString(id) {
		r.Problem("id", "bad-name", "An id cannot be "+id, "Use small letters, digits and hyphens, a letter first.")
	}
	return id
}

// oneOf reads a word of a short list; a check that is dangerous may lack one.
func (l *loader) oneOf(r *manifest.Reader, key string, valid []string) string {
	word, ok := r.Text(key)
	if ok && !slices.Contains(valid, word) {
		detail := "Use " + strings.Join(valid, ", ") + "."
		if near := problem.Nearest(word, valid); near != "" {
			detail = "Did you mean \"" + near + "\"? " + detail
		}
		r.Problem(key, "unknown-option", "Unknown "+key+" \""+word+"\"", detail)
	}
	return word
}

func (l *loader) time(r *manifest.Reader, key string) fact.Value {
	e, ok := r.Raw(key)
	if !ok {
		return fact.Value{}
	}
	d := fact.Decl{Name: key, Type: fact.Type{Kind: fact.Quantity, Dimension: quantity.Time}}
	return d.Decode(e, &l.problems)
}

func (l *loader) when(r *manifest.Reader) condition.Condition { return l.whenIn(r, "when") }

// whenIn reads a condition from another key.
func (l *loader) whenIn(r *manifest.Reader, key string) condition.Condition {
	text, _ := r.Text(key)
	c, err := condition.Parse(text)
	if err != nil {
		r.Problem(key, "bad-condition", "Condition is not understood", err.Error())
	}
	return c
}
