package components

import "doorpocket/components/problem"

// Duty is something that falls due on a van: a check, or the end of a life. Its
// day stands in [staff] under Staff, or is the Fact of a System.
type Duty struct {
	Name   string
	Staff  string // the key of a day in [staff], "" for none
	Years  int    // that day is when it was made, and it is due so many years later; 0: on the day itself
	System string
	Fact   string
	Has    []Sign               // a van with any of these should state the day; none: every van
	Words  map[string]DutyWords // by language
	At     problem.Span
}

// DutyWords is what a duty is called and why it matters.
type DutyWords struct{ Title, Reason string }

// Duty finds a duty by name, nil where there is none.
func (lib *Library) Duty(name string) *Duty {
	return find(lib.Duties, func(d *Duty) bool { return d.Name == name })
}

// StaffDates lists the keys of [staff] that are days, in the order of the file.
func (lib *Library) StaffDates() []string {
	var keys []string
	for _, d := range lib.Duties {
		if d.Staff != "" {
			keys = append(keys, d.Staff)
		}
	}
	return keys
}
