// Package compare tells what changed between two states of a fleet: for hirers,
// made from guides alone, and apart from that for staff.
package compare

import (
	"io/fs"
	"maps"
	"slices"
	"sync"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
)

// Side is one of the two states.
type Side struct {
	Name    string // as a reader knows it: a folder, a revision
	files   fs.FS
	prefix  string
	texts   func() []string     // the files that an operator writes
	library *components.Library // without the fleet's own systems
	reading *spec.Reading
	specs   map[string]string // the file of a spec by the van's code
	// pictures are the sums of the pictures by their files.
	pictures map[string]string
}

// Open reads one side. prefix is put before the names of its files in problems.
// pictures are sums of the pictures by their files, nil where there are none. A
// side with errors cannot be compared.
func Open(files fs.FS, name, prefix string, pictures map[string]string, lib *components.Library) (*Side, problem.List) {
	s := &Side{Name: name, files: files, prefix: prefix, texts: sync.OnceValue(func() []string { return texts(files) }), library: lib, reading: spec.OpenForLabels(files, prefix, lib), specs: map[string]string{}, pictures: pictures}
	var found problem.List
	var all []spec.Summary
	for _, file := range s.reading.Specs() {
		r := s.reading.Van(file)
		found.Add(r.Problems...)
		all = append(all, r.Summary)
		s.specs[r.Summary.Code] = file
	}
	found.Add(s.reading.Close(all, nil)...)
	found = slices.DeleteFunc(found, func(p problem.Problem) bool { return p.Severity != problem.Error })
	found.Sort()
	found.Dedupe()
	return s, found
}

// Language is the fleet's main language.
func (s *Side) Language() string { return s.operator().Languages[0] }

func (s *Side) operator() *spec.Operator { return &s.reading.Fleet().Operator }

// codes lists the codes of the vans in order.
func (s *Side) codes() []string { return slices.Sorted(maps.Keys(s.specs)) }

// van is a van of one side, put together.
type van struct {
	read   spec.Read
	guide  *guide.Guide
	duties []*guide.Routine // for staff
}

// bench puts the vans of one side together, in the language of the report.
type bench struct {
	side *Side
	kit  *guide.Kit
}

func newBench(s *Side, lang string) *bench { return &bench{s, guide.NewKit(s.operator(), lang)} }

// van reads a van and puts it together. It is safe for concurrent use.
func (b *bench) van(code string) (van, problem.List) {
	v := van{read: b.side.reading.Van(b.side.specs[code])}
	var found problem.List
	v.guide, found = b.kit.Build(v.read.Van)
	var added spec.Added
	if v.read.Staff != nil {
		added = v.read.Staff.Added
	}
	var more problem.List
	v.duties, more = b.kit.StaffRoutines(v.guide, b.side.reading.Fleet().StaffRoutines, added)
	found.Add(more...)
	found.Quote(v.read.Texts())
	return v, slices.DeleteFunc(found, func(p problem.Problem) bool { return p.Severity != problem.Error })
}
