package main

import (
	"errors"
	"path/filepath"

	"doorpocket/build/begin"
	"doorpocket/content"
)

// starting writes a small working fleet into a folder.
type starting struct {
	Folder string `arg:"" offers:"@folders"`
}

// Run is called by the command line.
func (c *starting) Run(out *speaker) error {
	written, err := begin.Write(content.Starter(), c.Folder)
	var taken begin.ErrTaken
	if errors.As(err, &taken) {
		return errUsage{err}
	}
	if err != nil {
		return err
	}
	out.say("A small fleet with one van stands in %s:", c.Folder)
	for _, name := range written {
		out.say("  %s", filepath.Join(c.Folder, filepath.FromSlash(name)))
	}
	out.say("")
	out.say("Next:")
	out.say("  cd %s", c.Folder)
	out.say("  doorpocket inspect     what is wrong or missing")
	out.say("  doorpocket publish     then open site/hirers/index.html")
	out.say("  doorpocket schema      help for your editor: names and explanations")
	out.say("")
	out.say("Begin with fleet.toml, then builds/our-van.toml. Their notes say what to change.")
	return nil
}
