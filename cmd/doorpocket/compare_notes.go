package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	comparing "doorpocket/build/compare"
	"doorpocket/build/label"
	"doorpocket/components/manifest"
)

// noted is the folder that notes are written into: the newer side, which has to be
// one.
func (c *compare) noted() (string, error) {
	if !c.Note {
		return "", nil
	}
	folder := c.New
	if folder == "" {
		folder = c.In
	}
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		return "", errUsage{fmt.Errorf("--note writes into the specs, and %s is no folder", folder)}
	}
	return folder, nil
}

// notesText shows the notes below the names of their files.
func notesText(notes []comparing.Note, day manifest.Date) string {
	var b strings.Builder
	file := ""
	for _, n := range notes {
		if n.File != file {
			file = n.File
			b.WriteString("# " + file + "\n\n")
		}
		b.WriteString(n.TOML(day.String()) + "\n")
	}
	return b.String()
}

// writeNotes adds the notes to their files, those that stand there already left
// out.
func writeNotes(out *speaker, folder string, notes []comparing.Note, day manifest.Date) error {
	total := 0
	for len(notes) > 0 {
		n := 1
		for n < len(notes) && notes[n].File == notes[0].File {
			n++
		}
		path := filepath.Join(folder, filepath.FromSlash(notes[0].File))
		before, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		after, added := comparing.WithNotes(before, notes[:n], day.String())
		if _, found := manifest.Parse(notes[0].File, after); found.HasErrors() {
			return errors.New("notes cannot be added to " + path + ": " + found[0].String())
		}
		if added > 0 {
			if err := label.WriteRegister(path, before, after); err != nil {
				return err
			}
			out.say("%s: %s", path, count(added, "note"))
		}
		total += added
		notes = notes[n:]
	}
	if total == 0 {
		out.say("Nothing to note that is not noted already.")
		return nil
	}
	out.say("Read them: each is a [[changed]] at the end of its file. Take out what no hirer needs to know.")
	return nil
}
