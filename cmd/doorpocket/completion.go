package main

import (
	"embed"
	"fmt"
	"path"
	"slices"
	"strings"

	"doorpocket/components/problem"
)

//go:embed shell
var shellScripts embed.FS

// completion prints the script that lets a shell offer what can come next on a
// command line of the program.
type completion struct {
	Shell string `arg:"" offers:"bash|zsh|fish"`
}

// Run is called by the command line.
func (c *completion) Run(out *speaker) error {
	entries, err := shellScripts.ReadDir("shell")
	if err != nil {
		return err
	}
	var shells []string
	for _, e := range entries {
		name := strings.TrimSuffix(e.Name(), path.Ext(e.Name()))
		if name == c.Shell {
			text, err := shellScripts.ReadFile("shell/" + e.Name())
			if err != nil {
				return err
			}
			out.say("%s", strings.TrimRight(string(text), "\n"))
			return nil
		}
		shells = append(shells, name)
	}
	slices.Sort(shells)
	hint := "there are scripts for " + strings.Join(shells, ", ")
	if near := problem.Nearest(c.Shell, shells); near != "" {
		hint = fmt.Sprintf("did you mean %q?", near)
	}
	return errUsage{fmt.Errorf("there is no script for %q: %s", c.Shell, hint)}
}
