package components

import (
	"slices"

	"doorpocket/components/condition"
	"doorpocket/components/fact"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
)

// System is one reusable page of the library with its facts, steps and checks.
// A loaded System is never changed.
type System struct {
	ID        string // "gas/cylinder-locker"
	Family    string
	Label     bool     // it wants a sticker beside it
	Urgent    bool     // lives are at stake: it stands first on the van's start
	Automatic []string // it joins a van by itself where one of these is fitted
	Hazards   []string
	Tables    []string
	Related   []string
	Facts     []fact.Decl // in the order of the file
	Constants map[string]Constant
	Cautions  []Caution
	Steps     []Step
	Checks    []Check
	Words     map[string]*Words // by language
	At        problem.Span
	places    places // of its lists, by key
}

// places are where names stand in a file, for problems.
type places map[string]problem.Span

// of is where a name stands, or else some wider place.
func (p places) of(name string, wider problem.Span) problem.Span {
	if at, ok := p[name]; ok {
		return at
	}
	return wider
}

// Constant is a figure of the trade that the words may name.
type Constant struct {
	Value  fact.Value
	Source string
	At     problem.Span
}

// Caution is a safety message: signal word, hazard, consequence, how to
// avoid it (the words of the last three stand in Words).
type Caution struct {
	ID     string
	Signal string // danger, warning, caution, notice
	Hazard string
	Signs  []string // ISO 7010
	When   condition.Condition
	At     problem.Span
	signs  problem.Span // where Signs are listed
}

// Step is one thing to do in one or more routines.
type Step struct {
	ID       string
	Routines []string
	After    []string // "family/system:step" or "family:step"
	Before   []string
	Wait     fact.Value          // how long one must wait afterwards, zero for not at all
	Holds    []string            // the steps that wait for it, which also come after; none for all that come after
	Where    string              // where it is done if not at the thing: inside, outside, cab, anywhere or anywhere-inside; "" for at the thing
	WhereIf  condition.Condition // Where counts only where this holds
	Caution  string              // the caution that stands before it
	When     condition.Condition
	At       problem.Span
}

// Check is one thing to look at when something is wrong.
type Check struct {
	ID         string
	Symptom    string
	Likelihood Likelihood
	Effort     fact.Value // a time
	Danger     bool
	When       condition.Condition
	At         problem.Span
}

// Likelihood is how often a check finds the cause.
type Likelihood uint8

// The likelihoods, most frequent first.
const (
	Common Likelihood = iota + 1
	Occasional
	Rare
)

// Fact finds a declared fact by name, nil where there is none.
func (s *System) Fact(name string) *fact.Decl {
	i := slices.IndexFunc(s.Facts, func(d fact.Decl) bool { return d.Name == name })
	if i < 0 {
		return nil
	}
	return &s.Facts[i]
}

// Caution finds a caution by its id, nil where there is none.
func (s *System) Caution(id string) *Caution {
	i := slices.IndexFunc(s.Cautions, func(c Caution) bool { return c.ID == id })
	if i < 0 {
		return nil
	}
	return &s.Cautions[i]
}

// Words are all the words of a system in one language.
type Words struct {
	Title    string
	About    prose.Doc
	Search   []string                     // what people say and type
	Facts    map[string]string            // short labels
	Choices  map[string]map[string]string // fact, option -> words
	Cautions map[string]CautionWords
	Steps    map[string]prose.Doc
	Checks   map[string]CheckWords
	Page     *prose.Page
	places   places // of what they are for: "step close-valve"
}

// CautionWords is what a caution says.
type CautionWords struct{ Hazard, Consequence, Avoid prose.Doc }

// CheckWords is what a check asks and what to do then; Yes or No may be empty.
type CheckWords struct{ Look, Yes, No prose.Doc }
