package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"doorpocket/build/guide"
	"doorpocket/build/paper"
	"doorpocket/build/render"
	"doorpocket/build/spec"
	"doorpocket/components/problem"
	"doorpocket/layouts"
)

// printCmd makes PDF files to print.
type printCmd struct {
	Labels  printLabels  `cmd:""`
	Ruler   printRuler   `cmd:""`
	Card    printCard    `cmd:""`
	Booklet printBooklet `cmd:""`
	Grids   printGrids   `cmd:""`
}

// printing is what all kinds of print need.
type printing struct {
	fleet  *spec.Fleet
	render *render.Renderer
	words  *render.Words
	stock  *paper.Stock
	lang   string
	demo   bool // it comes with the program
}

// materials reads the font, the signs and the words of a language.
func materials(lang string) (printing, error) {
	p := printing{lang: lang}
	var err error
	if p.render, err = render.New(layouts.Files()); err != nil {
		return p, err
	}
	if p.words, err = p.render.Words(lang); err != nil {
		return p, err
	}
	p.stock, err = paper.Open(layouts.Files())
	return p, err
}

// startPrinting reads the fleet and what sheets are made with, and gives the vans
// that some words mean. lang is "" for the fleet's main language.
func startPrinting(out *speaker, folder, lang string, words []string) (printing, []*spec.Van, error) {
	p, err := printingOf(out, folder, lang, source.load)
	if err != nil {
		return p, nil, err
	}
	vans, err := p.chosen(words)
	return p, vans, err
}

// printingOf is startPrinting for whoever reads the fleet in a way of his own.
func printingOf(out *speaker, folder, lang string, load func(source) (*spec.Fleet, problem.List)) (printing, error) {
	s, err := findSource(folder, true)
	if err != nil {
		return printing{}, err
	}
	fleet, found := load(s)
	if found.HasErrors() {
		out.problems(found)
		return printing{}, errProblems
	}
	if s.demo {
		out.say("No fleet.toml here: this is the demonstration fleet that comes with the program.")
	}
	switch {
	case lang == "":
		lang = fleet.Languages[0]
	case !slices.Contains(fleet.Languages, lang):
		return printing{}, errUsage{fmt.Errorf("the fleet has no language %q: %s", lang, hint(lang, fleet.Languages))}
	}
	p, err := materials(lang)
	p.fleet, p.demo = fleet, s.demo
	return p, err
}

// chosen gives the vans that codes, names or patterns mean, all without any.
func (p printing) chosen(words []string) ([]*spec.Van, error) {
	return choose(words, p.fleet.Vans, func(v *spec.Van) (string, string) { return v.Code, v.Name })
}

// choose gives those of all that codes, names or patterns mean, all without any.
func choose[T any](words []string, all []T, called func(T) (code, name string)) ([]T, error) {
	if len(words) == 0 {
		return all, nil
	}
	var codes, names []string
	for _, one := range all {
		code, name := called(one)
		codes, names = append(codes, code), append(names, name)
	}
	wanted := make([]bool, len(all))
	for _, word := range words {
		some := false
		for i := range all {
			if matches(word, codes[i]) || matches(word, names[i]) {
				wanted[i], some = true, true
			}
		}
		if !some {
			return nil, errUsage{fmt.Errorf("there is no van %q: %s", word, hint(word, slices.Concat(codes, names)))}
		}
	}
	var some []T
	for i, one := range all {
		if wanted[i] {
			some = append(some, one)
		}
	}
	return some, nil
}

// matches reports whether a pattern with * and ? means a name, whatever the
// case.
func matches(pattern, name string) bool {
	ok, err := path.Match(strings.ToLower(pattern), strings.ToLower(name))
	return err == nil && ok
}

// guides puts the guides of some vans together.
func (p printing) guides(vans []*spec.Van) []*guide.Guide {
	kit := guide.NewKit(&p.fleet.Operator, p.lang)
	var all []*guide.Guide
	for _, v := range vans {
		g, _ := kit.Build(v) // its problems were told when the fleet was loaded
		all = append(all, g)
	}
	return all
}

// pdfName checks the name of the file to write.
func pdfName(name string) error {
	switch {
	case name == "":
		return errUsage{fmt.Errorf("say where the PDF goes: --out FILE.pdf")}
	case !strings.EqualFold(filepath.Ext(name), ".pdf"):
		return errUsage{fmt.Errorf("--out %s does not end in .pdf", name)}
	}
	return nil
}

// numbered is the name of the n-th of several files: sheet.pdf, sheet-2.pdf.
func numbered(name string, n int) string {
	if n == 1 {
		return name
	}
	return suffixed(name, strconv.Itoa(n))
}

// suffixed is a name with something more before its ending: sheet-RW.pdf.
func suffixed(name, more string) string {
	ext := filepath.Ext(name)
	return strings.TrimSuffix(name, ext) + "-" + more + ext
}

// lot is files that get their names together when all are whole.
type lot struct{ files []*beside }

// beside is a file that waits under another name.
type beside struct {
	*os.File
	name string
}

// create begins a file.
func (l *lot) create(name string) (io.WriteCloser, error) {
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return nil, err
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".doorpocket-*.pdf")
	if err != nil {
		return nil, err
	}
	l.files = append(l.files, &beside{File: f, name: name})
	return f, f.Chmod(0o644)
}

// keep gives every file its name.
func (l *lot) keep() error {
	for _, f := range l.files {
		if err := os.Rename(f.File.Name(), f.name); err != nil {
			return err
		}
	}
	l.files = nil
	return nil
}

// drop removes what was not kept.
func (l *lot) drop() {
	for _, f := range l.files {
		// What could not be written is of no use to anybody.
		_ = f.Close()
		_ = os.Remove(f.File.Name())
	}
}

// writeFile writes a file beside its place and moves it there when it is whole.
func writeFile(name string, write func(io.Writer) error) error {
	var l lot
	defer l.drop()
	f, err := l.create(name)
	if err != nil {
		return err
	}
	if err := errors.Join(write(f), f.Close()); err != nil {
		return err
	}
	return l.keep()
}

// families checks a list of families.
func (p printing) families(list []string) error {
	var known []string
	for _, f := range p.fleet.Library.Families {
		known = append(known, f.ID)
	}
	for _, name := range list {
		if !slices.Contains(known, name) {
			return errUsage{fmt.Errorf("there is no family %q: %s", name, hint(name, known))}
		}
	}
	return nil
}

// told prints problems of a file that is not part of a fleet.
func told(out *speaker, found problem.List) error {
	out.problems(found)
	if found.HasErrors() {
		return errProblems
	}
	return nil
}
