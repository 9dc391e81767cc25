package site

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// epoch is before anything was written, so that every file is read.
var epoch = time.Unix(0, 0)

// stagingPrefix begins the names of the folders in which new sites are written.
func stagingPrefix(target string) string { return beside(target, "new-") }

// recover ends what interrupted publishes of the site began, or clears it
// away. Nobody else is at work: the site is locked.
func (s *Site) recover() error {
	for _, folder := range s.leftovers() {
		if err := s.settle(folder); err != nil {
			return err
		}
	}
	return nil
}

// leftovers are the staging folders beside the site that carry our mark.
func (s *Site) leftovers() []string {
	parent := filepath.Dir(s.target)
	entries, err := os.ReadDir(parent)
	if err != nil {
		return nil
	}
	var found []string
	prefix := filepath.Base(stagingPrefix(s.target))
	for _, e := range entries {
		number, ours := strings.CutPrefix(e.Name(), prefix)
		if !ours || number == "" || strings.Trim(number, "0123456789") != "" || !e.IsDir() {
			continue
		}
		folder := filepath.Join(parent, e.Name())
		if _, err := os.Lstat(filepath.Join(folder, markName)); err == nil {
			found = append(found, folder)
		} else {
			_ = os.Remove(folder) // one that was made and never filled; any other stays
		}
	}
	return found
}

// settle ends what was begun in one staging folder.
func (s *Site) settle(folder string) error {
	if data, err := os.ReadFile(filepath.Join(folder, planName)); err == nil {
		var p plan
		if err := json.Unmarshal(data, &p); err == nil {
			return carryOut(&Site{target: s.target, durable: true}, folder, p)
		}
	}
	// A whole site of which the old one has been moved aside and the new one
	// is not yet in place.
	if _, err := os.Lstat(s.target); errors.Is(err, fs.ErrNotExist) {
		if _, err := os.Lstat(filepath.Join(folder, oldName)); err == nil {
			if err := os.Rename(filepath.Join(folder, treeName), s.target); err != nil {
				return fmt.Errorf("cannot put in place the site that an interrupted publish had written: %w", err)
			}
		}
	}
	// What cannot be removed stays: it costs room but does no harm.
	_ = removeStaging(folder)
	return nil
}
