package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"

	comparing "doorpocket/build/compare"
	"doorpocket/build/past"
	"doorpocket/build/render"
	"doorpocket/build/sheets"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/layouts"
)

// compare tells what changed between two states of a fleet.
type compare struct {
	Old string `arg:"" offers:"@folders"`
	New string `arg:"" optional:"" offers:"@folders"`
	In  string `name:"in" default:"." offers:"@folders"`
	As  string `name:"as" default:"text" offers:"text|markdown|json|notes"`
	For string `name:"for" default:"all" offers:"all|hirers"`
	Out string `name:"out" offers:"@files"`

	Note bool   `name:"note"`
	On   string `name:"on"`
}

var compareForms = []string{"text", "markdown", "json", "notes"}

// Run is called by the command line.
func (c *compare) Run(out *speaker) error {
	if err := oneForm(c.As, compareForms); err != nil {
		return err
	}
	if c.For != "all" && c.For != "hirers" {
		return errUsage{fmt.Errorf("--for is all or hirers, not %q", c.For)}
	}
	day, err := dayOf(c.On)
	if err != nil {
		return err
	}
	folder, err := c.noted()
	if err != nil {
		return err
	}
	report, voice, err := c.compare(out)
	if err != nil {
		return err
	}
	if c.Note {
		return writeNotes(out, folder, report.Notes, day)
	}
	if c.For == "hirers" {
		report = report.Hirers()
	}
	return c.write(out, report, voice, day)
}

// compare reads both sides and compares them. Errors of a side are told.
func (c *compare) compare(out *speaker) (*comparing.Report, render.Voice, error) {
	var none render.Voice
	lib, found := components.Load(components.Embedded())
	if found.HasErrors() {
		out.problems(found)
		return nil, none, errProblems
	}
	older, oldFound, err := c.side(c.Old, lib)
	if err != nil {
		return nil, none, err
	}
	newer, newFound, err := c.side(c.New, lib)
	if err != nil {
		return nil, none, err
	}
	for _, side := range []struct {
		name  string
		found problem.List
	}{{older.Name, oldFound}, {newer.Name, newFound}} {
		if side.found.HasErrors() {
			out.problems(side.found)
			out.warn("Nothing was compared: %s has errors.", side.name)
			return nil, none, errProblems
		}
	}
	renderer, err := render.New(layouts.Files())
	if err != nil {
		return nil, none, err
	}
	lang := newer.Language()
	voice, err := renderer.Voice(lang)
	if err != nil {
		return nil, none, err
	}
	report, found := comparing.Make(older, newer, lang, voice, sheets.Compared)
	if report == nil {
		out.problems(found)
		out.warn("Nothing was compared.")
		return nil, none, errProblems
	}
	return report, voice, nil
}

// side reads a folder, or the fleet folder at a Git revision. Without a name it is
// the fleet folder as it stands.
func (c *compare) side(name string, lib *components.Library) (*comparing.Side, problem.List, error) {
	if name == "" {
		name = c.In
	}
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		files := spec.Dir(name)
		sums, err := past.PicturesOf(files)
		if err != nil {
			return nil, nil, err
		}
		prefix := filepath.ToSlash(filepath.Clean(name)) + "/"
		shown := filepath.Clean(name)
		if name == "." {
			prefix, shown = "", "the folder as it stands"
		}
		side, found := comparing.Open(files, shown, prefix, sums, lib)
		return side, found, nil
	}
	tree, err := past.Open(context.Background(), c.In, name)
	if err != nil {
		return nil, nil, errUsage{err}
	}
	sums, err := tree.Pictures()
	if err != nil {
		return nil, nil, err
	}
	side, found := comparing.Open(tree.Files, fmt.Sprintf("%s (%s)", name, tree.Revision), name+":", sums, lib)
	return side, found, nil
}

func (c *compare) write(out *speaker, report *comparing.Report, voice render.Voice, day manifest.Date) error {
	var data []byte
	switch c.As {
	case "json":
		text, err := json.MarshalIndent(report, "", "  ")
		if err != nil {
			return err
		}
		data = append(text, '\n')
	case "notes":
		data = []byte(notesText(report.Notes, day))
	case "markdown":
		data = []byte(report.Markdown(voice))
	default:
		data = []byte(report.Text(voice))
	}
	if c.Out == "" {
		_, err := out.out.Write(data)
		return err
	}
	return os.WriteFile(c.Out, data, 0o644)
}
