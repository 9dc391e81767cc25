package roster

import (
	"cmp"
	"fmt"
	"path"
	"slices"
	"strconv"
	"strings"

	"doorpocket/build/label"
	"doorpocket/build/spec"
	"doorpocket/components/fact"
	"doorpocket/components/quantity"
)

// Choice says what of a fleet goes into the table.
type Choice struct {
	Columns []string // patterns of headings, such as body.* or tyres.rear; none for all
	Numbers bool     // units stand in the heads where all vans have the same, and cells are numbers
	Hirers  bool     // nothing of what only staff may see
}

// Export makes the table of a fleet that has no errors. Heads are what stands in
// a spec, with points between: body.height, tyres.rear, staff.registration.
func Export(fleet *spec.Fleet, choice Choice) (*Table, error) {
	e := exporting{choice: choice, values: map[string]map[int]fact.Value{}}
	for i, r := range fleet.Reads() {
		e.van(i, r)
	}
	for i, r := range fleet.Reads() {
		e.order(i, r.Van)
	}
	heads, err := e.chosen()
	if err != nil {
		return nil, err
	}
	t := &Table{Rows: make([][]Cell, 1+len(fleet.Vans))}
	for _, head := range heads {
		unit := e.unit(head)
		shown := head
		if !unit.IsZero() {
			shown += " (" + unit.Name() + ")"
		}
		t.Rows[0] = append(t.Rows[0], Cell{Text: shown})
		for i := range fleet.Vans {
			t.Rows[i+1] = append(t.Rows[i+1], cellOf(e.values[head][i], !unit.IsZero()))
		}
	}
	return t, nil
}

type exporting struct {
	choice Choice
	heads  []string
	names  []string                      // of what is fitted, in the order in which they stand on vans
	values map[string]map[int]fact.Value // by heading and van
}

func (e *exporting) put(van int, head string, v fact.Value) {
	if v.IsZero() {
		return
	}
	if e.values[head] == nil {
		e.values[head] = map[int]fact.Value{}
		e.heads = append(e.heads, head)
	}
	e.values[head][van] = v
}

func text(s string) fact.Value {
	if s == "" {
		return fact.Value{}
	}
	return fact.Value{Kind: fact.Text, Text: s}
}

func (e *exporting) van(i int, r spec.Read) {
	v := r.Van
	e.put(i, "code", text(v.Code))
	e.put(i, "name", text(v.Name))
	e.put(i, "build", text(v.Build))
	e.put(i, "spec_date", fact.Value{Kind: fact.Date, Date: v.SpecDate})
	e.put(i, "without", text(strings.Join(v.Without, listMark)))
	last := -1
	for _, f := range v.Fitted {
		if f.Automatic && f != v.Body {
			continue
		}
		name := headOf(f.Name)
		if f != v.Body {
			last = e.place(f.Name, last)
			e.put(i, name+".system", text(f.System.ID))
			code := f.Label
			if code == "" && f.System.Label && !f.WantsLabel() {
				code = label.None
			}
			e.put(i, name+".label", text(code))
			e.put(i, name+".title", text(f.Title))
			e.put(i, name+".at.side", text(f.Place.Side))
			e.put(i, name+".at.along", f.Place.Along)
			e.put(i, name+".at.up", f.Place.Up)
			e.put(i, name+".at.across", f.Place.Across)
		}
		for k := range f.System.Facts {
			d := &f.System.Facts[k]
			if value, ok := f.Values[d.Name]; ok && (d.Default.IsZero() || value.At != d.Default.At) {
				e.put(i, name+"."+d.Name, value)
			}
		}
		if f != v.Body {
			e.put(i, name+".note", text(f.Note))
		}
	}
	if r.Staff == nil || e.choice.Hirers {
		return
	}
	for _, s := range r.Staff.Entries {
		head := "staff." + s.Key
		if s.Own {
			head = "staff.own." + s.Key
		}
		value := text(s.Text)
		if !s.Date.IsZero() {
			value = fact.Value{Kind: fact.Date, Date: s.Date}
		}
		e.put(i, head, value)
	}
}

// order states in which order things stand on a van, where that is not the order of
// the columns: pages and steps follow it.
func (e *exporting) order(i int, v *spec.Van) {
	var names []string
	family := map[string]int{}
	for at, f := range v.Fitted {
		if _, known := family[f.System.Family]; !known {
			family[f.System.Family] = at
		}
		if !f.Automatic {
			names = append(names, f.Name)
		}
	}
	inColumns := slices.Clone(names)
	slices.SortFunc(inColumns, func(a, b string) int {
		return cmp.Or(family[v.Named(a).System.Family]-family[v.Named(b).System.Family], slices.Index(e.names, a)-slices.Index(e.names, b))
	})
	if !slices.Equal(names, inColumns) {
		e.put(i, "order", text(strings.Join(names, listMark)))
	}
}

// headOf begins the headings of something fitted: with its name, unless that means
// something else there.
func headOf(name string) string {
	if name == "staff" {
		return "fitted.staff"
	}
	return name
}

// place keeps the names of what is fitted in the order of the vans: a new one comes
// after what it comes after on its van.
func (e *exporting) place(name string, after int) int {
	if i := slices.Index(e.names, name); i >= 0 {
		return i
	}
	e.names = slices.Insert(e.names, after+1, name)
	return after + 1
}

// first are the headings that stand before all others, and in every table.
var first = []string{"code", "name", "build", "spec_date", "without", "order"}

// chosen gives the headings in their order, those that were asked for.
func (e *exporting) chosen() ([]string, error) {
	rank := func(head string) int {
		if i := slices.Index(first, head); i >= 0 {
			return i
		}
		name, _, _ := strings.Cut(strings.TrimPrefix(head, "fitted."), ".")
		if strings.HasPrefix(head, "fitted.") {
			return len(first) + 1 + slices.Index(e.names, name)
		}
		switch name {
		case "body":
			return len(first)
		case "staff":
			return len(first) + 1 + len(e.names)
		}
		return len(first) + 1 + slices.Index(e.names, name)
	}
	heads := slices.Clone(e.heads)
	slices.SortStableFunc(heads, func(a, b string) int { return rank(a) - rank(b) })
	if len(e.choice.Columns) == 0 {
		return heads, nil
	}
	met := map[string]bool{}
	heads = slices.DeleteFunc(heads, func(head string) bool {
		wanted := head == "code" || head == "name"
		for _, pattern := range e.choice.Columns {
			if ok, err := path.Match(pattern, head); err == nil && ok {
				met[pattern], wanted = true, true
			}
		}
		return !wanted
	})
	for _, pattern := range e.choice.Columns {
		if _, err := path.Match(pattern, ""); err != nil || !met[pattern] {
			return nil, fmt.Errorf("no fact of this fleet is called %q: the heads of the whole table are the names", pattern)
		}
	}
	return heads, nil
}

// unit is the unit of a column of numbers, the zero Unit where its cells name their
// own.
func (e *exporting) unit(head string) quantity.Unit {
	var unit quantity.Unit
	if !e.choice.Numbers {
		return unit
	}
	for _, v := range e.values[head] {
		if v.Kind != fact.Quantity || v.Quantity.Unit().Composite() || !unit.IsZero() && v.Quantity.Unit() != unit {
			return quantity.Unit{}
		}
		unit = v.Quantity.Unit()
	}
	return unit
}

// listMark stands between options and between names in one cell.
const listMark = "; "

func cellOf(v fact.Value, number bool) Cell {
	switch v.Kind {
	case fact.Quantity:
		if number {
			return Cell{Text: quantity.Plain(v.Quantity, quantity.Style{}), Kind: Number}
		}
		return Cell{Text: v.Quantity.String()}
	case fact.Choice, fact.Choices:
		if len(v.Options) == 0 {
			return Cell{Text: nothing}
		}
		return Cell{Text: strings.Join(v.Options, listMark)}
	case fact.Count:
		return Cell{Text: strconv.Itoa(v.Count), Kind: Number}
	case fact.YesNo:
		if v.Yes {
			return Cell{Text: "yes"}
		}
		return Cell{Text: "no"}
	case fact.Date:
		return Cell{Text: v.Date.String(), Kind: Day}
	}
	return Cell{Text: v.Text}
}

// nothing stands for a list without options, which an empty cell would not state.
const nothing = "none"

// NotInTable counts what a table cannot hold, by what it is called in a spec.
func NotInTable(fleet *spec.Fleet) map[string]int {
	lost := map[string]int{}
	for _, r := range fleet.Reads() {
		for _, f := range r.Van.Fitted {
			for _, p := range f.Pictures {
				if !p.ByName { // else its file goes where the folder goes
					lost["pictures"]++
				}
			}
		}
		lost["step"] += len(r.Van.Added.Steps)
		lost["changed"] += len(r.Van.Changed)
		if r.Staff != nil {
			lost["step"] += len(r.Staff.Added.Steps)
		}
	}
	for key, n := range lost {
		if n == 0 {
			delete(lost, key)
		}
	}
	return lost
}
