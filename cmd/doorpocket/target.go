package main

import (
	"fmt"
	"path/filepath"
	"slices"
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
	path, err := filepath.Rel(behindLinks(folder), behindLinks(target))
	if err != nil {
		return nil // on another drive
	}
	first, _, _ := strings.Cut(filepath.ToSlash(path), "/")
	if !slices.Contains(spec.Folders, first) {
		return nil
	}
	return errUsage{fmt.Errorf("%s lies in the folder %s, which the fleet is read from: name another folder with --out", target, filepath.Join(folder, first))}
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
