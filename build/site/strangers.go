package site

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// checkWhole reports an error where the site holds a file that no publish wrote
// and that is not among those about to be written.
func (s *Site) checkWhole(written func(path string) bool) error {
	loose := s.loose()
	return s.strangers("", func(path string) bool {
		return loose[path] || s.Has(partOf(path), path) || written(path)
	})
}

// Strangers reports an error where files that no publish wrote stand in plain
// sight in the site, for a publish that has nothing to write.
func (s *Site) Strangers() error {
	if slices.ContainsFunc(s.Parts(), s.Damaged) {
		return nil // nobody can tell
	}
	return s.checkTop()
}

// checkTop looks only at the first levels of the site: most strangers stand
// there, and the whole may be large.
func (s *Site) checkTop() error {
	known := map[string]bool{}
	ours := s.loose()
	for _, part := range s.Parts() {
		for _, folder := range folders(part) {
			ours[folder+"/"] = true
		}
	}
	for path := range ours {
		first, rest, deeper := strings.Cut(path, "/")
		known[first] = true
		if second, _, _ := strings.Cut(rest, "/"); deeper {
			known[first+"/"+second] = true
		}
	}
	for _, folder := range []string{"", "hirers", "staff", ledgerFolder} {
		entries, err := os.ReadDir(s.below(folder))
		if err != nil {
			continue // what is missing holds no stranger
		}
		for _, e := range entries {
			path := filepath.ToSlash(filepath.Join(folder, e.Name()))
			if !known[path] && (!e.IsDir() || s.strangers(path, func(string) bool { return false }) != nil) {
				return s.stranger(path)
			}
		}
	}
	return nil
}

// strangers reports an error where a folder of the site holds files that are
// not known. Empty folders do not count.
func (s *Site) strangers(folder string, known func(path string) bool) error {
	err := filepath.WalkDir(s.below(folder), func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		path, err := filepath.Rel(s.target, name)
		if err != nil {
			return err
		}
		if !known(filepath.ToSlash(path)) {
			return s.stranger(path)
		}
		return nil
	})
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// stranger is the refusal to lose a file. Where it could be of an earlier publish,
// and only the ledger is lost that would tell, it says so: nobody has to move a
// whole site file by file.
func (s *Site) stranger(name string) error {
	parts := s.Parts()
	switch {
	case len(parts) == 0:
		return fmt.Errorf("%s holds %s, and no ledger that tells what a publish wrote: it would be lost. Move it elsewhere, delete the folder if all of it came from publishing, or name another with --out", s.target, name)
	case slices.ContainsFunc(parts, s.Damaged):
		return fmt.Errorf("%s holds %s, and its ledger is damaged where it would tell whether a publish wrote that: it would be lost. Move it elsewhere, delete it if it came from publishing, or name another folder with --out", s.target, name)
	}
	return fmt.Errorf("%s holds %s, which no publish wrote: it would be lost. Move it elsewhere, or name another folder with --out", s.target, name)
}
