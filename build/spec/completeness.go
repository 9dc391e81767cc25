package spec

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"doorpocket/components"
	"doorpocket/components/condition"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// looked reads complete: the rules of completeness that somebody has looked at
// and found the van right as it is.
func (l *loader) looked(r *manifest.Reader) []string {
	names, ok := r.Texts("complete", manifest.Example(`["water-pump"]`))
	if !ok {
		return nil
	}
	e, _ := r.Raw("complete")
	items, _ := e.Value.([]manifest.Entry)
	valid := l.fleet.Library.RuleNames()
	for i, name := range names {
		if slices.Contains(valid, name) {
			continue
		}
		detail := "Write the name that the warning gives, or remove it."
		if near := problem.Nearest(name, valid); near != "" {
			detail = fmt.Sprintf("Did you mean %q?", near)
		}
		r.ProblemAt(items[i].ValueSpan, "unknown-rule", fmt.Sprintf("Nothing to look at under the name %q", name), detail)
	}
	return names
}

// lookIncomplete warns of what the van's set looks incomplete without, save
// where somebody has looked, and then says how to say so. The van must have
// been read whole, or what could not be read would be called missing. own are
// the names that its own file looks at, looked those of its build sheets too.
func (l *loader) lookIncomplete(v *Van, looked, own []string) {
	var missing []string
	for _, rule := range l.fleet.Library.Rules {
		if slices.Contains(looked, rule.Name) || !v.lacks(rule) {
			continue
		}
		words := l.ruleWords(rule)
		// It is about no line of the spec, but about all of it.
		l.problems.Add(problem.New(problem.Warning, problem.Span{File: v.File}, IncompleteCode, fmt.Sprintf("%s (%s)", words.Missing, rule.Name), words.Reason+" "+l.enough(rule)))
		missing = append(missing, rule.Name)
	}
	if len(missing) > 0 {
		l.problems.Add(problem.New(problem.Warning, v.At, "say-complete", v.looksIncomplete(len(missing)),
			"Look at each of them on the van. Where it is right as it is, say so above the first [table] of its spec or build sheet. For all of them at once:").
			WithNote(problem.Span{}, completeLine(append(own, missing...))))
	}
}

// IncompleteCode is the code of a warning that something looks missing.
const IncompleteCode = "looks-incomplete"

func (v *Van) looksIncomplete(n int) string {
	things := "one thing"
	if n > 1 {
		things = fmt.Sprintf("%d things", n)
	}
	return fmt.Sprintf("%s looks incomplete: %s, named above", cmp.Or(v.Name, "The van"), things)
}

// completeLine is what a spec says once somebody has looked.
func completeLine(names []string) string {
	var quoted []string
	for _, name := range names {
		quoted = append(quoted, fmt.Sprintf("%q", name))
	}
	return "complete = [" + strings.Join(quoted, ", ") + "]"
}

// fewWants is up to how many things that would do are listed.
const fewWants = 3

// enough says what would satisfy a rule. A role is no word of specs: in its
// place stand the systems that can state it.
func (l *loader) enough(rule *components.Rule) string {
	var wants []string
	for _, sign := range rule.Wants {
		if sign.Role == "" {
			wants = append(wants, sign.Text)
			continue
		}
		for _, s := range l.fleet.Library.Systems() {
			states := slices.ContainsFunc(s.Facts, func(d fact.Decl) bool { return d.Role == sign.Role })
			if states && !slices.Contains(wants, s.ID) {
				wants = append(wants, s.ID)
			}
		}
	}
	if len(wants) > fewWants {
		wants = append(wants[:fewWants], "the like")
	}
	return "Enough: " + strings.Join(wants, " or ") + "."
}

// ruleWords are those of the fleet's main language, or else English.
func (l *loader) ruleWords(rule *components.Rule) components.RuleWords {
	if langs := l.fleet.Languages; len(langs) > 0 {
		if words, ok := rule.Words[langs[0]]; ok {
			return words
		}
	}
	return rule.Words["en"]
}

// lacks decides a rule of completeness. It is no where the rule turns on a fact
// that is wrongly written: once that is put right the rule may well hold.
func (v *Van) lacks(rule *components.Rule) bool {
	return !slices.ContainsFunc(rule.Signs(), v.doubtful) &&
		slices.ContainsFunc(rule.Has, v.shows) &&
		!slices.ContainsFunc(rule.Wants, v.shows) &&
		!slices.ContainsFunc(rule.Unless, v.shows)
}

// shows reports whether the van has what a sign tells. What joins by itself
// says nothing of a family: it is advice, and nobody fitted it.
func (v *Van) shows(sign components.Sign) bool {
	return slices.ContainsFunc(v.Fitted, func(f *Fitted) bool {
		switch {
		case sign.Role != "":
			return v.states(f, sign.Role)
		case sign.Family != "":
			return f.System.Family == sign.Family && !f.Automatic
		}
		return f.System.ID == sign.System && v.Holds(f, sign.When)
	})
}

// states reports whether a fitted system states a fact of a role that means
// something on this van: a boiler for mains alone has no use of gas.
func (v *Van) states(f *Fitted, role string) bool {
	return slices.ContainsFunc(f.System.Facts, func(d fact.Decl) bool {
		if d.Role != role || f.Values[d.Name].IsZero() {
			return false
		}
		return v.Holds(f, d.Sense)
	})
}

// doubtful reports whether a sign turns on a fact that could not be read.
func (v *Van) doubtful(sign components.Sign) bool {
	return slices.ContainsFunc(v.Fitted, func(f *Fitted) bool {
		return f.System.ID == sign.System && slices.ContainsFunc(sign.When.Terms, func(t condition.Term) bool {
			return !t.IsSystem() && v.Value(f, t.Key).At.File == broken
		})
	})
}

// Reads reports whether there is something on the van that a reading is taken
// from.
func (v *Van) Reads(r *components.Reading) bool {
	return len(r.Has) == 0 || slices.ContainsFunc(r.Has, v.shows)
}
