package main

// inspect reads a fleet and prints every problem.
type inspect struct {
	Folder string `arg:"" optional:""`
}

// Run is called by the command line.
func (c *inspect) Run(out *speaker) error {
	s, err := findSource(c.Folder, false)
	if err != nil {
		return err
	}
	fleet, found := s.load()
	out.problems(found)
	if found.HasErrors() {
		return errProblems
	}
	out.say("%s: %s, no errors", fleet.Name, count(len(fleet.Vans), "van"))
	return nil
}
