package compare

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
)

// Report is what changed from one state of a fleet to another. Lists are in a
// fixed order, and nothing in it depends on the day or the machine.
type Report struct {
	Fleet  string   `json:"fleet"`
	Old    string   `json:"old"`
	New    string   `json:"new"`
	Shared Both     `json:"shared"` // of what all vans have in common
	Joined []VanRef `json:"joined,omitempty"`
	Left   []VanRef `json:"left,omitempty"`
	Groups []Group  `json:"groups,omitempty"`
	Same   int      `json:"same"`            // vans of which nothing changed
	Files  []File   `json:"files,omitempty"` // for staff: specs hold what only they may see
	Notes  []Note   `json:"-"`               // for the files, so that hirers are told
}

// Both is what changed for hirers and, apart from it, for staff.
type Both struct {
	Hirers []Change      `json:"hirers,omitempty"`
	Staff  []StaffChange `json:"staff,omitempty"`
}

func (b Both) empty() bool { return len(b.Hirers)+len(b.Staff) == 0 }

// VanRef names a van.
type VanRef struct {
	Code   string   `json:"code"`
	Name   string   `json:"name"`
	Labels []string `json:"labels,omitempty"` // of one that joined or left: to stick, to take off
}

// Group is what changed alike on one or more vans.
type Group struct {
	Build string   `json:"build,omitempty"` // the build sheet, where all are of one
	Whole bool     `json:"whole,omitempty"` // all vans of that sheet
	Vans  []VanRef `json:"vans"`
	Both
}

// Kind is the kind of a change.
type Kind string

// The kinds of changes for hirers.
const (
	Fitted      Kind = "fitted"
	Removed     Kind = "removed"
	Replaced    Kind = "replaced" // another system under the same name
	Named       Kind = "named"    // it is called otherwise
	Moved       Kind = "moved"
	Noted       Kind = "noted" // the operator's own words about it
	Pictured    Kind = "pictured"
	Fact        Kind = "fact"
	Table       Kind = "table"
	Routine     Kind = "routine"
	Symptom     Kind = "symptom"
	PageNew     Kind = "page-new"
	PageGone    Kind = "page-gone"
	PageChanged Kind = "page-changed"
	Fleet       Kind = "fleet"  // what the operator says in every guide
	System      Kind = "system" // of the fleet's own
)

// Change is one change that hirers may know of.
type Change struct {
	Kind   Kind   `json:"kind"`
	Fitted string `json:"fitted,omitempty"` // its name in the spec
	Label  string `json:"label,omitempty"`
	Title  string `json:"title,omitempty"` // of the thing, or of the page
	Fact   string `json:"fact,omitempty"`
	Table  string `json:"table,omitempty"`
	Path   string `json:"path,omitempty"` // of a page, below the van
	What   string `json:"what,omitempty"`
	Now    string `json:"now,omitempty"`
	Was    string `json:"was,omitempty"`
	Text   string `json:"text"` // all of it in words
	Parts  []Part `json:"parts,omitempty"`
}

// Part is a row of a table or a step of a routine that changed. Now is empty for
// one that is gone, Was for one that is new.
type Part struct {
	What   string  `json:"what,omitempty"`
	Column string  `json:"column,omitempty"`
	Now    string  `json:"now,omitempty"`
	Was    string  `json:"was,omitempty"`
	By     float64 `json:"by,omitempty"`   // how much greater the number is now
	Unit   string  `json:"unit,omitempty"` // of By
	Text   string  `json:"text"`
}

// The kinds of changes for staff.
const (
	Stick   Kind = "stick" // a label to stick
	TakeOff Kind = "take-off"
	Restick Kind = "restick" // its label says something else now
	NoCode  Kind = "no-code" // the register does not know it yet
	Entry   Kind = "entry"   // of [staff]
	Duty    Kind = "duty"    // a routine for staff
	Sheet   Kind = "sheet"   // the van is on another build sheet
	Dated   Kind = "dated"   // the spec date
)

// StaffChange is one change that only staff may know of.
type StaffChange struct {
	Kind  Kind   `json:"kind"`
	Label string `json:"label,omitempty"`
	Title string `json:"title,omitempty"`
	Key   string `json:"key,omitempty"`
	Now   string `json:"now,omitempty"`
	Was   string `json:"was,omitempty"`
	Text  string `json:"text"`
	Parts []Part `json:"parts,omitempty"`
}

// File is a text file of the fleet folder that changed.
type File struct {
	Name    string `json:"name"`
	Added   int    `json:"added"`   // lines
	Removed int    `json:"removed"` // lines
	Hunks   []Hunk `json:"-"`
}

// Hunk is a run of lines around a change.
type Hunk struct {
	Old, New int // the number of the first line on either side
	Lines    []Line
}

// Line is one line; Mark is a space, + or -.
type Line struct {
	Mark byte
	Text string
}

// Sum is another where anything of the report is.
func (r *Report) Sum() string {
	sum := sha256.New()
	if err := json.NewEncoder(sum).Encode(r); err != nil {
		panic(err) // nothing but texts and finite numbers
	}
	for _, f := range r.Files {
		_, _ = fmt.Fprintf(sum, "%v\n", f.Hunks) // a sum takes everything
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// Hirers gives the report without anything that only staff may know.
func (r *Report) Hirers() *Report {
	only := *r
	only.Files, only.Notes, only.Shared.Staff, only.Groups = nil, nil, nil, nil
	all, told := map[string]bool{}, map[string]bool{}
	for _, g := range r.Groups {
		for _, v := range g.Vans {
			all[v.Code] = true
			told[v.Code] = told[v.Code] || len(g.Hirers) > 0
		}
		if g.Staff = nil; len(g.Hirers) > 0 {
			only.Groups = append(only.Groups, g)
		}
	}
	for code := range all {
		if !told[code] {
			only.Same++
		}
	}
	only.Joined, only.Left = unlabelled(r.Joined), unlabelled(r.Left)
	return &only
}

func unlabelled(vans []VanRef) []VanRef {
	var all []VanRef
	for _, v := range vans {
		all = append(all, VanRef{Code: v.Code, Name: v.Name})
	}
	return all
}
