package main

import (
	"fmt"
	"strings"

	"doorpocket/build/desk"
	"doorpocket/build/spec"
	"doorpocket/components"
)

// systems lists the library, or tells what a spec can state about one system.
type systems struct {
	Name  string `arg:"" optional:"" offers:"@systems"`
	Fleet string `name:"fleet" offers:"@folders"`
}

// language is the one in which people write specs: that of the facts' names.
const language = "en"

// Run is called by the command line.
func (c *systems) Run(out *speaker) error {
	s, err := findSource(c.Fleet, true)
	if err != nil {
		return err
	}
	lib, found := components.Load(components.Embedded())
	lib, own := spec.Library(s.files, s.prefix, lib)
	found.Add(own...)
	if found.HasErrors() {
		found.Quote(lib.Sources)
		found.Sort()
		out.problems(found)
		return errProblems
	}
	text, err := describe(lib, strings.Trim(c.Name, "/"))
	if err != nil {
		return err
	}
	out.say("%s", strings.TrimRight(text, "\n"))
	return nil
}

func describe(lib *components.Library, name string) (string, error) {
	if name == "" || lib.Family(name) != nil {
		return desk.Systems(lib, name, language), nil
	}
	if s := lib.System(name); s != nil {
		return desk.System(lib, s, language), nil
	}
	if strings.Contains(name, "/") {
		return "", errUsage{fmt.Errorf("there is no system %q. %s", name, lib.SystemHint(name))}
	}
	var families []string
	for _, f := range lib.Families {
		families = append(families, f.ID)
	}
	return "", errUsage{fmt.Errorf("there is no family %q: %s", name, hint(name, families))}
}
