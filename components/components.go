// Package components is the library: every system a van may have, with its
// words, facts, steps, checks and calculations.
//
// Load reads a tree of library files and checks it; Embedded is the library
// that comes with the program. A fleet may add or replace systems in the same
// form (With). A loaded Library is never changed and may be shared.
package components

import (
	"embed"
	"io/fs"
	"maps"
	"slices"

	"doorpocket/components/problem"
	"doorpocket/components/prose"
	"doorpocket/components/table"
)

//go:embed *.toml */tables*.toml */*/*.toml */*/*.md
var embedded embed.FS

// Embedded is the tree of the library that comes with the program.
func Embedded() fs.FS { return embedded }

// Library is what is known about the systems of vans.
type Library struct {
	Families []*Family // in the order in which pages list them
	Routines []*Routine
	Symptoms []*Symptom // most dangerous first
	Hazards  []Hazard
	Roles    map[string]Role
	Values   map[string]ValueWords // by language
	Tables   map[string]*Table
	Rules    []*Rule           // of completeness
	Duties   []*Duty           // what falls due on a van
	Readings []*Reading        // what staff write down when a van changes hands
	Sources  map[string][]byte // every file read, by the name shown in problems
	systems  map[string]*System
}

// Hazard is a way in which people are hurt, and what brings it.
type Hazard struct {
	ID       string
	Families []string // every system of these
	Roles    []string // every system with a fact of these roles
	Systems  []string
}

// Role is what a fact may mean to a computation, and the types that can.
type Role struct {
	Types  []string
	Things bool // each such fact is a thing by itself, not a setting of its system
	Takes  bool // what an appliance takes: where a van does not state it, a sum is too small
}

// Table is a computed table with its words by language.
type Table struct {
	table.Decl
	Words map[string]TableWords
	At    problem.Span
}

// libraryPrefix is before the names of the library's files in problems: where
// they stand in the source of the program.
const libraryPrefix = "components/"

// Load reads a whole library. The library is complete as far as it could be
// read; whether it may be used depends on the problems.
func Load(files fs.FS) (*Library, problem.List) {
	l := loader{files: files, prefix: libraryPrefix, prose: prose.New(), lib: &Library{
		Tables: map[string]*Table{}, Sources: map[string][]byte{}, systems: map[string]*System{},
	}}
	l.families()
	l.routines()
	l.symptoms()
	l.hazards()
	l.roles()
	l.values()
	l.tables()
	l.completeness()
	l.due()
	l.readings()
	l.systems()
	l.problems.Add(l.lib.check(l.lib.Systems())...)
	l.problems.Add(l.lib.checkRules(l.prefix)...)
	l.problems.Add(l.lib.checkDue(l.prefix)...)
	l.problems.Add(l.lib.checkReadings(l.prefix)...)
	return l.lib, l.problems
}

// With gives the library with the systems of a fleet's own folder added, or
// put in place of those with the same name. Their shared lists stay ours.
func (lib *Library) With(files fs.FS, prefix string) (*Library, problem.List) {
	joined := *lib
	joined.Sources = maps.Clone(lib.Sources)
	joined.systems = maps.Clone(lib.systems)
	own := loader{files: files, prefix: prefix, prose: prose.New(), lib: &Library{
		Sources: joined.Sources, systems: map[string]*System{},
	}}
	own.systems()
	maps.Copy(joined.systems, own.lib.systems)
	own.problems.Add(joined.check(own.lib.Systems())...)
	return &joined, own.problems
}

// Systems lists all systems by name.
func (lib *Library) Systems() []*System {
	var all []*System
	for _, id := range lib.SystemIDs() {
		all = append(all, lib.systems[id])
	}
	return all
}

// SystemIDs lists the names of all systems in order.
func (lib *Library) SystemIDs() []string { return slices.Sorted(maps.Keys(lib.systems)) }

// System finds a system by name, nil where there is none.
func (lib *Library) System(id string) *System { return lib.systems[id] }

// Family finds a family by name, nil where there is none.
func (lib *Library) Family(id string) *Family {
	return find(lib.Families, func(f *Family) bool { return f.ID == id })
}

// Routine finds a routine by name, nil where there is none.
func (lib *Library) Routine(id string) *Routine {
	return find(lib.Routines, func(r *Routine) bool { return r.ID == id })
}

// Symptom finds a symptom by name, nil where there is none.
func (lib *Library) Symptom(id string) *Symptom {
	return find(lib.Symptoms, func(s *Symptom) bool { return s.ID == id })
}

func find[T any](list []*T, is func(*T) bool) *T {
	if i := slices.IndexFunc(list, is); i >= 0 {
		return list[i]
	}
	return nil
}
