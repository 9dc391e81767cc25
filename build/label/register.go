package label

import (
	"slices"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// RegisterFile is the name of the register in a fleet's folder.
const RegisterFile = "labels.toml"

// Fate is what became of a label or a van.
type Fate string

// What can become of what a label stands for, and of a van.
const (
	Stands   Fate = ""         // it is what the register says
	Removed  Fate = "removed"  // gone, and nothing has taken its place
	Replaced Fate = "replaced" // another label stands for what has taken its place
	Moved    Fate = "moved"    // into another van
	Sold     Fate = "sold"     // of a van
	Retired  Fate = "retired"  // of a van: it is no longer for hire
)

var (
	labelFates = []Fate{Removed, Replaced, Moved}
	vanFates   = []Fate{Sold, Retired}
)

// Register is a fleet's labels.toml: every label code ever given out and what
// it stands for. A code is never given to something else. A Register is not
// changed after ParseRegister; Revise makes the text of another.
//
// All methods that only ask may be called on a nil Register, which is empty.
type Register struct {
	File    string // as shown in problems
	Address string // under which the printed labels lead here, "" for not known yet
	Vans    []*VanEntry
	Entries []*Entry // in the order of the file

	written []byte // as it was read, with any byte order mark; nil for a register without text
	byRef   map[Ref]*Entry
	byVan   map[string][]*Entry
	vanCode map[string]*VanEntry
}

// VanEntry is a van in the register. It stays when the van has gone.
type VanEntry struct {
	Code, Name string
	Since      manifest.Date // the spec date at which its first label was registered
	Became     Fate          // Stands, Sold or Retired
	On         manifest.Date // when, zero while it stands
	At         problem.Span  // its code in the register
}

// Entry is one label in the register.
type Entry struct {
	Ref
	Fitted, System string        // what it stands for, or stood for: "gas-locker", "gas/cylinder-locker"
	Since          manifest.Date // the spec date at which it was registered
	Printed        manifest.Date // when it was last printed with the present address, zero for never
	FormerPrinted  manifest.Date // when it was printed with the fleet's former address, zero for never
	Became         Fate          // Stands, Removed, Replaced or Moved
	Now            Ref           // the label of what took its place, or of its new van; else zero
	On             manifest.Date // the spec date at which that was seen, zero while it stands
	At             problem.Span  // its code in the register

	body problem.Span // what stands between the braces, with them
}

// Stale reports whether the label on the van leads to the former address only.
func (e *Entry) Stale() bool { return !e.FormerPrinted.IsZero() && e.Printed.IsZero() }

// EverPrinted reports whether a label with this code may be stuck somewhere.
func (e *Entry) EverPrinted() bool { return !e.Printed.IsZero() || !e.FormerPrinted.IsZero() }

// Find gives the entry of a label, nil for none.
func (r *Register) Find(ref Ref) *Entry {
	if r == nil {
		return nil
	}
	return r.byRef[ref]
}

// Of lists the entries of a van in the order of the file. The list is shared:
// do not change it.
func (r *Register) Of(van string) []*Entry {
	if r == nil {
		return nil
	}
	return r.byVan[van]
}

// Van gives the entry of a van, nil for none.
func (r *Register) Van(code string) *VanEntry {
	if r == nil {
		return nil
	}
	return r.vanCode[code]
}

// All lists the entries, in the order of the file, nil for an empty register.
func (r *Register) All() []*Entry {
	if r == nil {
		return nil
	}
	return r.Entries
}

// Current reports whether a label still stands for something in a van that is
// for hire.
func (r *Register) Current(e *Entry) bool {
	v := r.Van(e.Van)
	return e.Became == Stands && v != nil && v.Became == Stands
}

// Last follows a label to the one that stands in its place now. It gives the
// entry itself where nothing took its place, and otherwise the end of the
// chain, which may itself be gone. ParseRegister refuses chains in a circle.
func (r *Register) Last(e *Entry) *Entry {
	for range len(r.Entries) {
		next := r.Find(e.Now)
		if next == nil {
			break
		}
		e = next
	}
	return e
}

// Stale lists the labels in use that were printed with the former address and
// not since.
func (r *Register) Stale() []*Entry {
	return slices.DeleteFunc(slices.Clone(r.All()), func(e *Entry) bool { return !e.Stale() || !r.Current(e) })
}

// Unprinted lists the labels in use that have not been printed with the present
// address, by van and code.
func (r *Register) Unprinted() []*Entry {
	list := slices.DeleteFunc(slices.Clone(r.All()), func(e *Entry) bool { return !e.Printed.IsZero() || !r.Current(e) })
	slices.SortFunc(list, func(a, b *Entry) int { return a.Compare(b.Ref) })
	return list
}

// clone copies the register so that the copy can be revised.
func (r *Register) clone() *Register {
	c := &Register{byRef: map[Ref]*Entry{}, byVan: map[string][]*Entry{}, vanCode: map[string]*VanEntry{}}
	if r == nil {
		return c
	}
	c.File, c.Address, c.written = r.File, r.Address, r.written
	for _, v := range r.Vans {
		copied := *v
		c.addVan(&copied)
	}
	for _, e := range r.Entries {
		copied := *e
		c.add(&copied)
	}
	return c
}

func (r *Register) add(e *Entry) {
	r.Entries = append(r.Entries, e)
	r.byRef[e.Ref] = e
	r.byVan[e.Van] = append(r.byVan[e.Van], e)
}

func (r *Register) addVan(v *VanEntry) {
	r.Vans = append(r.Vans, v)
	r.vanCode[v.Code] = v
}
