package main

import (
	listing "doorpocket/build/due"
	"doorpocket/build/publication"
	"doorpocket/build/report"
)

// inspect reads a fleet and prints every problem.
type inspect struct {
	Folder string `arg:"" optional:"" offers:"@folders"`
	As     string `name:"as" default:"text" offers:"text|json|sarif"`
	On     string `name:"on"`
}

// Run is called by the command line.
func (c *inspect) Run(out *speaker) error {
	if err := oneForm(c.As, append([]string{"text"}, report.Forms...)); err != nil {
		return err
	}
	day, err := dayOf(c.On)
	if err != nil {
		return err
	}
	s, err := findSource(c.Folder, false)
	if err != nil {
		return err
	}
	fleet, found := s.load()
	if !found.HasErrors() {
		heavy, err := publication.Weigh(fleet)
		if err != nil {
			return err
		}
		found.Add(heavy...)
		found.Add(listing.Warnings(fleet, day)...)
		found.Quote(fleet.Sources)
		found.Sort()
	}
	if c.As != "text" {
		err = report.Write(out.out, c.As, programVersion(), found)
	} else {
		out.problems(found)
	}
	switch {
	case err != nil:
		return err
	case found.HasErrors():
		return errProblems
	case c.As == "text":
		out.say("%s: %s, no errors", fleet.Name, count(len(fleet.Vans), "van"))
	}
	return nil
}
