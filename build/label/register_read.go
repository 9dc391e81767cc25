package label

import (
	"fmt"
	"slices"
	"strings"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// ParseRegister reads a register. It is nil where the file cannot be relied on:
// then the problems hold an error, and nothing may be written or published.
func ParseRegister(name string, data []byte) (*Register, problem.List) {
	if found := mergeMarks(name, data); len(found) > 0 {
		return nil, found
	}
	if r := inPieces(name, data, pieceLines); r != nil {
		return r, nil
	}
	return parseWhole(name, data)
}

// parseWhole reads a register at once, for everything that can be wrong with it.
func parseWhole(name string, data []byte) (*Register, problem.List) {
	table, found := manifest.ParseKept(name, data)
	if table == nil {
		return nil, found
	}
	if data == nil {
		data = []byte{} // there is a text, without a word
	}
	p := &registerParser{found: clashes(table.Source(), found), register: (*Register)(nil).clone()}
	p.register.File, p.register.written = name, data
	p.read(manifest.NewReader(table, &p.found))
	p.compare()
	if p.found.HasErrors() {
		return nil, p.found
	}
	return p.register, p.found
}

type registerParser struct {
	register *Register
	found    problem.List
	above    int // lines above the piece that is read
}

func (p *registerParser) read(r *manifest.Reader) {
	if address, ok := r.Text("address"); ok {
		p.register.Address = address
	}
	p.sections(r)
	vans := r.Table("van")
	for code, v := range vans.EachTable() {
		p.van(vans, code, v)
	}
	labels := r.Table("label")
	for key, e := range labels.EachTable() {
		p.label(labels, key, e)
	}
	r.Done()
}

// compare looks how the lines go together.
func (p *registerParser) compare() {
	if !p.found.HasErrors() {
		p.chains()
		p.onePerThing()
	}
}

// sections must have headers: new lines go below them.
func (p *registerParser) sections(r *manifest.Reader) {
	for _, name := range []string{"van", "label"} {
		if r.Has(name) && !strings.HasPrefix(r.Source().Text(r.Span(name)), "[") {
			r.ProblemAt(r.KeySpan(name), "no-header", fmt.Sprintf("No header above %s", name), fmt.Sprintf("Write [%s] on a line of its own, and below it one line each.", name))
		}
	}
}

func (p *registerParser) van(table *manifest.Reader, code string, r *manifest.Reader) {
	v := &VanEntry{Code: code, At: table.KeySpan(code)}
	if !ValidVan(code) {
		r.ProblemAt(v.At, "bad-code", fmt.Sprintf("%q is no van code", code), "A van is written as RW = { name = \"Rowan\", since = 2026-10-02 }.")
	}
	p.oneLine(table, code, r)
	v.Name, _ = r.Text("name", manifest.Required)
	v.Since, _ = r.Date("since", manifest.Required)
	v.Became, v.On = p.fate(r, vanFates)
	p.register.addVan(v)
}

func (p *registerParser) label(table *manifest.Reader, key string, r *manifest.Reader) {
	ref, ok := ParseRef(key)
	e := &Entry{Ref: ref, At: table.KeySpan(key), body: table.Span(key)}
	e.At.Start.Line += p.above
	e.body.Start.Line += p.above
	if !ok {
		r.ProblemAt(e.At, "bad-label", fmt.Sprintf("%q is no label", key), "A label is written as it is printed: the van's code, a space, a capital letter and a number from 1 to 99, as in \"RW G1\".")
	}
	p.oneLine(table, key, r)
	e.Fitted, _ = r.Text("fitted", manifest.Required)
	e.System, _ = r.Text("system", manifest.Required)
	e.Since, _ = r.Date("since", manifest.Required)
	e.Printed, _ = r.Date("printed")
	e.FormerPrinted, _ = r.Date("former_printed")
	e.Became, e.On = p.fate(r, labelFates)
	p.now(r, e)
	if ok && p.register.Van(ref.Van) == nil {
		r.ProblemAt(e.At, "van-not-registered", fmt.Sprintf("No van %s under [van]", ref.Van),
			fmt.Sprintf("Every van with a label has a line there. Put back the line of %s from an older copy of this file, or add it: %s = { name = \"...\", since = %s }", ref.Van, ref.Van, e.Since))
	}
	p.register.add(e)
}

// fate reads what became of a label or van, and when.
func (p *registerParser) fate(r *manifest.Reader, valid []Fate) (Fate, manifest.Date) {
	text, stated := r.Text("became")
	on, _ := r.Date("on")
	switch {
	case stated && !slices.Contains(valid, Fate(text)):
		var words []string
		for _, f := range valid {
			words = append(words, string(f))
		}
		detail := "Write one of: " + strings.Join(words, ", ") + "."
		if near := problem.Nearest(text, words); near != "" {
			detail = fmt.Sprintf("Did you mean %q? ", near) + detail
		}
		r.Problem("became", "unknown-option", fmt.Sprintf("Unknown fate %q", text), detail)
	case stated && on.IsZero() && !r.Has("on"):
		r.Problem("became", "missing-key", "No day on which it happened", "Add for example: on = 2027-03-14")
	case !stated && r.Has("on"):
		r.Problem("on", "senseless-key", "A day, but nothing that happened on it", `Add what became of it, for example: became = "removed". Or remove "on".`)
	}
	return Fate(text), on
}

// now reads the label that stands in the place of one that is gone.
func (p *registerParser) now(r *manifest.Reader, e *Entry) {
	text, stated := r.Text("now")
	needed := e.Became == Replaced || e.Became == Moved
	switch {
	case stated && !needed:
		r.Problem("now", "senseless-key", "Another label, but this one was neither replaced nor moved", `Add became = "replaced" or became = "moved", or remove "now".`)
	case needed && !stated:
		r.Problem("became", "missing-key", fmt.Sprintf("%s was %s, but nothing says what stands in its place", e.Ref, e.Became), `Add for example: now = "`+e.Van+` K9". Where nothing does, write became = "removed".`)
	case stated:
		ref, ok := ParseRef(text)
		if !ok {
			r.Problem("now", "bad-label", fmt.Sprintf("%q is no label", text), "Write a label as it is printed, for example \"RW G1\".")
		}
		e.Now = ref
	}
}

// oneLine refuses entries that are not written between braces: only such are
// revised in place, and merge well.
func (p *registerParser) oneLine(table *manifest.Reader, key string, r *manifest.Reader) {
	if written := table.Source().Text(table.Span(key)); !strings.HasPrefix(written, "{") {
		r.ProblemAt(table.KeySpan(key), "not-in-braces", fmt.Sprintf("%s is not written between braces", key), "Write each van and each label in one line: name = { ... }. One line is what two branches merge well.")
	}
}

// chains looks whether every label that is gone leads to one that is
// registered, and not in a circle.
func (p *registerParser) chains() {
	for _, e := range p.register.Entries {
		seen := map[Ref]bool{e.Ref: true}
		for at := e; at.Now != (Ref{}); {
			next := p.register.Find(at.Now)
			if next == nil {
				if at == e {
					p.found.Errorf(e.At, "unknown-label", fmt.Sprintf("%s leads to %s, which is not registered", e.Ref, e.Now), "%s", p.nearest(e.Now))
				}
				break
			}
			if seen[next.Ref] {
				p.found.Errorf(e.At, "label-circle", fmt.Sprintf("%s leads in a circle and comes back to %s", e.Ref, next.Ref), "Correct \"now\" on one of these lines, so that it leads to a label that stands for something.")
				break
			}
			seen[next.Ref] = true
			at = next
		}
	}
}

func (p *registerParser) nearest(ref Ref) string {
	var valid []string
	for _, e := range p.register.Of(ref.Van) {
		valid = append(valid, e.Ref.String())
	}
	if near := problem.Nearest(ref.String(), valid); near != "" {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	return "Write a label that has a line in this file."
}

// onePerThing looks for things with two labels that both stand.
func (p *registerParser) onePerThing() {
	type thing struct{ van, fitted string }
	first := map[thing]*Entry{}
	for _, e := range p.register.Entries {
		if e.Became != Stands {
			continue
		}
		t := thing{e.Van, e.Fitted}
		other := first[t]
		if other == nil {
			first[t] = e
			continue
		}
		keep, lose := other, e
		if keep.Printed.IsZero() && !lose.Printed.IsZero() {
			keep, lose = lose, keep
		}
		detail := fmt.Sprintf("As happens when two branches each gave it a label. Keep %s. ", keep.Ref)
		if lose.EverPrinted() {
			detail += fmt.Sprintf("%s was printed too: let it lead there with became = \"replaced\", now = %q, on = %s", lose.Ref, keep.Ref.String(), lose.Since)
		} else {
			detail += fmt.Sprintf("%s was never printed: delete its line.", lose.Ref)
		}
		p.found.Add(problem.New(problem.Error, e.At, "thing-twice", fmt.Sprintf("%s and %s both stand for %s", other.Ref, e.Ref, e.Fitted), detail).WithNote(other.At, "first written here"))
	}
}
