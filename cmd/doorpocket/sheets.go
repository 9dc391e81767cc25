package main

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"doorpocket/build/clipboard"
	"doorpocket/build/guide"
	"doorpocket/build/paper"
	"doorpocket/build/spec"
)

// sheetsCmd prints the sheets that staff carry round a van.
type sheetsCmd struct {
	Vans  []string `arg:"" optional:"" offers:"@vans"`
	Fleet string   `name:"fleet" offers:"@folders"`
	Out   string   `name:"out" offers:"@files"`
	Sheet []string `name:"sheet" offers:"handover|check-in|prepare|monthly"`
	Page  string   `name:"page" offers:"A4|Letter"`
	Lang  string   `name:"lang"`
}

// Run is called by the command line.
func (c *sheetsCmd) Run(out *speaker) error {
	if c.Out != "" {
		if err := pdfName(c.Out); err != nil {
			return err
		}
	}
	page, err := pageSize(c.Page)
	if err != nil {
		return err
	}
	p, vans, err := startPrinting(out, c.Fleet, c.Lang, c.Vans)
	if err != nil {
		return err
	}
	if err := p.knownSheets(c.Sheet); err != nil {
		return err
	}
	press := clipboard.Press{Stock: p.stock, Render: p.render, Page: page}
	kit := guide.NewKit(&p.fleet.Operator, p.lang)
	for _, r := range p.fleet.Reads() {
		if !slices.Contains(vans, r.Van) {
			continue
		}
		if err := c.van(out, press, p.sheets(kit, r, c.Sheet), c.name(r.Van, len(vans))); err != nil {
			return err
		}
	}
	return nil
}

// van prints the sheets of one van.
func (c *sheetsCmd) van(out *speaker, press clipboard.Press, w work, name string) error {
	if len(w.sheets) == 0 {
		out.warn("%s has nothing on these sheets", w.guide.Van.Name)
		return nil
	}
	var made []clipboard.Made
	err := writeFile(name, func(to io.Writer) (err error) {
		made, err = press.Print(w.guide, w.sheets, to)
		return err
	})
	if err != nil {
		return err
	}
	out.say("%s", name)
	for _, m := range made {
		out.say("  %-10s %s, revision %s", m.Sheet, count(m.Pages, "page"), m.Revision)
	}
	return nil
}

// name is the file for the sheets of a van: the one that was asked for, or one
// with its code where there are several or none was asked for.
func (c *sheetsCmd) name(v *spec.Van, vans int) string {
	if vans == 1 && c.Out != "" {
		return c.Out
	}
	return suffixed(cmp.Or(c.Out, "sheets.pdf"), v.Code)
}

// work is a van with its sheets.
type work struct {
	guide  *guide.Guide
	sheets []*guide.Sheet
}

// sheets composes the sheets of a van; without wanted, all of them.
func (p printing) sheets(kit *guide.Kit, r spec.Read, wanted []string) work {
	g, _ := kit.Build(r.Van) // its problems were told when the fleet was loaded
	var added spec.Added
	if r.Staff != nil {
		added = r.Staff.Added
	}
	routines, _ := kit.StaffRoutines(g, p.fleet.StaffRoutines, added)
	all := g.Sheets(routines, r)
	if len(wanted) > 0 {
		all = slices.DeleteFunc(all, func(s *guide.Sheet) bool { return !slices.Contains(wanted, s.ID) })
	}
	return work{g, all}
}

// knownSheets refuses sheets that the fleet has not.
func (p printing) knownSheets(wanted []string) error {
	var known []string
	for _, r := range slices.Concat(p.fleet.Library.Routines, p.fleet.StaffRoutines) {
		if r.Staff {
			known = append(known, r.ID)
		}
	}
	for _, name := range wanted {
		if !slices.Contains(known, name) {
			return errUsage{fmt.Errorf("there is no sheet %q: %s", name, hint(name, known))}
		}
	}
	return nil
}

// pageSize reads the name of a size of paper, A4 without one.
func pageSize(name string) (paper.Size, error) {
	switch strings.ToLower(name) {
	case "", "a4":
		return paper.A4, nil
	case "letter":
		return paper.Letter, nil
	}
	return paper.Size{}, errUsage{fmt.Errorf("--page is A4 or Letter, not %q", name)}
}
