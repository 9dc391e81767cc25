package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"doorpocket/build/booklet"
	"doorpocket/build/booklets"
	comparing "doorpocket/build/compare"
	"doorpocket/build/guide"
	"doorpocket/build/label"
	"doorpocket/build/spec"
	"doorpocket/components/manifest"
)

// printBooklet makes the whole guide of a van as one PDF.
type printBooklet struct {
	Vans  []string `arg:"" optional:"" offers:"@vans"`
	Fleet string   `name:"fleet" offers:"@folders"`
	Out   string   `name:"out" offers:"@files"`
	Lang  string   `name:"lang"`
	On    string   `name:"on"`
}

// Run is called by the command line.
func (c *printBooklet) Run(out *speaker) error {
	if err := pdfName(c.Out); err != nil {
		return err
	}
	p, vans, err := startPrinting(out, c.Fleet, c.Lang, c.Vans)
	if err != nil {
		return err
	}
	memo, err := c.memo(p)
	if err != nil {
		return err
	}
	press := booklet.Press{Stock: p.stock, Render: p.render}
	kit := guide.NewKit(&p.fleet.Operator, p.lang)
	for _, v := range vans {
		g, _ := kit.Build(v) // its problems were told when the fleet was loaded
		name := c.Out
		if len(vans) > 1 {
			name = suffixed(name, v.Code)
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
		memo.add(v, made.Revision)
	}
	return memo.write(out)
}

// bookletMemo enters in booklets.toml which booklets were printed.
type bookletMemo struct {
	on     manifest.Date // zero where nothing is to be entered
	path   string
	before []byte     // the file as it was read, nil for none
	kit    *guide.Kit // of the main language, whose guides give the editions
	list   []booklets.Booklet
}

// memo looks whether the day can be entered, before anything is printed.
func (c *printBooklet) memo(p printing) (bookletMemo, error) {
	m := bookletMemo{path: filepath.Join(c.Fleet, booklets.File)}
	if c.On == "" {
		return m, nil
	}
	var err error
	if m.on, err = dayOf(c.On); err != nil {
		return m, err
	}
	if p.demo {
		return m, errUsage{fmt.Errorf("--on: the demonstration fleet comes with the program and cannot be changed")}
	}
	if m.before, err = os.ReadFile(m.path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return m, err
	}
	m.kit = guide.NewKit(&p.fleet.Operator, p.fleet.Languages[0])
	return m, nil
}

func (m *bookletMemo) add(v *spec.Van, revision string) {
	if m.on.IsZero() {
		return
	}
	g, _ := m.kit.Build(v)
	m.list = append(m.list, booklets.Booklet{Van: v.Code, Revision: revision, Edition: comparing.Edition(g), On: m.on})
}

func (m *bookletMemo) write(out *speaker) error {
	if m.on.IsZero() {
		return nil
	}
	after, err := booklets.Enter(m.before, m.list)
	if err != nil {
		return err
	}
	if err := label.WriteRegister(m.path, m.before, after); err != nil {
		return err
	}
	out.say("%s: %s printed on %s", m.path, count(len(m.list), "booklet"), m.on)
	return nil
}
