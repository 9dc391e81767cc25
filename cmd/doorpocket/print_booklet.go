package main

import (
	"io"
	"path/filepath"
	"strings"

	"doorpocket/build/booklet"
	"doorpocket/build/guide"
)

// printBooklet makes the whole guide of a van as one PDF.
type printBooklet struct {
	Vans  []string `arg:"" optional:"" offers:"@vans"`
	Fleet string   `name:"fleet" offers:"@folders"`
	Out   string   `name:"out" offers:"@files"`
	Lang  string   `name:"lang"`
}

// Run is called by the command line.
func (c *printBooklet) Run(out *speaker) error {
	if err := pdfName(c.Out); err != nil {
		return err
	}
	p, err := startPrinting(out, c.Fleet, c.Lang)
	if err != nil {
		return err
	}
	vans, err := p.chosen(c.Vans)
	if err != nil {
		return err
	}
	press := booklet.Press{Stock: p.stock, Render: p.render}
	kit := guide.NewKit(&p.fleet.Operator, p.lang)
	for _, v := range vans {
		g, _ := kit.Build(v) // its problems were told when the fleet was loaded
		name := c.Out
		if len(vans) > 1 {
			ext := filepath.Ext(name)
			name = strings.TrimSuffix(name, ext) + "-" + v.Code + ext
		}
		var made booklet.Made
		err := writeFile(name, func(w io.Writer) error {
			made, err = press.Print(g, w)
			return err
		})
		if err != nil {
			return err
		}
		out.say("%s: %s, revision %s", name, count(made.Pages, "page"), made.Revision)
	}
	return nil
}
