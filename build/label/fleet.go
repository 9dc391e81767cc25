package label

import (
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// None is what a spec writes as the label of something that wants none.
const None = "none"

// Van is a van as its spec has it, with what is fitted.
type Van struct {
	Code, Name string
	SpecDate   manifest.Date
	At         problem.Span // its code in the spec
	Things     []Thing
}

// Thing is something fitted in a van.
type Thing struct {
	Name, System string
	Letter       string       // of its family, "" where that has none
	Label        string       // the code that the spec states, None, or "" for the register's
	Wants        bool         // one can stick a label beside it
	Was          []string     // its former names: "old-name", or "RW old-name" from another van
	Replaces     []string     // names of what it has taken the place of
	At           problem.Span // where it is fitted
	LabelAt      problem.Span // where its label is stated
	WasAt        problem.Span
	ReplacesAt   problem.Span
}

func (v *Van) thing(name string) *Thing {
	for i := range v.Things {
		if v.Things[i].Name == name {
			return &v.Things[i]
		}
	}
	return nil
}
