package spec

import (
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
// where somebody has looked. The van must have been read whole, or what could
// not be read would be called missing.
func (l *loader) lookIncomplete(v *Van, looked []string) {
	for _, rule := range l.fleet.Library.Rules {
		if slices.Contains(looked, rule.Name) || !v.lacks(rule) {
			continue
		}
		words := l.ruleWords(rule)
		l.problems.Add(problem.New(problem.Warning, v.At, "looks-incomplete", words.Missing,
			fmt.Sprintf("%s %s If the van is right as it is, write complete = [%q] above the first [table] of its spec or build sheet.", words.Reason, l.enough(rule), rule.Name)))
	}
}

// fewWants is up to how many things that would do are listed.
const fewWants = 6

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
		wants = append(wants[:fewWants], "or the like")
	}
	if len(wants) == 1 {
		return "This would do: " + wants[0] + "."
	}
	return "Any of these would do: " + strings.Join(wants, ", ") + "."
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
