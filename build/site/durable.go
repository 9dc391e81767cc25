package site

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// Durable has the disk hold what was written before it takes the place of what was
// there, and hold the swap before what was there is removed: so that a site is whole
// also after the power fails. Without it only the end of the process is covered,
// which is enough for a site that nobody keeps, such as that of a preview.
func (s *Site) Durable() { s.durable = true }

// barrier waits until all that was done on the file system of a folder so far is on
// its disk, where the site is to be durable.
func (s *Site) barrier(folder string) error {
	if !s.durable {
		return nil
	}
	return flush(folder)
}

// clear removes a staging folder once the disk holds what came out of it.
func (s *Site) clear(folder string) error {
	if err := s.barrier(folder); err != nil {
		return err
	}
	return removeStaging(folder)
}

// removeStaging removes a staging folder, its mark last: should it not get to the
// end, the next publish still knows that the rest is ours.
func removeStaging(folder string) error {
	entries, err := os.ReadDir(folder)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	for _, e := range entries {
		if e.Name() == markName {
			continue
		}
		if err := os.RemoveAll(filepath.Join(folder, e.Name())); err != nil {
			return err
		}
	}
	return os.RemoveAll(folder)
}
