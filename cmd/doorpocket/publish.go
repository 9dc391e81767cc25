package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"

	comparing "doorpocket/build/compare"
	"doorpocket/build/publication"
	"doorpocket/build/spec"
)

// publish writes the guides of a fleet.
type publish struct {
	Folder  string `arg:"" optional:"" offers:"@folders"`
	Out     string `name:"out" offers:"@folders"`
	Vans    string `name:"vans"`
	Explain bool   `name:"explain"`
	All     bool   `name:"all"`
	Since   string `name:"since" offers:"@folders"`
}

// Run is called by the command line.
func (c *publish) Run(out *speaker) error {
	s, err := findSource(c.Folder, true)
	if err != nil {
		return err
	}
	part, err := c.part(s)
	if err != nil {
		return err
	}
	target := c.Out
	if target == "" {
		target = filepath.Join(c.Folder, "site")
	}
	if err := s.apart(c.Folder, target); err != nil {
		return err
	}
	if s.demo {
		out.say("No fleet.toml here: this is the demonstration fleet that comes with the program.")
	}
	changes, err := c.changes(out, s)
	if err != nil {
		return err
	}
	progress, memory := newProgress(out), &clearing{}
	step := func(done, total int) {
		memory.adjust()
		progress.step(done, total)
	}
	ended, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ended, stop) // a second Ctrl+C ends the program at once, which does no harm either
	made, found, err := publication.Run(publication.Job{
		Files: s.files, Prefix: s.prefix, Target: target, Version: programIdentity(), Part: part, All: c.All, Changes: changes, Progress: step, Durable: true,
		Abandoned: ended.Done(),
	})
	progress.end()
	if errors.Is(err, publication.ErrAbandoned) {
		return errors.Join(errProblems, untouched(out, target))
	}
	out.outcome(found)
	if err != nil {
		return err
	}
	if found.HasErrors() {
		return errors.Join(errProblems, untouched(out, target))
	}
	if c.Explain {
		explain(out, made.Reasons)
	}
	out.say("%s: %s, %s, %s", made.Name, count(made.Vans, "van"), count(made.Pages, "page"), count(made.Labels, "label"))
	out.say("%s", news(made))
	out.say("Hirers: %s", filepath.Join(target, "hirers", "index.html"))
	out.say("Staff:  %s", filepath.Join(target, "staff", "index.html"))
	return nil
}

// part reads which vans are to be published.
func (c *publish) part(s source) (publication.Part, error) {
	if c.Vans == "" {
		return publication.Part{}, nil
	}
	part, err := publication.ParsePart(c.Vans)
	if err == nil {
		err = part.Check(spec.Specs(s.files))
	}
	if err != nil {
		return part, errUsage{err}
	}
	return part, nil
}

// changes compares the fleet with the earlier state that was asked for.
func (c *publish) changes(out *speaker, s source) (*comparing.Report, error) {
	if c.Since == "" {
		return nil, nil
	}
	if s.demo {
		return nil, errUsage{errors.New("--since needs a fleet folder: name it")}
	}
	work := compare{Old: c.Since, In: c.Folder}
	if work.In == "" {
		work.In = "."
	}
	report, _, err := work.compare(out)
	return report, err
}

// explain tells why each van was made anew.
func explain(out *speaker, reasons []publication.Reason) {
	for _, r := range reasons {
		out.say("%-4s %s", r.Van, r.Why)
	}
}

// news says in a line what of a site is new.
func news(made publication.Made) string {
	switch {
	case made.Files == 0 && made.Written == 0:
		return "Nothing had changed, nothing was written."
	case made.Written == made.Vans:
		return "All of it was made anew."
	}
	return fmt.Sprintf("Made anew: %d of %s.", made.Written, count(made.Vans, "van"))
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
