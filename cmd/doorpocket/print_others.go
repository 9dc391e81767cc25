package main

import (
	"fmt"
	"io"
	"path"
	"strings"

	"doorpocket/build/sheets"
	"doorpocket/layouts"
)

// printRuler makes the page that checks a printer.
type printRuler struct {
	Out  string `name:"out" offers:"@files"`
	Grid string `name:"grid" offers:"@grids"`
	Page string `name:"page" offers:"A4|Letter"`
}

// Run is called by the command line.
func (c *printRuler) Run(out *speaker) error {
	if err := pdfName(c.Out); err != nil {
		return err
	}
	if c.Grid != "" && c.Page != "" {
		return errUsage{fmt.Errorf("--grid and --page exclude each other: a grid has a page")}
	}
	page, err := pageSize(c.Page)
	if err != nil {
		return err
	}
	grid := sheets.Grid{Page: page}
	if c.Grid != "" {
		if grid, err = gridNamed(out, c.Grid); err != nil {
			return err
		}
	}
	if grid.Page.Width < 180 || grid.Page.Height < 240 {
		return errUsage{fmt.Errorf("the ruler needs a page of at least 180 x 240 mm, not %g x %g mm", grid.Page.Width, grid.Page.Height)}
	}
	p, err := materials("en")
	if err != nil {
		return err
	}
	if err := writeFile(c.Out, func(w io.Writer) error { return sheets.Ruler(p.stock, p.words, p.lang, grid, w) }); err != nil {
		return err
	}
	out.say("%s", c.Out)
	return nil
}

// printCard makes the cards for doors.
type printCard struct {
	Vans  []string `arg:"" optional:"" offers:"@vans"`
	Fleet string   `name:"fleet" offers:"@folders"`
	Out   string   `name:"out" offers:"@files"`
	Lang  string   `name:"lang"`
}

// Run is called by the command line.
func (c *printCard) Run(out *speaker) error {
	if err := pdfName(c.Out); err != nil {
		return err
	}
	p, vans, err := startPrinting(out, c.Fleet, c.Lang, c.Vans)
	if err != nil {
		return err
	}
	if err := writeFile(c.Out, func(w io.Writer) error { return sheets.Cards(p.stock, p.words, p.guides(vans), w) }); err != nil {
		return err
	}
	out.say("%s", count(len(vans), "card"))
	out.say("%s", c.Out)
	return nil
}

// printGrids lists the grids that come with the program, or prints one.
type printGrids struct {
	Name string `arg:"" optional:"" offers:"@grids"`
}

// Run is called by the command line.
func (c *printGrids) Run(out *speaker) error {
	if c.Name != "" {
		g, err := gridNamed(out, strings.TrimSuffix(c.Name, ".toml"))
		if err != nil {
			return err
		}
		f, err := layouts.Files().Open(path.Join("grids", g.Name+".toml"))
		if err != nil {
			return err
		}
		text, err := io.ReadAll(f)
		if err != nil {
			return err
		}
		out.say("%s", strings.TrimRight(string(text), "\n"))
		return f.Close()
	}
	all, err := sheets.Grids(layouts.Files())
	if err != nil {
		return err
	}
	for _, g := range all {
		out.say("%-24s %2d labels of %g x %g mm", g.Name, g.PerPage(), g.Width, g.Height)
	}
	return nil
}
