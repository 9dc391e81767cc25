package components

import (
	"strings"

	"doorpocket/components/condition"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// completeness reads completeness.toml, the rules, and their words.
func (l *loader) completeness() {
	r := manifest.NewReader(l.read("completeness.toml"), &l.problems)
	for name, t := range r.EachTable() {
		if !idForm.MatchString(name) {
			r.ProblemAt(t.At(), "bad-name", "A rule cannot be called "+name, "Use small letters, digits and hyphens, a letter first.")
		}
		l.lib.Rules = append(l.lib.Rules, &Rule{
			Name: name, At: t.At(), Words: map[string]RuleWords{},
			Has: l.signs(t, "has", manifest.Required), Wants: l.signs(t, "wants", manifest.Required), Unless: l.signs(t, "unless"),
		})
	}
	r.Done()
	l.listWords("completeness", func(lang, name string, w *manifest.Reader) bool {
		rule := l.lib.Rule(name)
		if rule == nil {
			return false
		}
		missing, _ := w.Text("missing", manifest.Required)
		reason, _ := w.Text("reason", manifest.Required)
		rule.Words[lang] = RuleWords{Missing: missing, Reason: reason}
		return true
	})
}

// signs reads a list of signs, each with its own place.
func (l *loader) signs(r *manifest.Reader, key string, options ...manifest.Option) []Sign {
	texts, ok := r.Texts(key, append(options, manifest.Example(`["water/pump"]`))...)
	if !ok {
		return nil
	}
	e, _ := r.Raw(key)
	items, _ := e.Value.([]manifest.Entry)
	var signs []Sign
	for i, text := range texts {
		signs = append(signs, l.sign(text, items[i].ValueSpan))
	}
	return signs
}

// sign reads "water/pump", "electrics/tv where sources = satellite",
// "kitchen" or "role:gas-rate". Whether the names exist is checked later.
func (l *loader) sign(text string, at problem.Span) Sign {
	s := Sign{Text: text, At: at}
	subject, when, conditional := strings.Cut(text, " where ")
	subject = strings.TrimSpace(subject)
	if role, ok := strings.CutPrefix(subject, "role:"); ok {
		s.Role = strings.TrimSpace(role)
	} else if strings.Contains(subject, "/") {
		s.System = subject
	} else {
		s.Family = subject
	}
	if !conditional {
		return s
	}
	var err error
	if s.When, err = condition.Parse(when); err != nil {
		l.problems.Add(problem.New(problem.Error, at, "bad-condition", "Condition is not understood", err.Error()))
	}
	if s.System == "" {
		l.problems.Add(problem.New(problem.Error, at, "bad-condition", "A condition on something that has no facts of its own",
			"Only a system can be followed by where: name the system, or leave the condition out."))
	}
	return s
}
