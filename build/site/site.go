// Package site writes what a publish makes: into a folder beside the site, then
// swapped in whole, so that the site is always one publish and never a mixture
// of two.
//
// A folder that holds files which no publish wrote is never touched: the ledger
// in the site's root says what was.
package site

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
)

// Staging is a site being written. It is safe for concurrent use.
type Staging struct {
	target, folder string
	mu             sync.Mutex
	ledger         Ledger
}

// Begin prepares to write a site into the folder target. It fails, with nothing
// changed, where the folder holds files that no publish wrote.
func Begin(target, version string) (*Staging, error) {
	target, err := named(target)
	if err != nil {
		return nil, err
	}
	if err := recoverSite(target); err != nil {
		return nil, err
	}
	clearLeftovers(target)
	if err := ours(target); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(filepath.Dir(target), 0o755); err != nil {
		return nil, fmt.Errorf("cannot make the folder for the site: %w. Name another with --out", err)
	}
	folder, err := os.MkdirTemp(filepath.Dir(target), stagingPrefix(target))
	if err != nil {
		return nil, fmt.Errorf("cannot write beside %s: %w. Check the permissions of the folder, or name another with --out", target, err)
	}
	return &Staging{target: target, folder: folder, ledger: Ledger{Version: version, Files: map[string]string{}}}, nil
}

// named is the folder in which the site really is: one with a name of its own,
// behind any links.
func named(target string) (string, error) {
	target = filepath.Clean(target)
	if real, err := filepath.EvalSymlinks(target); err == nil {
		target = real
	}
	switch filepath.Base(target) {
	case ".", "..", string(filepath.Separator):
		return "", fmt.Errorf("%s cannot be swapped for a new site: name the folder of the site with --out", target)
	}
	return target, nil
}

// Write adds one file. path is below the site, with slashes, and must stay
// below it.
func (s *Staging) Write(path string, data []byte) error {
	if !fs.ValidPath(path) || path == "." || path == ledgerName || strings.ContainsAny(path, `\:`) {
		return fmt.Errorf("%q is no path below a site", path)
	}
	sum := sha256.Sum256(data)
	s.mu.Lock()
	_, twice := s.ledger.Files[path]
	s.ledger.Files[path] = hex.EncodeToString(sum[:])
	s.mu.Unlock()
	if twice {
		return fmt.Errorf("two pages want to be %s", path)
	}
	name := filepath.Join(s.folder, filepath.FromSlash(path))
	err := os.WriteFile(name, data, 0o644)
	if errors.Is(err, fs.ErrNotExist) { // the first file of a folder
		if err = os.MkdirAll(filepath.Dir(name), 0o755); err == nil {
			err = os.WriteFile(name, data, 0o644)
		}
	}
	if err != nil {
		return fmt.Errorf("cannot write the site: %w", err)
	}
	return nil
}

// Discard removes what was written so far; the site stays as it was.
func (s *Staging) Discard() error { return os.RemoveAll(s.folder) }

// Finish swaps the new site in and removes the one before. Should the second
// rename fail, the old site is put back.
func (s *Staging) Finish() error {
	if err := s.writeLedger(); err != nil {
		return err
	}
	if err := s.complete(); err != nil {
		return err
	}
	if err := os.Chmod(s.folder, 0o755); err != nil { // temporary folders are private
		return fmt.Errorf("cannot open the new site to readers: %w", err)
	}
	previous := previousName(s.target)
	if err := os.RemoveAll(previous); err != nil {
		return fmt.Errorf("cannot clear away an earlier site: %w", err)
	}
	moved := os.Rename(s.target, previous)
	if moved != nil && !errors.Is(moved, fs.ErrNotExist) {
		return fmt.Errorf("cannot move the old site aside: %w", moved)
	}
	if err := os.Rename(s.folder, s.target); err != nil {
		if moved == nil {
			err = errors.Join(err, os.Rename(previous, s.target))
		}
		return fmt.Errorf("cannot put the new site in place: %w", err)
	}
	if err := os.RemoveAll(previous); err != nil {
		return fmt.Errorf("the new site is in place, but the old one cannot be removed: %w", err)
	}
	return nil
}

// complete reports an error where a file of the new site is gone: half a site
// never takes the place of a whole one.
func (s *Staging) complete() error {
	for path := range s.ledger.Files {
		if _, err := os.Lstat(filepath.Join(s.folder, filepath.FromSlash(path))); err != nil {
			return fmt.Errorf("somebody removed parts of the new site while it was written, publish again: %w", err)
		}
	}
	return nil
}

func previousName(target string) string {
	return filepath.Join(filepath.Dir(target), "."+filepath.Base(target)+"-previous")
}

// recoverSite puts back a site that an interrupted publish had moved aside.
func recoverSite(target string) error {
	if _, err := os.Lstat(target); errors.Is(err, fs.ErrNotExist) {
		if err := os.Rename(previousName(target), target); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("cannot put back the site that an interrupted publish moved aside: %w", err)
		}
	}
	return nil
}
