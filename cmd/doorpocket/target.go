package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"doorpocket/build/spec"
)

// apart reports an error where a site would lie in a folder that the fleet is read
// from: the next publish would take what this one wrote for more of the fleet.
func (s source) apart(folder, target string) error {
	if s.demo {
		return nil
	}
	if folder == "" {
		folder = "."
	}
	for _, part := range spec.Folders {
		part = filepath.Join(folder, part)
		path, err := filepath.Rel(behindLinks(part), behindLinks(target))
		if err != nil || path == ".." || strings.HasPrefix(path, ".."+string(filepath.Separator)) {
			continue // elsewhere, or on another drive
		}
		return errUsage{fmt.Errorf("%s lies in the folder %s, which the fleet is read from: name another folder with --out", target, part)}
	}
	return nil
}

// behindLinks is the full name of a folder which need not be there yet, without the
// links that lead to it.
func behindLinks(name string) string {
	full, err := filepath.Abs(name)
	if err != nil {
		return name
	}
	rest := ""
	for above := full; ; above = filepath.Dir(above) {
		if real, err := filepath.EvalSymlinks(above); err == nil {
			return filepath.Join(real, rest)
		}
		if above == filepath.Dir(above) {
			return full
		}
		rest = filepath.Join(filepath.Base(above), rest)
	}
}
