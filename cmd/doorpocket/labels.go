package main

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"strings"

	"doorpocket/build/label"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// labels brings the register of labels up to date.
type labels struct {
	Folder  string   `arg:"" optional:"" offers:"@folders"`
	Look    bool     `name:"look"`
	Sold    []string `name:"sold" offers:"@vans"`
	Retired []string `name:"retired" offers:"@vans"`
	On      string   `name:"on"`
}

// Run is called by the command line.
func (c *labels) Run(out *speaker) error {
	s, err := findSource(c.Folder, false)
	if err != nil {
		return err
	}
	leaving, on, err := c.leaving()
	if err != nil {
		return err
	}
	fleet, found := s.loadForLabels()
	if found.HasErrors() {
		out.problems(found)
		return errProblems
	}
	plan := fleet.PlanLabels(leaving, on)
	s.quote(plan.Problems, fleet)
	plan.Problems.Sort()
	out.problems(plan.Problems)
	if plan.Problems.HasErrors() {
		out.warn("The register is as it was.")
		return errProblems
	}
	if err := c.write(out, fleet, plan); err != nil {
		return err
	}
	c.report(out, fleet, plan)
	return nil
}

// loadForLabels reads a fleet whose register may be behind. No van of it is kept.
func (s source) loadForLabels() (*spec.Fleet, problem.List) {
	lib, found := components.Load(components.Embedded())
	reading := spec.OpenForLabels(s.files, s.prefix, lib)
	found.Add(reading.Skim()...)
	return reading.Fleet(), found
}

// quote puts the lines beside problems, also of specs that were not kept.
func (s source) quote(found problem.List, fleet *spec.Fleet) {
	texts := maps.Clone(fleet.Sources)
	for _, p := range found {
		name := strings.TrimPrefix(p.File, s.prefix)
		if _, there := texts[p.File]; there || !fs.ValidPath(name) {
			continue
		}
		if data, err := fs.ReadFile(s.files, name); err == nil { // else the line is left out
			texts[p.File] = data
		}
	}
	found.Quote(texts)
}

// leaving reads which vans leave the fleet, and when: today unless it is said.
func (c *labels) leaving() (map[string]label.Fate, manifest.Date, error) {
	fates := map[string]label.Fate{}
	for _, code := range c.Sold {
		fates[code] = label.Sold
	}
	for _, code := range c.Retired {
		if fates[code] != label.Stands {
			return nil, manifest.Date{}, errUsage{fmt.Errorf("%s is either sold or retired, not both", code)}
		}
		fates[code] = label.Retired
	}
	day, err := dayOf(c.On)
	return fates, day, err
}

// write puts the plan into the register.
func (c *labels) write(out *speaker, fleet *spec.Fleet, plan *label.Plan) error {
	if len(plan.Changes) == 0 || c.Look {
		return nil
	}
	text, err := label.Revise(fleet.Register, plan.Register())
	if err != nil {
		return err
	}
	path := filepath.Join(c.Folder, label.RegisterFile)
	before, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		return err
	}
	if fleet.Register != nil && string(before) != string(fleet.Sources[fleet.Register.File]) {
		return fmt.Errorf("%s has changed while this was at work: nothing was written. Run the command again", path)
	}
	return label.WriteRegister(path, before, text)
}

// report says what changed, and what is still to do.
func (c *labels) report(out *speaker, fleet *spec.Fleet, plan *label.Plan) {
	for _, change := range plan.Changes {
		out.say("%s", changeLine(change, plan.Register()))
	}
	register := plan.Register()
	out.say("%s", kept(plan))
	stale(out, register)
	if n := len(register.Unprinted()); n > 0 {
		out.say("Not printed yet: %s", count(n, "label"))
	}
	if hint := symbolHint(fleet); hint != "" {
		out.say("%s", hint)
	}
	switch path := filepath.Join(c.Folder, label.RegisterFile); {
	case len(plan.Changes) == 0:
		out.say("%s needs no change.", path)
	case c.Look:
		out.say("Nothing was written: this was only a look.")
	default:
		out.say("Written: %s", path)
	}
}

// changeLine says one change of the register.
func changeLine(c label.Change, r *label.Register) string {
	system := ""
	if e := r.Find(c.Ref); e != nil {
		system = e.System
	}
	line := func(word, text string, args ...any) string {
		return fmt.Sprintf("%-9s %-8s %s", word, strings.TrimSpace(c.Van+" "+c.Code), fmt.Sprintf(text, args...))
	}
	switch c.Verb {
	case label.AddVan:
		return line("van", "%s", c.Fitted)
	case label.RenameVan:
		return line("renamed", "van %s, was %s", c.Fitted, c.Was)
	case label.LeaveVan:
		return line(string(c.Fate), "van %s: %s lead to pages that say so", c.Fitted, count(len(r.Of(c.Van)), "label"))
	case label.Enter:
		return line("entered", "%s (%s), as its spec says", c.Fitted, system)
	case label.Give:
		return line("added", "%s (%s)", c.Fitted, system)
	case label.Rename:
		return line("kept", "%s (%s), was %s", c.Fitted, system, c.Was)
	case label.Refit:
		return line("kept", "%s, now %s, was %s", c.Fitted, system, c.Was)
	case label.Bring:
		return line("back", "%s (%s)", c.Fitted, system)
	case label.Remove:
		return line("removed", "%s (%s): its page says so", c.Fitted, system)
	case label.Replace:
		return line("replaced", "%s (%s): its page leads to %s", c.Fitted, system, c.Now)
	case label.Move:
		return line("moved", "%s (%s): its page leads to %s", c.Fitted, system, c.Now)
	case label.MoveAddress:
		return fmt.Sprintf("address   %s, was %s", c.Fitted, c.Was)
	}
	return fmt.Sprintf("address   %s", c.Fitted)
}

// kept counts the labels that stay as they were.
func kept(plan *label.Plan) string {
	touched := map[label.Ref]bool{}
	for _, c := range plan.Changes {
		touched[c.Ref] = true
	}
	n := 0
	for _, e := range plan.Register().All() {
		if !touched[e.Ref] {
			n++
		}
	}
	return "Kept as they were: " + count(n, "label")
}

// stale lists the labels that lead to the former address, a line a van.
func stale(out *speaker, register *label.Register) {
	list := register.Stale()
	if len(list) == 0 {
		return
	}
	out.say("Printed with the former address, and stale unless that leads on: %s", count(len(list), "label"))
	codes := map[string][]string{}
	var vans []string
	for _, e := range list {
		if codes[e.Van] == nil {
			vans = append(vans, e.Van)
		}
		codes[e.Van] = append(codes[e.Van], e.Code)
	}
	for _, van := range vans {
		out.say("  %-4s %s", van, strings.Join(codes[van], " "))
	}
}

// symbolHint says where the address makes QR symbols larger than need be.
func symbolHint(fleet *spec.Fleet) string {
	address := fleet.Address.To("XX/X99/")
	if label.Small(address) || !label.Small(strings.ToUpper(address)) {
		return ""
	}
	now, err := label.NewSymbol(address, fleet.Level)
	better, err2 := label.NewSymbol(strings.ToUpper(address), fleet.Level)
	if err != nil || err2 != nil || now.Size == better.Size {
		return ""
	}
	return fmt.Sprintf("The address has small letters in its path, so QR symbols have %d modules a side. Served under a path in capitals they would have %d.", now.Size, better.Size)
}
