package components

import (
	"fmt"
	"slices"
	"strings"

	"doorpocket/components/problem"
)

// order checks the constraints between steps: each must name a step that some
// system has in the same routine.
func (c *checker) order(s *System) {
	for _, step := range s.Steps {
		for _, ref := range slices.Concat(step.After, step.Before, step.Holds) {
			c.constraint(step, ref)
		}
	}
}

// Sets of steps that a constraint can name instead of a step. A step of the
// set that must stand on the other side for a reason of its own is left out.
const (
	SetAll     = "all"
	SetInside  = "inside"
	SetOutside = "outside"
)

// Where a step is done that is not done at its thing.
const (
	WhereInside   = "inside"
	WhereCab      = "cab"
	WhereAnywhere = "anywhere"
	WhereOutside  = "outside" // from the ground, where the thing is on the roof
	// WhereAnywhereInside is inside, but not where the thing is.
	WhereAnywhereInside = "anywhere-inside"
)

// wheres lists them.
var wheres = []string{WhereInside, WhereOutside, WhereCab, WhereAnywhere, WhereAnywhereInside}

func (c *checker) constraint(step Step, ref string) {
	if ref == SetAll || ref == SetInside || ref == SetOutside {
		return
	}
	found := c.named(ref)
	if len(found) == 0 {
		c.unknownStep(step.At, ref)
		return
	}
	for _, other := range found {
		if slices.ContainsFunc(other.Routines, func(r string) bool { return slices.Contains(step.Routines, r) }) {
			return
		}
	}
	c.report(step.At, "constraint-elsewhere", fmt.Sprintf("Step %q is in no routine of this one", ref), "Constraints hold within a routine: correct the name or the routine.")
}

func (c *checker) unknownStep(at problem.Span, ref string) {
	scope, id, _ := strings.Cut(ref, ":")
	var valid []string
	for _, s := range c.lib.scope(scope) {
		for _, step := range s.Steps {
			valid = append(valid, step.ID)
		}
	}
	if scope == OwnScope {
		for _, step := range c.own {
			valid = append(valid, step.ID)
		}
	}
	slices.Sort(valid)
	valid = slices.Compact(valid)
	detail := fmt.Sprintf("Write family/system:step or family:step. No system is called %q.", scope)
	if len(valid) > 0 {
		detail = scope + " has the steps " + strings.Join(valid, ", ") + "."
		if near := problem.Nearest(id, valid); near != "" {
			detail = fmt.Sprintf("Did you mean %q?", scope+":"+near)
		}
	}
	c.found.Add(problem.New(problem.Error, at, "unknown-step", fmt.Sprintf("Unknown step %q", ref), detail))
}

// StepsNamed lists the steps that a constraint means: "family/system:step" one
// step, "family:step" the steps of that id of all systems of the family.
func (lib *Library) StepsNamed(ref string) []Step {
	scope, id, _ := strings.Cut(ref, ":")
	var found []Step
	for _, s := range lib.scope(scope) {
		for _, step := range s.Steps {
			if step.ID == id {
				found = append(found, step)
			}
		}
	}
	return found
}

func (lib *Library) scope(name string) []*System {
	var found []*System
	for _, s := range lib.Systems() {
		if s.ID == name || s.Family == name {
			found = append(found, s)
		}
	}
	return found
}
