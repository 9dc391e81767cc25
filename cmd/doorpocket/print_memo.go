package main

import (
	"fmt"
	"path/filepath"

	"doorpocket/build/label"
	"doorpocket/build/sheets"
	"doorpocket/components/manifest"
)

// memo enters in the register that labels were printed.
type memo struct {
	path          string // of the register
	before, after []byte // nil where nothing is to be entered
	on            manifest.Date
	fresh         int // labels that the register calls not printed yet
}

// memo works out what the register will say, before anything is printed: what
// cannot be entered is told while no label is on paper.
func (c *printLabels) memo(p printing, stickers []sheets.Sticker) (memo, error) {
	register := p.fleet.Register
	m := memo{path: filepath.Join(c.Fleet, label.RegisterFile)}
	var refs []label.Ref
	for _, s := range stickers {
		refs = append(refs, s.Ref())
		if e := register.Find(s.Ref()); e != nil && e.Printed.IsZero() {
			m.fresh++
		}
	}
	if c.On == "" {
		return m, nil
	}
	var err error
	if m.on, err = dayOf(c.On); err != nil {
		return m, err
	}
	switch {
	case p.demo:
		return m, errUsage{fmt.Errorf("--on: the demonstration fleet comes with the program and cannot be changed")}
	case register == nil:
		return m, fmt.Errorf("there is no %s to enter the day in: run doorpocket labels first", m.path)
	}
	next, err := register.Printed(refs, m.on)
	if err != nil {
		return m, err
	}
	m.before = p.fleet.Sources[register.File]
	m.after, err = label.Revise(register, next)
	return m, err
}

// write enters it, or says how that is done.
func (m memo) write(out *speaker, stickers []sheets.Sticker) error {
	switch {
	case m.after != nil:
		if err := label.WriteRegister(m.path, m.before, m.after); err != nil {
			return err
		}
		out.say("%s: %s printed on %s", m.path, count(len(stickers), "label"), m.on)
	case m.fresh > 0:
		out.say("Not printed before: %s. When you stick them on, print with --on DAY, and the register remembers.", count(m.fresh, "label"))
	}
	return nil
}
