package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"

	"doorpocket/build/label"
	"doorpocket/build/roster"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// importing turns a fleet list into specs.
type importing struct {
	File   string `arg:"" offers:"@files"`
	Folder string `arg:"" optional:"" offers:"@folders"`
	Look   bool   `name:"look"`
	Sheet  string `name:"sheet"`
	Rest   bool   `name:"rest"`
	On     string `name:"on"`
}

// Run is called by the command line.
func (c *importing) Run(out *speaker) error {
	day, err := dayOf(c.On)
	if err != nil {
		return err
	}
	folder := c.Folder
	if folder == "" {
		folder = "."
	}
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		return errUsage{fmt.Errorf("there is no folder %s: doorpocket begin makes one", folder)}
	}
	table, found, err := c.table()
	if err != nil {
		return err
	}
	if table == nil {
		return c.refuse(out, found)
	}
	files := spec.Dir(folder)
	lib, problems := components.Load(components.Embedded())
	found.Add(problems...)
	lib, problems = spec.Library(files, "", lib)
	found.Add(problems...)
	if found.HasErrors() {
		return c.refuse(out, found)
	}
	made, problems := roster.Import(table, roster.Wish{Library: lib, Lang: languageOf(files, lib), Day: day, Rest: c.Rest, There: there(files, lib)})
	c.tell(out, table, made)
	if problems.HasErrors() {
		return c.refuse(out, problems)
	}
	if c.Look {
		for _, s := range made.Specs {
			out.say("would write %s: %s %s", filepath.Join(folder, filepath.FromSlash(s.File)), s.Code, s.Name)
		}
		out.say("Nothing was written: this was only a look.")
		return nil
	}
	return c.write(out, folder, made)
}

// table reads the file.
func (c *importing) table() (*roster.Table, problem.List, error) {
	f, err := os.Open(c.File)
	if err != nil {
		return nil, nil, errUsage{err}
	}
	defer f.Close() // it was only read
	table, found := roster.Read(filepath.ToSlash(c.File), f, c.Sheet)
	return table, found, nil
}

func (c *importing) refuse(out *speaker, found problem.List) error {
	out.problems(found)
	out.warn("Nothing was written.")
	return errProblems
}

// tell lists what was guessed and what could not be used.
func (c *importing) tell(out *speaker, table *roster.Table, made *roster.Imported) {
	list := func(title string, lines []string) {
		if len(lines) == 0 {
			return
		}
		out.say("%s", title)
		for _, line := range lines {
			out.say("  %s", line)
		}
	}
	list("Guessed, look whether it is right:", made.Guessed)
	list("Not used:", made.Unused)
	list("Left as they are:", made.Left)
	if len(table.Sheets) > 0 {
		out.say("Other sheets, which were not read: %s", strings.Join(table.Sheets, ", "))
	}
}

// write writes every spec, each to a file that was not there.
func (c *importing) write(out *speaker, folder string, made *roster.Imported) error {
	if err := os.MkdirAll(filepath.Join(folder, "vans"), 0o755); err != nil {
		return err
	}
	for _, s := range made.Specs {
		name := filepath.Join(folder, filepath.FromSlash(s.File))
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
		if errors.Is(err, fs.ErrExist) {
			out.warn("%s is there already: it is left as it is", name)
			continue
		}
		if err != nil {
			return err
		}
		_, err = f.Write(s.Text)
		if err := errors.Join(err, f.Close()); err != nil {
			return err
		}
		out.say("wrote %s: %s %s", name, s.Code, s.Name)
	}
	out.say("%s. A list has not all that a guide needs: doorpocket inspect says what is missing.", count(len(made.Specs), "spec"))
	if !spec.Is(spec.Dir(folder)) {
		out.say("There is no fleet.toml here yet: doorpocket begin in another folder shows one.")
	}
	return nil
}

// languageOf is the fleet's main language, or the library's own where the fleet
// does not say.
func languageOf(files fs.FS, lib *components.Library) string {
	if data, err := fs.ReadFile(files, "fleet.toml"); err == nil {
		var found problem.List
		table, _ := manifest.Parse("fleet.toml", data)
		languages, _ := manifest.NewReader(table, &found).Texts("languages")
		for _, lang := range languages {
			if _, spoken := lib.Values[lang]; spoken {
				return lang
			}
		}
	}
	return "en"
}

// there is what a fleet has already. Codes of vans that have left are taken too.
func there(files fs.FS, lib *components.Library) roster.There {
	has := roster.There{Codes: map[string]string{}}
	reading := spec.Open(files, "", lib)
	for _, v := range reading.Fleet().Left {
		has.Codes[v.Code] = label.RegisterFile
	}
	for _, file := range reading.Specs() {
		has.Files = append(has.Files, file)
		if code := reading.Van(file).Summary.Code; code != "" {
			has.Codes[code] = file
		}
	}
	builds, err := fs.Glob(files, "builds/*.toml")
	if err == nil {
		for _, file := range builds {
			has.Builds = append(has.Builds, strings.TrimSuffix(path.Base(file), ".toml"))
		}
	}
	return has
}
