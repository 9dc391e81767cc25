package label

import (
	"slices"

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

// Thing is something fitted in a van. Those of a whole fleet are held at once: what
// few specs state stands apart.
type Thing struct {
	Name, System string
	Letter       string       `json:",omitempty"` // of its family, "" where that has none
	Label        string       `json:",omitempty"` // the code that the spec states, None, or "" for the register's
	Wants        bool         `json:",omitempty"` // one can stick a label beside it
	At           problem.Span // where it is fitted
	Stated       *Stated      `json:",omitempty"` // nil for nothing
}

// Stated is what a spec itself says of a thing's label.
type Stated struct {
	Was        []string     `json:",omitempty"` // its former names: "old-name", or "RW old-name" from another van
	Replaces   []string     `json:",omitempty"` // names of what it has taken the place of
	LabelAt    problem.Span `json:",omitzero"`  // where its label is stated
	WasAt      problem.Span `json:",omitzero"`
	ReplacesAt problem.Span `json:",omitzero"`
}

// stated is what the spec says, nothing where it says nothing.
func (t *Thing) stated() Stated {
	if t.Stated == nil {
		return Stated{}
	}
	return *t.Stated
}

// replaces notes that the thing has taken the place of another.
func (t *Thing) replaces(name string) {
	now := t.stated()
	now.Replaces = append(slices.Clone(now.Replaces), name)
	t.Stated = &now
}

func (v *Van) thing(name string) *Thing {
	for i := range v.Things {
		if v.Things[i].Name == name {
			return &v.Things[i]
		}
	}
	return nil
}
