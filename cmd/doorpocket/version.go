package main

import "runtime/debug"

// version prints which build of the program this is.
type version struct{}

// Run is called by the command line.
func (c *version) Run(out *speaker) error {
	out.say("doorpocket %s", programVersion())
	return nil
}

// programVersion is the version that the Go tool stamped into the binary.
func programVersion() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(unversioned)"
	}
	return info.Main.Version
}
