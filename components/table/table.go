// Package table is the shape of a computed table and of what a calculation may
// ask of a van. It holds no words: cells name fitted systems, facts, keys of
// the table's own words, or quantities.
package table

import (
	"slices"

	"doorpocket/components/quantity"
)

// Column is one column as tables.toml declares it.
type Column struct {
	ID       string
	Unit     quantity.Unit // zero Unit: a column of words
	Rounding quantity.Rounding
	Decimals int  // -1: the usual number for the unit
	Signed   bool // its quantities may be below zero: what takes load off an axle
}

// Decl is a table as tables.toml declares it.
type Decl struct {
	ID          string // "gas/duration"
	Columns     []Column
	Assumptions []string // ids of sentences in the words
	Sources     []string
}

// Tone marks a cell whose meaning must not hang on colour alone: its words say
// the same.
type Tone uint8

// The tones.
const (
	Plain Tone = iota
	Good
	Doubtful
	Bad
)

// Cell is one cell. Exactly one of Uses, Word and Quantity is set, save that a
// word may stand after uses; a cell with none of them is empty.
type Cell struct {
	Uses     []Use  // fitted systems at one setting, joined by a plus sign
	Word     string // key of the table's own words; after uses, something more that is on
	Quantity quantity.Quantity
	Tone     Tone
	Tick     string // of a first cell: the row can be ticked; of rows with the same text only one
}

// Row is one row, a cell a column.
type Row []Cell

// Lack is a row that could not be worked out, for the list of what is missing.
type Lack struct {
	Use    Use
	Reason string // for staff and inspect
}

// Result is a table worked out for one van.
type Result struct {
	Rows  []Row
	Lacks []Lack
	Tick  *Tick // nil where rows cannot be ticked and added up
}

// Tick lets a reader tick rows: the numbers of a column are added up and held
// against limits. Without script the rows say the same.
type Tick struct {
	Column string // its id
	Limits []Limit
}

// Limit is one limit with what a sum means, from small to large. The last step
// has no end.
type Limit struct {
	Word   string            // key of the table's own words: what is limited
	Column string            // id of the column that is added up; empty: that of the Tick
	Left   quantity.Quantity // what the sum is taken from where the words tell what is left as {$left}; may be absent
	Steps  []Step
}

// Step is what a sum up to and including Upto means.
type Step struct {
	Upto quantity.Quantity // zero: everything above
	Word string
	Tone Tone
}

// Func works out a table. An error means that no row of it can be trusted; the
// table is then left out and the reason told.
type Func func(Input) (Result, error)

// Use is one fact of one fitted system: an appliance at one setting.
type Use struct {
	Fitted string // its name on the van
	Fact   string
}

// Fact is a stated fact of a fitted system.
type Fact struct {
	Name     string
	Role     string
	Quantity quantity.Quantity // zero for a fact that is none
	Option   string            // of a choice
	Options  []string          // of choices, in the order of the spec
	Count    int               // of a count
}

// Has reports whether a fact that is choices has an option.
func (f Fact) Has(option string) bool { return slices.Contains(f.Options, option) }

// Fitted is a system on the van as a calculation sees it. Where it is, are
// lengths; a zero one is not stated.
type Fitted struct {
	Name      string
	System    string
	Along     quantity.Quantity // from the front bumper
	Across    quantity.Quantity // from the nearside
	Facts     []Fact
	Constants []Fact // figures of the trade that the system states, by name
}

// Fact finds a stated fact by name.
func (f Fitted) Fact(name string) (Fact, bool) {
	for i := range f.Facts {
		if f.Facts[i].Name == name {
			return f.Facts[i], true
		}
	}
	return Fact{}, false
}

// Constant finds a constant of the system by name.
func (f Fitted) Constant(name string) (Fact, bool) {
	for _, c := range f.Constants {
		if c.Name == name {
			return c, true
		}
	}
	return Fact{}, false
}

// Stated is a fact with the fitted system that states it.
type Stated struct {
	Fitted Fitted
	Fact   Fact
}

// Use names the fact for a cell.
func (s Stated) Use() Use { return Use{Fitted: s.Fitted.Name, Fact: s.Fact.Name} }

// Input is what a calculation may ask: the fitted system whose page shows the
// table, and all that is fitted, in the order of the van.
type Input struct {
	Self Fitted
	All  []Fitted
}

// Of lists what is fitted of a system, in the order of the van.
func (in Input) Of(system string) []Fitted {
	var found []Fitted
	for _, f := range in.All {
		if f.System == system {
			found = append(found, f)
		}
	}
	return found
}

// WithRole lists the facts of the van that play a role.
func (in Input) WithRole(role string) []Stated {
	var found []Stated
	for i := range in.All {
		found = in.All[i].withRole(found, role)
	}
	return found
}

// WithRole lists the facts of one fitted system that play a role.
func (f Fitted) WithRole(role string) []Stated { return f.withRole(nil, role) }

func (f *Fitted) withRole(found []Stated, role string) []Stated {
	for i := range f.Facts {
		if f.Facts[i].Role == role {
			found = append(found, Stated{Fitted: *f, Fact: f.Facts[i]})
		}
	}
	return found
}
