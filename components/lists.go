package components

import "doorpocket/components/prose"

// Family is a group of systems: gas, water, electrics and so on.
type Family struct {
	ID     string
	Letter string // first letter of its label codes
	Words  map[string]FamilyWords
}

// FamilyWords is what a family is called.
type FamilyWords struct{ Title, About string }

// Routine is an ordered list put together from the steps of fitted systems.
type Routine struct {
	ID    string
	Staff bool   // for staff, never shown to hirers
	Begin string // where one starts: cab, inside or outside
	Facts bool   // at each step one says the facts of the thing
	Marks bool   // damage is marked on drawings of the van, on paper
	Hirer bool   // the hirer signs its sheet, which then holds nothing that hirers may not see
	Words map[string]RoutineWords
}

// RoutineWords is what a routine is called and found by.
type RoutineWords struct {
	Title, About string
	Search       []string
}

// Symptom is something wrong, put together from the checks of fitted systems.
type Symptom struct {
	ID     string
	Danger bool // people may be hurt: what to do first stands before any check
	Urgent bool // lives are at stake: it stands first on the van's start
	Words  map[string]SymptomWords
}

// SymptomWords is what a symptom is called, found by, and what to do first.
type SymptomWords struct {
	Title, About string
	Search       []string
	First        []prose.Doc
}

// TableWords is what a table says: caption, column heads, assumptions and
// the words its cells may use.
type TableWords struct {
	Caption     string
	Columns     map[string]string
	Assumptions map[string]prose.Doc
	Cells       map[string]string
}
