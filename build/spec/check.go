package spec

import (
	"fmt"
	"slices"

	"doorpocket/build/label"
	"doorpocket/components/fact"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
)

// sensible reports whether a fact means something on this van.
func (l *loader) sensible(v *Van, f *Fitted, d fact.Decl) bool {
	return v.Holds(f, d.Sense)
}

// check looks at a complete van.
func (l *loader) check(v *Van) {
	labels := map[string]*Fitted{}
	for _, f := range v.Fitted {
		l.checkFacts(v, f)
		l.checkLabel(v, f, labels)
		l.checkPlace(v, f)
		l.checkEmbeds(v, f)
	}
}

func (l *loader) checkFacts(v *Van, f *Fitted) {
	for _, d := range f.System.Facts {
		value, stated := f.Values[d.Name]
		sensible := l.sensible(v, f, d)
		switch {
		case d.Required && !stated && sensible:
			l.missingFact(v, f, d)
		case stated && !sensible && value.At.File != broken && value.At != d.Default.At:
			l.problems.Add(problem.New(problem.Warning, value.At, "senseless-fact", fmt.Sprintf("%s means nothing here", d.Name),
				fmt.Sprintf("It is only of use where %s. Remove it, or correct the other fact.", d.When)))
		}
	}
}

func (l *loader) missingFact(v *Van, f *Fitted, d fact.Decl) {
	if f.Name == bodyName && len(f.Values) == 0 {
		return // the whole body is missing, which has been said
	}
	detail := fmt.Sprintf("Add %s. See: doorpocket systems %s", d.Blank(), f.System.ID)
	if label := l.factLabel(f, d); label != "" {
		detail = fmt.Sprintf("It is this: %s. %s", label, detail)
	}
	p := problem.New(problem.Error, f.Span, "missing-fact", fmt.Sprintf("%s lacks %s", f.header(), d.Name), detail)
	if f.Span.File != v.File {
		p = p.WithNote(v.At, "needed by this van")
	}
	l.problems.Add(p)
}

// factLabel is what the library calls a fact in the fleet's main language, or
// else in English.
func (l *loader) factLabel(f *Fitted, d fact.Decl) string {
	for _, lang := range append(slices.Clone(l.fleet.Languages), "en") {
		if words := f.System.Words[lang]; words != nil {
			return words.Facts[d.Name]
		}
	}
	return ""
}

func (l *loader) checkLabel(v *Van, f *Fitted, labels map[string]*Fitted) {
	if f.Label == "" {
		if f.System.Label && !f.Automatic && f.label.code != label.None && !l.settling {
			l.problems.Add(problem.New(problem.Warning, f.Span, "no-label", fmt.Sprintf("[fitted.%s] has no label code", f.Name),
				"Something one can stick a label beside wants one: run doorpocket labels, which gives it a code. Where it wants none, write label = \"none\"."))
		}
		return
	}
	if first := labels[f.Label]; first != nil {
		l.problems.Add(problem.New(problem.Error, f.Span, "duplicate-label", fmt.Sprintf("A second label %s on %s", f.Label, v.Name),
			"A label code leads to one thing: give one of them another number.").WithNote(first.Span, "first written here"))
		return
	}
	labels[f.Label] = f
	if letter := l.letter(f); letter != "" && f.Label[:1] != letter {
		l.problems.Add(problem.New(problem.Warning, f.Span, "label-letter", fmt.Sprintf("Label %s of a %s system", f.Label, f.System.Family),
			fmt.Sprintf("Codes of this family begin with %s, so that people on the telephone know what is meant.", letter)))
	}
}

func (l *loader) letter(f *Fitted) string {
	if family := l.fleet.Library.Family(f.System.Family); family != nil {
		return family.Letter
	}
	return ""
}

// checkPlace warns of a labelled thing without a place, and of places outside
// the body.
func (l *loader) checkPlace(v *Van, f *Fitted) {
	if f.Place.Side == "" {
		if f.Label != "" {
			l.problems.Add(problem.New(problem.Warning, f.Span, "no-place", fmt.Sprintf("[fitted.%s] does not say where it is", f.Name),
				`The plan cannot show it. Add for example: at = { side = "nearside", along = "5.1 m", up = "0.6 m" }`))
		}
		return
	}
	l.within(v, f.Place.Along, "length")
	l.within(v, f.Place.Across, "width")
	l.within(v, f.Place.Up, "height")
}

func (l *loader) within(v *Van, at fact.Value, size string) {
	whole := v.Value(nil, "body."+size)
	if at.IsZero() || whole.IsZero() || at.At.File == broken || whole.At.File == broken {
		return
	}
	if order, err := quantity.Compare(at.Quantity, whole.Quantity); err == nil && order > 0 {
		l.problems.Add(problem.New(problem.Error, at.At, "out-of-body", fmt.Sprintf("%s is outside the van", at.Quantity),
			fmt.Sprintf("The body's %s is %s. Correct one of the two.", size, whole.Quantity)).WithNote(whole.At, "the "+size+" is written here"))
	}
}
