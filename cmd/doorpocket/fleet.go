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
	files := os.DirFS(folder)
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

// examine puts every guide together, for the problems that show only then.
func examine(fleet *spec.Fleet) problem.List {
	var found problem.List
	for _, lang := range fleet.Languages {
		kit := guide.NewKit(&fleet.Operator, lang)
		for _, v := range fleet.Vans {
			g, problems := kit.Build(v)
			found.Add(problems...)
			if staff := fleet.Staff[v.Code]; staff != nil && g.Main {
				_, problems = kit.StaffRoutines(g, fleet.StaffRoutines, staff.Added)
				found.Add(problems...)
			}
		}
	}
	return found
}
