package components

import (
	"doorpocket/components/problem"
	"doorpocket/components/prose"
)

// Scale is how a reading is written down.
type Scale string

// The scales.
const (
	Number   Scale = "number"    // a line to write on
	Quarters Scale = "quarters"  // boxes from empty to full
	Eighths  Scale = "eighths"   // the same, as fuel gauges are marked
	Tick     Scale = "tick"      // one box
	PartFull Scale = "part-full" // full, part used or empty, and a line to write on
)

// scales lists them as readings.toml may write them.
var scales = []string{string(Number), string(Quarters), string(Eighths), string(Tick), string(PartFull)}

// Reading is something that staff read off and write down when a van changes
// hands, on the sheets of the routines that it names.
type Reading struct {
	ID     string
	Scale  Scale
	Has    []Sign                  // a van with any of these has it; none: every van
	Each   string                  // a count of that system: it is read once for each
	Sheets []string                // routines for staff
	Words  map[string]ReadingWords // by language
	At     problem.Span
}

// ReadingWords is what a reading is called, in what it is written and how it is
// told right. Unit and Tell may be absent; Tell may name facts of the system.
type ReadingWords struct {
	Title, Unit string
	Tell        prose.Doc
}

// Reading finds a reading by its id, nil where there is none.
func (lib *Library) Reading(id string) *Reading {
	return find(lib.Readings, func(r *Reading) bool { return r.ID == id })
}
