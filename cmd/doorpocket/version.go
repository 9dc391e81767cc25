package main

import (
	"crypto/sha256"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"strings"
)

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

// programIdentity tells builds of the program apart that may make other pages.
// A version from a clean commit says which it is; any other build is known only
// by the program file itself.
func programIdentity() string {
	name := programVersion()
	if info, ok := debug.ReadBuildInfo(); ok && strings.HasPrefix(name, "v") && !strings.Contains(name, "+dirty") && info.Main.Path == "doorpocket" {
		return name
	}
	path, err := os.Executable()
	if err != nil {
		return name
	}
	file, err := os.Open(path)
	if err != nil {
		return name
	}
	defer file.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, file); err != nil {
		return name
	}
	return fmt.Sprintf("%s %x", name, sum.Sum(nil)[:8])
}
