package survey

import (
	"iter"
	"slices"
	"strings"

	"doorpocket/build/compare"
	"doorpocket/build/guide"
	"doorpocket/build/spec"
)

// Record is what the pages of the whole fleet need to know of one van. It is
// kept in memory for every van of the fleet, so its lists are texts.
type Record struct {
	Has        List         `json:"has,omitempty"`        // systems that did not join by themselves, each with its label code: "gas/cylinder-locker=G1"
	Lacking    List         `json:"lacking,omitempty"`    // facts that nobody stated: "gas/cylinder-locker:tare"
	Guesses    List         `json:"guesses,omitempty"`    // facts with the library's default, in the same form
	Bare       List         `json:"bare,omitempty"`       // systems of pages without a picture
	Unshown    []Unshown    `json:"unshown,omitempty"`    // photographs of the van that no page shows
	Unlabelled List         `json:"unlabelled,omitempty"` // systems that want a label and have none
	Own        []Difference `json:"own,omitempty"`        // from its build sheet
	Edition    string       `json:"edition,omitempty"`    // of the guide in the main language
}

// Unshown is a photograph that lies in the fleet's folder and is not shown. Code is
// that of the problem that says why.
type Unshown struct {
	File string `json:"file"` // in the folder pictures
	Code string `json:"code"`
}

// List is names with spaces between.
type List string

func listOf(names []string) List { return List(strings.Join(names, " ")) }

// All gives the names in order.
func (l List) All() iter.Seq[string] { return strings.FieldsSeq(string(l)) }

// Len counts the names.
func (l List) Len() int {
	if l == "" {
		return 0
	}
	return strings.Count(string(l), " ") + 1
}

// Make makes the record of a van that was read. g is its guide in the main
// language, nil where it was not made: then the record has no edition.
func Make(kit *guide.Kit, r spec.Read, g *guide.Guide) Record {
	var has, lacking, guesses, bare, unlabelled []string
	for _, t := range Things(kit, r) {
		f, id := t.Fitted, t.Fitted.System.ID
		if !f.Automatic {
			has = append(has, id+"="+f.Label)
		}
		if f.WantsLabel() && f.Label == "" {
			unlabelled = append(unlabelled, id)
		}
		if !f.Automatic && len(f.Pictures) == 0 {
			bare = append(bare, id)
		}
		for _, fact := range t.Facts {
			switch fact.Origin {
			case Lacking:
				lacking = append(lacking, id+":"+fact.Key)
			case Guess:
				guesses = append(guesses, id+":"+fact.Key)
			}
		}
	}
	made := Record{Has: listOf(has), Lacking: once(lacking), Guesses: once(guesses), Bare: listOf(bare), Unlabelled: listOf(unlabelled), Own: differences(kit, r)}
	if g != nil {
		made.Edition = compare.Edition(g)
	}
	return made
}

// once is a list in order with every name once: of two roof lights that lack the
// same fact one is told.
func once(names []string) List {
	slices.Sort(names)
	return listOf(slices.Compact(names))
}
