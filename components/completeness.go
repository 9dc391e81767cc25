package components

import (
	"slices"

	"doorpocket/components/condition"
	"doorpocket/components/problem"
)

// Rule is something without which the set of a van looks incomplete: where the
// van has any of Has, it wants any of Wants, unless it has any of Unless.
type Rule struct {
	Name               string // what a spec writes in complete to say that somebody has looked
	Has, Wants, Unless []Sign
	Words              map[string]RuleWords // by language
	At                 problem.Span
}

// RuleWords is what is missing, as a phrase, and why that matters.
type RuleWords struct{ Missing, Reason string }

// Sign is what one recognises something on a van by. One of System, Family and
// Role is set.
type Sign struct {
	System string              // it is on board, and
	When   condition.Condition // its facts are so
	Family string              // a system of the family is fitted
	Role   string              // a fact of the role is stated
	Text   string              // as written
	At     problem.Span
}

// Rule finds a rule of completeness by name, nil where there is none.
func (lib *Library) Rule(name string) *Rule {
	return find(lib.Rules, func(r *Rule) bool { return r.Name == name })
}

// RuleNames lists the rules in the order of the file.
func (lib *Library) RuleNames() []string {
	return names(lib.Rules, func(r *Rule) string { return r.Name })
}

// Signs are all that the rule turns on.
func (r *Rule) Signs() []Sign { return slices.Concat(r.Has, r.Wants, r.Unless) }
