package main

import (
	"errors"
	"os"
	"path/filepath"

	schemas "doorpocket/build/schema"
)

// schema writes the schemas that an editor can use.
type schema struct {
	Folder string `arg:"" optional:"" offers:"@folders"`
	Out    string `name:"out" offers:"@folders"`
}

// Run is called by the command line.
func (c *schema) Run(out *speaker) error {
	s, err := findSource(c.Folder, true)
	if err != nil {
		return err
	}
	target := c.Out
	if target == "" {
		target = filepath.Join(c.Folder, "schemas")
	}
	fleet, found := s.load()
	if len(fleet.Library.SystemIDs()) == 0 {
		out.problems(found)
		return errProblems
	}
	lang := "en"
	if len(fleet.Languages) > 0 {
		lang = fleet.Languages[0]
	}
	err = os.MkdirAll(target, 0o755)
	for _, f := range schemas.Files(fleet.Library, lang) {
		name := filepath.Join(target, f.Name)
		err = errors.Join(err, os.WriteFile(name, f.Data, 0o644))
		out.say("%s", name)
	}
	return err
}
