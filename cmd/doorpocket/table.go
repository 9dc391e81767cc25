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
	Van   string `arg:"" optional:"" offers:"@vans"`
	Table string `arg:"" optional:"" offers:"@tables"`
	Fleet string `name:"fleet" offers:"@folders"`
	As    string `name:"as" default:"text" offers:"text|csv|json"`
}

// Run is called by the command line.
func (c *table) Run(out *speaker) error {
	if err := oneForm(c.As, desk.Forms); err != nil {
		return err
	}
	fleet, err := sound(out, c.Fleet)
	if err != nil {
		return err
	}
	vans, err := c.vans(fleet)
	if err != nil {
		return err
	}
	kit := guide.NewKit(&fleet.Operator, fleet.Languages[0])
	var guides []*guide.Guide
	for _, v := range vans {
		g, _ := kit.Tables(v)
		guides = append(guides, g)
	}
	text, err := c.write(guides)
	if err != nil {
		return err
	}
	out.say("%s", strings.TrimRight(text, "\n"))
	return nil
}

// write gives the table that is asked for, or the list of tables.
func (c *table) write(guides []*guide.Guide) (string, error) {
	if c.Table == "" {
		return desk.List(guides, c.As)
	}
	g := guides[0] // a table is asked for of one van
	shown := desk.Tables(g)
	chosen := desk.Named(shown, c.Table)
	if len(chosen) == 0 {
		var ids []string
		for _, t := range shown {
			ids = append(ids, t.ID)
		}
		slices.Sort(ids)
		return "", errUsage{fmt.Errorf("%s has no table %q: %s", g.Van.Name, c.Table, hint(c.family(ids), ids))}
	}
	return desk.Write(g, chosen, c.As)
}

// family puts a family before a table that is asked for without one, if a table
// of that family is called nearly so.
func (c *table) family(ids []string) string {
	if strings.Contains(c.Table, "/") {
		return c.Table
	}
	for _, id := range ids {
		family, name, _ := strings.Cut(id, "/")
		if problem.Nearest(c.Table, []string{name}) != "" {
			return family + "/" + c.Table
		}
	}
	return c.Table
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

// hint offers the nearest valid name, or all of them.
func hint(word string, valid []string) string {
	if near := problem.Nearest(word, valid); near != "" {
		return fmt.Sprintf("did you mean %q?", near)
	}
	return "there is " + strings.Join(slices.Compact(valid), ", ")
}
