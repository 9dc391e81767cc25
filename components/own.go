package components

import (
	"fmt"
	"slices"
	"strings"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
)

// OwnScope is what constraints call the steps of an operator's own: "own:ID".
const OwnScope = "own"

// ReadStep reads one [[step]] that an operator adds in a fleet's own files, in
// the form of system.toml. What else the table may hold is for the caller.
func ReadStep(r *manifest.Reader, found *problem.List) Step {
	l := loader{}
	step := l.step(r)
	found.Add(l.problems...)
	return step
}

// ReadRoutine reads a [routine.ID] that an operator adds, in the form of
// routines.toml. Its words are for the caller.
func ReadRoutine(r *manifest.Reader, id string, found *problem.List) *Routine {
	if !idForm.MatchString(id) {
		r.ProblemAt(r.At(), "bad-name", fmt.Sprintf("A routine cannot be called %q", id), "Use small letters, digits and hyphens, a letter first.")
	}
	if !r.Has("for") {
		r.ProblemAt(r.At(), "missing-key", `Missing key "for"`, `Write for = "hirer" or for = "staff": what is for staff never reaches a hirer.`)
	}
	l := loader{}
	routine := l.routine(r, id)
	for _, key := range []string{"marks", "signed_by_hirer"} {
		if r.Has(key) && !routine.Staff {
			r.Problem(key, "no-sheet", "Only lists for staff are sheets", "Remove this line, or write for = \"staff\".")
		}
	}
	found.Add(l.problems...)
	return routine
}

// WithRoutines gives the library with more routines after its own.
func (lib *Library) WithRoutines(more ...*Routine) *Library {
	joined := *lib
	joined.Routines = slices.Concat(lib.Routines, more)
	return &joined
}

// CheckOwnStep looks at a step of an operator's own in the light of the
// library. about is the system that it belongs to, nil for none; own are the
// steps that a constraint may name as own:ID.
func (lib *Library) CheckOwnStep(step Step, about *System, words []prose.Doc, own []Step) problem.List {
	c := checker{lib: lib, own: own}
	if about == nil {
		about = &System{}
	}
	c.condition(about, step.When, step.At)
	c.condition(about, step.WhereIf, step.At)
	for _, id := range step.Routines {
		c.known(step.At, "routine", id, c.routineIDs())
	}
	if step.Caution != "" && about.Caution(step.Caution) == nil {
		c.report(step.At, "unknown-caution", fmt.Sprintf("Unknown caution %q", step.Caution), "Name with fitted what the step is about, and one of the cautions of that system.")
	}
	for _, ref := range slices.Concat(step.After, step.Before, step.Holds) {
		c.constraint(step, ref)
	}
	for _, d := range words {
		c.doc(about, d, step.When, true)
	}
	return c.found
}

// CheckInclude looks at a step of the library's that an own routine takes in.
func (lib *Library) CheckInclude(ref string, at problem.Span) problem.List {
	c := checker{lib: lib}
	if len(lib.StepsNamed(ref)) == 0 {
		c.unknownStep(at, ref)
	}
	return c.found
}

// named lists the steps that a constraint means, an operator's own among them.
func (c *checker) named(ref string) []Step {
	id, isOwn := strings.CutPrefix(ref, OwnScope+":")
	if !isOwn {
		return c.lib.StepsNamed(ref)
	}
	return slices.DeleteFunc(slices.Clone(c.own), func(s Step) bool { return s.ID != id })
}

// Own reports whether a system is of a fleet's own folder, and not of the library
// that comes with the program.
func (s *System) Own() bool { return !strings.HasPrefix(s.At.File, libraryPrefix) }
