// Package spec reads an operator's folder: fleet.toml, the specs of its vans,
// their build sheets, its own systems and pages. It reports every problem with
// its place and stops at none.
//
// What only staff may see is kept apart from the vans: a Van has no field for
// it, so no later stage that is given a Van can print it.
package spec

import (
	"path"
	"slices"
	"strings"

	"doorpocket/build/booklets"
	"doorpocket/build/label"
	"doorpocket/build/pictures"
	"doorpocket/components"
	"doorpocket/components/condition"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
)

// Fleet is all that was read. It is never changed after Load.
type Fleet struct {
	Operator
	Vans    []*Van            // by code
	Staff   map[string]*Staff // by van code
	Sources map[string][]byte // every file read, by the name shown in problems
	// StaffRoutines are the operator's own for staff; those for hirers are in the
	// library.
	StaffRoutines []*components.Routine
	Booklets      *booklets.List // booklets.toml, nil where there is none

	vans []label.Van // as the register sees them
	wish label.Wish
	read map[*Van]Read
	make func(file string) (pictures.Made, error)
}

// Operator is what every guide of the fleet shares. Like a Van it has no field
// for anything that only staff may see.
type Operator struct {
	Name      string
	Address   label.Base  // where the hirer tree is served
	Level     label.Level // the error correction of its QR symbols
	Languages []string    // the first is the main one
	Call      Call
	// Conditions are the operator's own words above the signatures on the sheets
	// that hirers sign, by routine and by language.
	Conditions map[string]map[string]string
	Pages      []*OwnPage
	Due        DueRules
	Pictures   map[string]pictures.Made // by file, without modern variants; what could not be made is missing
	Library    *components.Library
	Register   *label.Register // labels.toml as it stands, nil where there is none
	Left       []*LeftVan      // by code
}

// Call says how a hirer reaches somebody.
type Call struct {
	Helpline  string
	Hours     string // "" where not stated
	Mail      string // "" where not stated
	Emergency string // the number for fire, ambulance and police
}

// Van is one van as hirers may know it.
type Van struct {
	Code, Name string
	Build      string // the build sheet, "" for none
	File       string // the spec, as shown in problems
	SpecDate   manifest.Date
	Body       *Fitted   // its facts as body.NAME; also among Fitted
	Fitted     []*Fitted // in the order of families, then of the files
	Added      Added     // to the routines for hirers
	Without    []string  // systems that would join by themselves and are not there
	Changed    []Changed // lately, the last first
	Gone       []Gone    // its labels that stand for nothing fitted any more, by code
	aboard     map[string]bool
	At         problem.Span
}

// Fitted is a system on one van.
type Fitted struct {
	Name      string
	System    *components.System
	Label     string // its label code, stated or from the register, "" for none
	Title     string // the operator's own name for it, "" for the library's
	Note      string // the operator's own words, "" for none
	Place     Place
	Values    map[string]fact.Value // stated or by default
	Pictures  []Picture
	Automatic bool // it joined by itself
	Span      problem.Span
	label     statedLabel
	listAt    problem.Span // of the list of pictures, the zero Span where none stands in a file
}

// Place is where a fitted system is. Lengths are facts with the dimension of a
// length; a zero one is not stated.
type Place struct {
	Side   string // offside, nearside, front, rear, roof, under, inside; "" for not stated
	Along  fact.Value
	Up     fact.Value
	Across fact.Value // from the nearside
}

// Picture is a photograph of a fitted system.
type Picture struct {
	File   string // in the folder pictures/, of a van's or build sheet's own with that: RW/gas-locker.jpg
	Alt    string
	Marks  []Mark // numbered from 1 in this order
	ByName bool   // no spec lists it: its name says what it belongs to and what it shows
	At     problem.Span
}

// Mark is a place on a picture with words for what is there.
type Mark struct {
	Across, Down float64 // of the width from the left and of the height from the top of the upright picture, 0 to 1
	Text         string
}

// Stem is the name by which the words of a page call a picture: its file
// without folder and ending.
func (p Picture) Stem() string { return strings.TrimSuffix(path.Base(p.File), path.Ext(p.File)) }

// Picture finds a picture by its stem, nil where there is none.
func (f *Fitted) Picture(stem string) *Picture {
	i := slices.IndexFunc(f.Pictures, func(p Picture) bool { return p.Stem() == stem })
	if i < 0 {
		return nil
	}
	return &f.Pictures[i]
}

// Staff is what only staff may see of one van.
type Staff struct {
	Entries []StaffEntry
	Added   Added  // to the routines for staff
	Listing []byte // the whole spec, which holds these entries
	File    string
}

// Paper is what stands of [staff] on sheets that a hirer signs, and all that
// does: whatever else staff may see has no field here.
type Paper struct {
	Registration string // "" where not stated
	Marks        string // damage that is known, "" where not stated
}

// Paper gives what stands on sheets that a hirer signs; a van without a record
// has none.
func (s *Staff) Paper() Paper {
	return Paper{Registration: s.text("registration"), Marks: s.text("marks")}
}

// Notes are those for staff, "" where there are none.
func (s *Staff) Notes() string { return s.text("notes") }

func (s *Staff) text(key string) string {
	if s == nil {
		return ""
	}
	for _, e := range s.Entries {
		if e.Key == key && !e.Own {
			return e.Text
		}
	}
	return ""
}

// StaffEntry is one of them: a key of ours or, with Own, the operator's.
type StaffEntry struct {
	Key  string
	Own  bool
	Text string
	Date manifest.Date
	At   problem.Span // of a day
}

// OwnPage is a page of the operator's, the same for every van.
type OwnPage struct {
	Name  string
	Words map[string]OwnWords // by language
}

// OwnWords is an own page in one language.
type OwnWords struct {
	Title string
	Page  *prose.Page
}

// Aboard reports whether the van has a system.
func (v *Van) Aboard(system string) bool { return v.aboard[system] }

// Find gives the first fitted system of a kind, nil where there is none.
func (v *Van) Find(system string) *Fitted {
	i := slices.IndexFunc(v.Fitted, func(f *Fitted) bool { return f.System.ID == system })
	if i < 0 {
		return nil
	}
	return v.Fitted[i]
}

// Named gives a fitted system by its name, nil where there is none.
func (v *Van) Named(name string) *Fitted {
	i := slices.IndexFunc(v.Fitted, func(f *Fitted) bool { return f.Name == name })
	if i < 0 {
		return nil
	}
	return v.Fitted[i]
}

// Holds decides a condition for a fitted system of the van.
func (v *Van) Holds(f *Fitted, when condition.Condition) bool {
	return when.Holds(asker{v, f})
}

// Value finds a fact by the name that words use: of the fitted system, or
// body.NAME. The zero Value is "not stated".
func (v *Van) Value(f *Fitted, key string) fact.Value { return asker{v, f}.value(key) }
