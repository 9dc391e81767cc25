package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
	"doorpocket/content"
)

// source is a fleet folder: one that a person names or stands in, or the
// demonstration fleet that comes with the program.
type source struct {
	files  fs.FS
	prefix string // before file names in problems
	demo   bool
}

// findSource takes the folder named, the folder one stands in if it is a fleet
// folder, or the demonstration fleet.
func findSource(folder string, demoAllowed bool) (source, error) {
	named := folder != ""
	if !named {
		folder = "."
	}
	info, err := os.Stat(folder)
	switch {
	case err != nil:
		return source{}, errUsage{fmt.Errorf("there is no folder %s", folder)}
	case !info.IsDir():
		return source{}, errUsage{fmt.Errorf("%s is no folder: name the folder that holds fleet.toml", folder)}
	}
	files := spec.Dir(folder)
	if !named && demoAllowed && !spec.Is(files) {
		return source{files: content.Fleet(), prefix: "demonstration/", demo: true}, nil
	}
	prefix := ""
	if named {
		prefix = filepath.ToSlash(filepath.Clean(folder)) + "/"
	}
	return source{files: files, prefix: prefix}, nil
}

// load reads a fleet and looks at everything that is put together from it.
func (s source) load() (*spec.Fleet, problem.List) {
	lib, found := components.Load(components.Embedded())
	fleet, more := spec.Load(s.files, s.prefix, lib)
	found.Add(more...)
	if !found.HasErrors() {
		found.Add(examine(fleet)...)
	}
	found.Quote(fleet.Sources)
	found.Sort()
	found.Dedupe()
	return fleet, found
}

// sound reads the fleet of a folder, or tells what is wrong with it.
func sound(out *speaker, folder string) (*spec.Fleet, error) {
	s, err := findSource(folder, true)
	if err != nil {
		return nil, err
	}
	fleet, found := s.load()
	if found.HasErrors() {
		out.problems(found)
		return nil, errProblems
	}
	return fleet, nil
}

// each reads a fleet van by van and looks at everything that is put together
// from it, but for pictures. No van is kept: do gets each that has no errors, in
// the order of the files. The fleet has no vans.
func (s source) each(do func(*spec.Operator, spec.Read)) (*spec.Fleet, problem.List) {
	lib, found := components.Load(components.Embedded())
	reading := spec.Open(s.files, s.prefix, lib)
	fleet := reading.Fleet()
	x := newExaminer(fleet)
	var vans []spec.Summary
	for r := range reading.Vans() {
		vans = append(vans, r.Summary)
		found.Add(r.Problems...)
		if r.Van == nil || reading.Broken() || r.Problems.HasErrors() {
			continue
		}
		more := x.van(r.Van, r.Staff)
		more.Quote(r.Texts())
		found.Add(more...)
		do(&fleet.Operator, r)
	}
	found.Add(reading.Close(vans, nil)...)
	found.Quote(fleet.Sources)
	found.Sort()
	found.Dedupe()
	return fleet, found
}

// examine puts every guide together, for the problems that show only then.
func examine(fleet *spec.Fleet) problem.List {
	x := newExaminer(fleet)
	var found problem.List
	for _, v := range fleet.Vans {
		found.Add(x.van(v, fleet.Staff[v.Code])...)
	}
	return found
}

// examiner puts guides together in all languages of a fleet.
type examiner struct {
	fleet *spec.Fleet
	kits  []*guide.Kit
}

func newExaminer(fleet *spec.Fleet) examiner {
	x := examiner{fleet: fleet}
	for _, lang := range fleet.Languages {
		x.kits = append(x.kits, guide.NewKit(&fleet.Operator, lang))
	}
	return x
}

func (x examiner) van(v *spec.Van, staff *spec.Staff) problem.List {
	var found problem.List
	for _, kit := range x.kits {
		g, problems := kit.Build(v)
		found.Add(problems...)
		if staff != nil && g.Main {
			_, problems = kit.StaffRoutines(g, x.fleet.StaffRoutines, staff.Added)
			found.Add(problems...)
		}
	}
	return found
}
