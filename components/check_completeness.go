package components

import (
	"fmt"
	"maps"
	"slices"

	"doorpocket/components/problem"
)

// checkRules looks at the rules of completeness in the light of the whole
// library.
func (lib *Library) checkRules(prefix string) problem.List {
	c := checker{lib: lib}
	for _, r := range lib.Rules {
		for _, s := range r.Signs() {
			c.sign(s)
		}
	}
	for _, lang := range slices.Sorted(maps.Keys(lib.Values)) {
		c.ruleWords(lang, problem.Span{File: prefix + "completeness." + lang + ".toml"})
	}
	return c.found
}

// sign checks that what it names exists and that its condition can be decided.
func (c *checker) sign(s Sign) {
	switch {
	case s.System != "":
		c.known(s.At, "system", s.System, c.lib.SystemIDs())
		if system := c.lib.System(s.System); system != nil {
			c.condition(system, s.When, s.At)
		}
	case s.Role != "":
		c.known(s.At, "role", s.Role, slices.Sorted(maps.Keys(c.lib.Roles)))
	case c.lib.Family(s.Family) == nil:
		c.subject(s)
	}
}

// subject reports a sign that may have been meant in any of three forms.
func (c *checker) subject(s Sign) {
	valid := names(c.lib.Families, func(f *Family) string { return f.ID })
	for _, role := range slices.Sorted(maps.Keys(c.lib.Roles)) {
		valid = append(valid, "role:"+role)
	}
	if _, ok := c.lib.Roles[s.Family]; ok {
		c.report(s.At, "unknown-family", fmt.Sprintf("Unknown family %q", s.Family), "It is a role: write \"role:%s\".", s.Family)
		return
	}
	detail := "Write a system such as \"water/pump\", a family such as \"water\", or a role such as \"role:gas-rate\"."
	if near := problem.Nearest(s.Family, slices.Concat(valid, c.lib.SystemIDs())); near != "" {
		detail = fmt.Sprintf("Did you mean %q?", near)
	}
	c.found.Add(problem.New(problem.Error, s.At, "unknown-family", fmt.Sprintf("Unknown family %q", s.Family), detail))
}

// ruleWords checks that every rule is put into words in a language.
func (c *checker) ruleWords(lang string, at problem.Span) {
	silent := slices.DeleteFunc(slices.Clone(c.lib.Rules), func(r *Rule) bool { return r.Words[lang] != RuleWords{} })
	if len(silent) > 0 && len(silent) == len(c.lib.Rules) {
		c.report(at, "missing-words", "No words for the rules of completeness", "Write it: for each rule what is missing, and the reason.")
		return
	}
	for _, r := range silent {
		c.report(at, "missing-words", fmt.Sprintf("No words for rule %q", r.Name), "Add [%s] with missing and reason.", r.Name)
	}
}
