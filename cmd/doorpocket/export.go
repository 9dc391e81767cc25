package main

import (
	"bytes"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"

	"doorpocket/build/roster"
)

// export writes a fleet as one table.
type export struct {
	Folder  string   `arg:"" optional:"" offers:"@folders"`
	As      string   `name:"as" offers:"csv|xlsx"`
	Out     string   `name:"out" offers:"@files"`
	Facts   []string `name:"facts"`
	Numbers bool     `name:"numbers"`
	For     string   `name:"for" default:"all" offers:"all|hirers"`
}

// Run is called by the command line.
func (c *export) Run(out *speaker) error {
	form := c.As
	if form == "" {
		form = "csv"
		if strings.HasSuffix(strings.ToLower(c.Out), ".xlsx") {
			form = "xlsx"
		}
	}
	if err := oneForm(form, roster.Forms); err != nil {
		return err
	}
	if c.For != "all" && c.For != "hirers" {
		return errUsage{fmt.Errorf("--for is all or hirers, not %q", c.For)}
	}
	if form == "xlsx" && c.Out == "" {
		return errUsage{fmt.Errorf("a workbook needs a file: write --out fleet.xlsx")}
	}
	fleet, err := sound(out, c.Folder)
	if err != nil {
		return err
	}
	table, err := roster.Export(fleet, roster.Choice{Columns: c.Facts, Numbers: c.Numbers, Hirers: c.For == "hirers"})
	if err != nil {
		return errUsage{err}
	}
	var data bytes.Buffer
	if err := table.Write(&data, form); err != nil {
		return err
	}
	lost := roster.NotInTable(fleet)
	for _, key := range slices.Sorted(maps.Keys(lost)) {
		out.warn("Not in the table: %s, which only specs hold (%d)", key, lost[key])
	}
	if c.Out == "" {
		_, err := out.out.Write(data.Bytes())
		return err
	}
	if err := os.WriteFile(c.Out, data.Bytes(), 0o644); err != nil {
		return err
	}
	out.say("%s: %s, %s", c.Out, count(len(fleet.Vans), "van"), count(len(table.Rows[0]), "column"))
	return nil
}
