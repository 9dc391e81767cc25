package roster

import (
	"maps"
	"slices"
)

// Batch is the vans of one build sheet, and in what they differ.
type Batch struct {
	Build       string
	Vans        []string // codes
	Differences []Difference
}

// Difference is a thing that only some vans of a batch have, or a fact that is
// not the same on all.
type Difference struct {
	Thing Thing
	Fact  string // "" where the thing itself is the difference
	Ways  []Way
}

// Way is how it is on some vans.
type Way struct {
	Text   string // of a fact; "" is as the build sheet has it
	Absent bool   // they do not have the thing
	Vans   []string
}

// Batches groups the vans by their build sheet, in the order of its name. Vans
// without one are in none.
func Batches(rows []Row) []Batch {
	of := map[string][]Row{}
	for _, row := range rows {
		if row.Build != "" {
			of[row.Build] = append(of[row.Build], row)
		}
	}
	var all []Batch
	for _, build := range slices.Sorted(maps.Keys(of)) {
		batch := Batch{Build: build}
		for _, row := range of[build] {
			batch.Vans = append(batch.Vans, row.Code)
		}
		batch.Differences = differences(of[build])
		all = append(all, batch)
	}
	return all
}

// differences looks at every thing of a batch, in the order of pages as far as
// the vans agree on it.
func differences(rows []Row) []Difference {
	var all []Difference
	for _, t := range things(rows) {
		having := slices.DeleteFunc(slices.Clone(rows), func(row Row) bool { return !row.has(t) })
		if len(having) < len(rows) {
			d := Difference{Thing: t, Ways: []Way{{Vans: codes(having)}, {Absent: true}}}
			for _, row := range rows {
				if !row.has(t) {
					d.Ways[1].Vans = append(d.Ways[1].Vans, row.Code)
				}
			}
			all = append(all, d)
		}
		all = append(all, facts(t, having)...)
	}
	return all
}

// things lists what any van of a batch has.
func things(rows []Row) []Thing {
	var all []Thing
	known := map[[2]string]bool{}
	add := func(t Thing) {
		if key := [2]string{t.Name, t.System}; !known[key] {
			known[key] = true
			all = append(all, t)
		}
	}
	for _, row := range rows {
		for _, t := range row.Things {
			add(t)
		}
		for _, own := range row.Own { // such as the body, which is no thing
			if !slices.ContainsFunc(row.Things, func(t Thing) bool { return t.Name == own.Thing }) {
				add(Thing{Name: own.Thing})
			}
		}
	}
	return all
}

// has reports whether a van has a thing: under its name, of the same system.
// What is no thing every van has.
func (row *Row) has(t Thing) bool {
	return t.System == "" || slices.ContainsFunc(row.Things, func(o Thing) bool { return o.Name == t.Name && o.System == t.System })
}

// facts lists the facts of a thing that are not the same on all vans that have
// it.
func facts(t Thing, rows []Row) []Difference {
	var names []string
	stated := map[string]map[string]string{} // by fact and van
	for _, row := range rows {
		for _, own := range row.Own {
			if own.Thing != t.Name {
				continue
			}
			if stated[own.Fact] == nil {
				stated[own.Fact] = map[string]string{}
				names = append(names, own.Fact)
			}
			stated[own.Fact][row.Code] = own.Text
		}
	}
	var all []Difference
	for _, fact := range names {
		if ways := ways(stated[fact], rows); len(ways) > 1 {
			all = append(all, Difference{Thing: t, Fact: fact, Ways: ways})
		}
	}
	return all
}

// ways groups vans by what they say of a fact: as the build sheet has it first,
// then as most have it.
func ways(said map[string]string, rows []Row) []Way {
	of := map[string][]string{}
	for _, row := range rows {
		of[said[row.Code]] = append(of[said[row.Code]], row.Code)
	}
	var all []Way
	for _, text := range slices.Sorted(maps.Keys(of)) {
		all = append(all, Way{Text: text, Vans: of[text]})
	}
	slices.SortStableFunc(all, func(a, b Way) int {
		switch {
		case a.Text == "" || b.Text == "":
			return len(a.Text) - len(b.Text)
		}
		return len(b.Vans) - len(a.Vans)
	})
	return all
}

func codes(rows []Row) []string {
	var all []string
	for _, row := range rows {
		all = append(all, row.Code)
	}
	return all
}
