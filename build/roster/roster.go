// Package roster is the fleet as staff see it at a glance: what every van has,
// what its spec leaves open, and in what vans of one build sheet differ. It
// knows words and values but no HTML.
package roster

import (
	"doorpocket/build/due"
	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components/manifest"
)

// Row is one van in the staff's lists of all. A publish keeps the row of every
// van, so it holds no more than those lists need.
type Row struct {
	Code, Name, Build, Registration string
	SpecDate                        manifest.Date
	Systems, Labels                 int
	Things                          []Thing  // fitted, in the order of pages
	Own                             []Stated // facts that its spec states and not its build sheet
	Open                            Open     // what nobody has stated or done yet
	Due                             []due.Item
}

// Thing is something fitted, by its name in the spec and its system.
type Thing struct {
	Name   string `json:"name"`
	System string `json:"system"`
	Title  string `json:"title,omitempty"` // the operator's own
}

// Stated is a fact of a thing in words of the fleet's main language.
type Stated struct {
	Thing string `json:"thing"`
	Fact  string `json:"fact"`
	Text  string `json:"text"`
}

// Open counts what a van's spec leaves open.
type Open struct {
	Facts    int `json:"facts,omitempty"`    // that make sense and nobody states
	Defaults int `json:"defaults,omitempty"` // taken from the library because nobody states them
	Pictures int `json:"pictures,omitempty"` // things without any
	Labels   int `json:"labels,omitempty"`   // things that could have one and do not
}

// Of is the row of a van that was read; g is a guide of it in the fleet's main
// language, of which only the words are used.
func Of(g *guide.Guide, r spec.Read) Row {
	row := Row{Code: r.Van.Code, Name: r.Van.Name, Build: r.Van.Build, SpecDate: r.Van.SpecDate, Systems: len(r.Van.Fitted), Due: due.OfVan(g.Operator, r)}
	for _, f := range r.Van.Fitted {
		row.thing(f)
	}
	row.facts(g)
	if r.Staff != nil {
		for _, e := range r.Staff.Entries {
			if e.Key == "registration" && !e.Own {
				row.Registration = e.Text
			}
		}
	}
	return row
}

// thing enters what is fitted. What joined by itself is on every such van: it
// is no news, and nobody takes pictures of it.
func (row *Row) thing(f *spec.Fitted) {
	if f.Label != "" {
		row.Labels++
	}
	if f.Unlabelled() {
		row.Open.Labels++
	}
	if f.Automatic {
		return
	}
	row.Things = append(row.Things, Thing{Name: f.Name, System: f.System.ID, Title: f.Title})
	if len(f.Pictures) == 0 {
		row.Open.Pictures++
	}
}

// facts counts what is open, and keeps what the van says over its build sheet.
func (row *Row) facts(g *guide.Guide) {
	for _, one := range g.Record() {
		switch one.From {
		case guide.Unstated:
			row.Open.Facts++
		case guide.FromDefault:
			row.Open.Defaults++
		case guide.FromSpec:
			if row.Build != "" {
				row.Own = append(row.Own, Stated{one.Fitted.Name, one.Fact, one.Text})
			}
		}
	}
}
