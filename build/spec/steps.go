package spec

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"doorpocket/components"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
)

// OwnStep is a step that an operator adds to a routine, in fleet.toml, in a
// build sheet or in a spec.
type OwnStep struct {
	components.Step
	Fitted string               // what it is about, "" for nothing: it stands where a van has that
	Place  Place                // where it is done; without, where the fitted thing is
	Words  map[string]prose.Doc // by language
}

// Added is what an operator adds to the routines of one van.
type Added struct {
	Steps    []*OwnStep
	Includes map[string][]string // routine -> steps of the library that it takes in
}

// ownRoutine is a routine of the operator's.
type ownRoutine struct {
	*components.Routine
	at problem.Span
}

// additions are what files add for one van.
type additions struct {
	steps    []*OwnStep
	includes map[string][]string
}

// extra is what fleet.toml and the build sheets add to the routines. It is not
// changed once the vans are read.
type extra struct {
	routines []ownRoutine
	steps    []*OwnStep          // of fleet.toml and of all build sheets
	fleet    additions           // of fleet.toml
	changed  []noted             // of fleet.toml
	library  *components.Library // with every own routine, those for staff too
}

// over puts what a file adds on top of what its build sheet or the fleet adds:
// a step of the same id replaces the one below.
func (a additions) over(base additions) additions {
	all := additions{includes: joined(base.includes, a.includes)}
	for _, s := range base.steps {
		if !slices.ContainsFunc(a.steps, func(o *OwnStep) bool { return o.ID == s.ID }) {
			all.steps = append(all.steps, s)
		}
	}
	all.steps = append(all.steps, a.steps...)
	return all
}

func joined(a, b map[string][]string) map[string][]string {
	all := map[string][]string{}
	maps.Copy(all, a)
	for id, refs := range b {
		all[id] = slices.Concat(all[id], refs)
	}
	return all
}

// readRoutines reads [routine.*] of fleet.toml or a build sheet, and gives the
// steps of the library that each takes in.
func (l *loader) readRoutines(r *manifest.Reader) map[string][]string {
	includes := map[string][]string{}
	for id, c := range r.Each("routine") {
		includes[id] = l.ownRoutine(c, id)
	}
	return includes
}

// readSteps reads every [[step]] of a file.
func (l *loader) readSteps(r *manifest.Reader) []*OwnStep {
	var steps []*OwnStep
	for _, c := range r.Tables("step") {
		s := l.ownStep(c)
		if first := slices.IndexFunc(steps, func(o *OwnStep) bool { return o.ID == s.ID }); first >= 0 && s.ID != "" {
			l.problems.Add(problem.New(problem.Error, s.At, "duplicate-id", fmt.Sprintf("A second step %q", s.ID),
				"The ids of your own steps are unique within a file: rename one of them.").WithNote(steps[first].At, "first written here"))
			continue
		}
		steps = append(steps, s)
	}
	return steps
}

func (l *loader) ownStep(r *manifest.Reader) *OwnStep {
	s := &OwnStep{Step: components.ReadStep(r, &l.problems)}
	s.Fitted, _ = r.Text("fitted")
	if at := r.Table("at"); at != nil {
		var f Fitted
		l.place(at, &f)
		s.Place = f.Place
	}
	s.Words = map[string]prose.Doc{}
	for lang, text := range l.ownWords(r, "text", manifest.Required) {
		doc, found := l.prose.Line(text, r.Span("text"))
		l.problems.Add(found...)
		l.problems.Add(components.FigureInWords(r.Span("text"), text)...)
		s.Words[lang] = doc
	}
	return s
}

// ownRoutine reads a routine of the operator's and gives the steps of the
// library that it takes in.
func (l *loader) ownRoutine(r *manifest.Reader, id string) []string {
	routine := components.ReadRoutine(r, id, &l.problems)
	titles, abouts := l.ownWords(r, "title", manifest.Required), l.ownWords(r, "about", manifest.Required)
	search, _ := r.Texts("words")
	for lang, title := range titles {
		routine.Words[lang] = components.RoutineWords{Title: title, About: abouts[lang], Search: search}
	}
	refs, _ := r.Texts("steps", manifest.Example(`["kitchen/hob:off"]`))
	for _, ref := range refs {
		l.problems.Add(l.fleet.Library.CheckInclude(ref, r.Span("steps"))...)
	}
	switch first := slices.IndexFunc(l.extra.routines, func(o ownRoutine) bool { return o.ID == id }); {
	case l.given.Routine(id) != nil:
		r.ProblemAt(r.At(), "duplicate-name", fmt.Sprintf("A routine %q stands in the library", id),
			fmt.Sprintf("To add to it write a [[step]] with routine = %q. For a list of your own choose another name.", id))
	case first >= 0:
		l.problems.Add(problem.New(problem.Error, r.At(), "duplicate-name", fmt.Sprintf("A second routine %q", id),
			"The names of your own routines are unique in a fleet: rename one of them.").WithNote(l.extra.routines[first].at, "first written here"))
	default:
		l.extra.routines = append(l.extra.routines, ownRoutine{routine, r.At()})
	}
	return refs
}

// ownWords reads words of the operator's: a text where the fleet has one
// language, or a table with a text for each.
func (l *loader) ownWords(r *manifest.Reader, key string, options ...manifest.Option) map[string]string {
	texts := map[string]string{}
	if e, ok := r.Raw(key); ok {
		if _, many := e.Value.(*manifest.Table); many {
			t := r.Table(key)
			for _, lang := range l.fleet.Languages {
				if text, ok := t.Text(lang, manifest.Required); ok {
					texts[lang] = text
				}
			}
			return texts
		}
	}
	text, ok := r.Text(key, append(options, manifest.Example(`"..."`))...)
	if ok && len(l.fleet.Languages) > 1 {
		var each []string
		for _, lang := range l.fleet.Languages {
			each = append(each, lang+` = "..."`)
		}
		r.Problem(key, "missing-language", "Words in one language alone", fmt.Sprintf("The fleet has several languages: write %s = { %s }.", key, strings.Join(each, ", ")))
	}
	for _, lang := range l.fleet.Languages {
		texts[lang] = text
	}
	return texts
}

// knowRoutines puts the operator's routines for hirers into the library, and
// keeps those for staff apart.
func (l *loader) knowRoutines() {
	var hirers []*components.Routine
	for _, r := range l.extra.routines {
		if r.Staff {
			l.fleet.StaffRoutines = append(l.fleet.StaffRoutines, r.Routine)
		} else {
			hirers = append(hirers, r.Routine)
		}
	}
	l.fleet.Library = l.fleet.Library.WithRoutines(hirers...)
	l.extra.library = l.fleet.Library.WithRoutines(l.fleet.StaffRoutines...)
}

// shareOut gives a van what is added to the routines for hirers, and the staff's
// record of it what is added to theirs.
func (l *loader) shareOut(v *Van, added additions) {
	own := slices.Clone(added.steps)
	all := added.over(l.extra.fleet)
	l.checkOwnSteps(v, all.steps, own)
	forStaff := func(id string) bool {
		r := l.extra.library.Routine(id)
		return r != nil && r.Staff
	}
	v.Added = all.part(func(id string) bool { return !forStaff(id) })
	if record := l.fleet.Staff[v.Code]; record != nil {
		record.Added = all.part(forStaff)
	}
}

// part is what concerns the routines that are wanted, and nothing else.
func (a additions) part(wanted func(routine string) bool) Added {
	part := Added{Includes: map[string][]string{}}
	for _, s := range a.steps {
		own := *s
		own.Routines = slices.DeleteFunc(slices.Clone(s.Routines), func(id string) bool { return !wanted(id) })
		if len(own.Routines) > 0 {
			part.Steps = append(part.Steps, &own)
		}
	}
	for id, refs := range a.includes {
		if wanted(id) {
			part.Includes[id] = refs
		}
	}
	return part
}

// checkOwnSteps looks at the own steps that stand on a van. What is about
// something that the van lacks is looked at where it is.
func (l *loader) checkOwnSteps(v *Van, all, own []*OwnStep) {
	var steps []components.Step
	for _, s := range slices.Concat(l.extra.steps, own) {
		steps = append(steps, s.Step)
	}
	for _, s := range all {
		var about *components.System
		if s.Fitted != "" {
			f := v.Named(s.Fitted)
			if f == nil {
				if s.At.File == v.File {
					l.unknownFitted(s, namesOf(v.Fitted))
				}
				continue
			}
			about = f.System
		}
		l.problems.Add(l.extra.library.CheckOwnStep(s.Step, about, slices.Collect(maps.Values(s.Words)), steps)...)
	}
}

// checkStepsFitted reports what steps of fleet.toml and the build sheets are
// about and no van has.
func (l *loader) checkStepsFitted(vans []Summary) {
	names := namesInFleet(vans)
	for _, s := range l.extra.steps {
		if s.Fitted != "" && !slices.Contains(names, s.Fitted) {
			l.unknownFitted(s, names)
		}
	}
}

// namesInFleet lists the names under which something is fitted in some van.
func namesInFleet(vans []Summary) []string {
	names := map[string]bool{}
	for _, v := range vans {
		for _, t := range v.Labels.Things {
			names[t.Name] = true
		}
	}
	return slices.Sorted(maps.Keys(names))
}

func namesOf(fitted []*Fitted) []string {
	var names []string
	for _, f := range fitted {
		names = append(names, f.Name)
	}
	return names
}

func (l *loader) unknownFitted(s *OwnStep, valid []string) {
	detail := "Nothing goes by this name. Correct it, or remove the line."
	if near := problem.Nearest(s.Fitted, valid); near != "" {
		detail = fmt.Sprintf("Did you mean %q?", near)
	}
	l.problems.Add(problem.New(problem.Error, s.At, "unknown-name", fmt.Sprintf("Nothing is fitted under the name %q", s.Fitted), detail))
}
