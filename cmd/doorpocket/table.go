package main

import (
	"fmt"
	"slices"
	"strings"

	"doorpocket/build/desk"
	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components/problem"
)

// table prints a computed table of a van.
type table struct {
	Van   string `arg:"" optional:""`
	Table string `arg:"" optional:""`
	Fleet string `name:"fleet"`
	As    string `name:"as" default:"text"`
}

// Run is called by the command line.
func (c *table) Run(out *speaker) error {
	if !slices.Contains(desk.Forms, c.As) {
		return errUsage{fmt.Errorf("--as is %s, not %q", strings.Join(desk.Forms, ", "), c.As)}
	}
	s, err := findSource(c.Fleet, true)
	if err != nil {
		return err
	}
	fleet, found := s.load()
	if found.HasErrors() {
		out.problems(found)
		return errProblems
	}
	vans, err := c.vans(fleet)
	if err != nil {
		return err
	}
	kit := guide.NewKit(&fleet.Operator, fleet.Languages[0])
	for _, v := range vans {
		g, _ := kit.Build(v)
		if err := c.print(out, g); err != nil {
			return err
		}
	}
	return nil
}

// vans gives the van that is asked for, or all.
func (c *table) vans(fleet *spec.Fleet) ([]*spec.Van, error) {
	if c.Van == "" {
		return fleet.Vans, nil
	}
	var codes []string
	for _, v := range fleet.Vans {
		if strings.EqualFold(v.Code, c.Van) {
			return []*spec.Van{v}, nil
		}
		codes = append(codes, v.Code)
	}
	return nil, errUsage{fmt.Errorf("there is no van %q: %s", c.Van, hint(c.Van, codes))}
}

func (c *table) print(out *speaker, g *guide.Guide) error {
	shown := desk.Tables(g)
	if c.Table == "" {
		for _, t := range shown {
			out.say("%s  %-28s %s (%s)", g.Van.Code, t.ID, t.Caption, t.Page.Title)
		}
		return nil
	}
	var ids []string
	var chosen []desk.Table
	for _, t := range shown {
		ids = append(ids, t.ID)
		if t.ID == c.Table {
			chosen = append(chosen, t)
		}
	}
	if len(chosen) == 0 {
		return errUsage{fmt.Errorf("%s has no table %q: %s", g.Van.Name, c.Table, hint(c.Table, ids))}
	}
	text, err := desk.Write(g, chosen, c.As)
	if err != nil {
		return err
	}
	out.say("%s", strings.TrimRight(text, "\n"))
	return nil
}

// hint offers the nearest valid name, or all of them.
func hint(word string, valid []string) string {
	if near := problem.Nearest(word, valid); near != "" {
		return fmt.Sprintf("did you mean %q?", near)
	}
	return "there is " + strings.Join(slices.Compact(valid), ", ")
}
