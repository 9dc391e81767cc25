package main

import (
	"errors"
	"os"
	"path/filepath"

	"doorpocket/build/publication"
)

// publish writes the guides of a fleet.
type publish struct {
	Folder string `arg:"" optional:""`
	Out    string `name:"out"`
}

// Run is called by the command line.
func (c *publish) Run(out *speaker) error {
	s, err := findSource(c.Folder, true)
	if err != nil {
		return err
	}
	target := c.Out
	if target == "" {
		target = filepath.Join(c.Folder, "site")
	}
	if s.demo {
		out.say("No fleet.toml here: this is the demonstration fleet that comes with the program.")
	}
	fleet, found := s.load()
	out.problems(found)
	if found.HasErrors() {
		return errors.Join(errProblems, untouched(out, target))
	}
	made, err := publication.Publish(fleet, target, programVersion())
	if err != nil {
		return err
	}
	out.say("%s: %s, %s, %s", fleet.Name, count(made.Vans, "van"), count(made.Pages, "page"), count(made.Labels, "label"))
	out.say("Hirers: %s", filepath.Join(target, "hirers", "index.html"))
	out.say("Staff:  %s", filepath.Join(target, "staff", "index.html"))
	return nil
}

// untouched tells that errors left the last site as it was.
func untouched(out *speaker, target string) error {
	if _, err := os.Stat(target); err == nil {
		out.warn("Nothing was published. %s is as it was.", target)
	} else {
		out.warn("Nothing was published.")
	}
	return nil
}
