// Package compare tells what changed between two states of a fleet: for hirers,
// made from guides alone, and apart from that for staff.
package compare

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io/fs"
	"maps"
	"runtime"
	"slices"
	"strings"
	"sync"

	"doorpocket/build/guide"
	"doorpocket/build/label"
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
	vans    map[string]known // by code
	// pictures are the sums of the pictures by their files.
	pictures map[string]string
}

// known is what is kept of a van once it was read.
type known struct {
	file, name, build string
	sum               [sha256.Size]byte // of all that it alone is made from
}

// Open reads one side. prefix is put before the names of its files in problems.
// pictures are sums of the pictures by their files, nil where there are none. A
// side with errors cannot be compared.
func Open(files fs.FS, name, prefix string, pictures map[string]string, lib *components.Library) (*Side, problem.List) {
	s := &Side{Name: name, files: files, prefix: prefix, texts: sync.OnceValue(func() []string { return texts(files) }), library: lib,
		reading: spec.OpenForLabels(files, prefix, lib), vans: map[string]known{}, pictures: pictures}
	specs := s.reading.Specs()
	all, problems, vans := make([]spec.Summary, len(specs)), make([]problem.List, len(specs)), make([]known, len(specs))
	each(len(specs), func(i int) {
		r := s.reading.Van(specs[i])
		problems[i], all[i] = r.Problems, r.Summary
		vans[i] = known{file: specs[i], name: r.Summary.Name, build: r.Summary.Build, sum: s.sumOf(r)}
	})
	var found problem.List
	for i := range specs {
		found.Add(problems[i]...)
		s.vans[all[i].Code] = vans[i]
	}
	found.Add(s.reading.Close(all, nil)...)
	found = slices.DeleteFunc(found, func(p problem.Problem) bool { return p.Severity != problem.Error })
	found.Sort()
	found.Dedupe()
	return s, found
}

// each does the work for every number below n, a few at a time.
func each(n int, do func(i int)) {
	work := make(chan int)
	var group sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for i := range work {
				do(i)
			}
		})
	}
	for i := range n {
		work <- i
	}
	close(work)
	group.Wait()
}

// sumOf is another where the spec, a build sheet below it or what the register says
// of its labels is.
func (s *Side) sumOf(r spec.Read) [sha256.Size]byte {
	var b bytes.Buffer
	for i, l := range r.Listings {
		if i > 0 {
			b.WriteString(l.File)
		}
		fmt.Fprintf(&b, "%d %s", len(l.Data), l.Data)
	}
	register := s.operator().Register
	for _, e := range register.Of(r.Summary.Code) {
		last := register.Last(e)
		fmt.Fprintf(&b, "%s %s %s %s %s %s %s\n", e.Ref, e.Fitted, e.System, e.Became, e.Now, last.Ref, last.System)
	}
	return sha256.Sum256(b.Bytes())
}

// alike reports whether all that every van is made from is the same on both sides;
// then a van is the same where its own files are.
func alike(a, b *Side) bool {
	own := func(name string) bool {
		return !strings.HasPrefix(name, "vans/") && name != label.RegisterFile
	}
	for _, name := range slices.Concat(a.texts(), b.texts()) {
		if !own(name) {
			continue
		}
		was, now := contents(a.files, name), contents(b.files, name)
		// A build sheet counts for its vans, unless it has lists for all.
		lists := strings.HasPrefix(name, "builds/") && !bytes.Contains(was, []byte("routine")) && !bytes.Contains(now, []byte("routine"))
		if !lists && !bytes.Equal(was, now) {
			return false
		}
	}
	return maps.Equal(a.pictures, b.pictures)
}

// Language is the fleet's main language.
func (s *Side) Language() string { return s.operator().Languages[0] }

func (s *Side) operator() *spec.Operator { return &s.reading.Fleet().Operator }

// codes lists the codes of the vans in order.
func (s *Side) codes() []string { return slices.Sorted(maps.Keys(s.vans)) }

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
	v := van{read: b.side.reading.Van(b.side.vans[code].file)}
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
