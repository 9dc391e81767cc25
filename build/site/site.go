// Package site writes what a publish makes, so that the site is always one
// publish and never a mixture of two.
//
// A site is made of parts: one for every van and one, Fleet, for what belongs
// to all. Each part has a record in the folder ledger: which files it wrote,
// and what its maker wants to remember of what they were made from. Parts that
// have not changed stay as they are; a whole new site is swapped in at once,
// single parts folder by folder from a plan that the next publish carries out
// where one is interrupted.
//
// A file that no publish wrote is never removed.
package site

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Fleet is the part that belongs to no van. No van can have its name.
const Fleet = "fleet"

// Site is a folder that a publish may write into. While it is open no other
// publish can open it.
type Site struct {
	target  string
	lock    *lock
	records *records
	older   []string // files of a site of an earlier version
	moved   bool     // the trees are not, or may not be, those of the last publish
	durable bool
}

// Open takes hold of the site in the folder target, which need not exist yet,
// and completes what an interrupted publish began. Close it afterwards.
func Open(target string) (*Site, error) {
	target, err := named(target)
	if err != nil {
		return nil, err
	}
	if err := look(target); err != nil {
		return nil, err
	}
	if mounted(target) {
		return nil, cannotSwap(target)
	}
	if err := os.MkdirAll(filepath.Dir(target), 0o755); err != nil {
		return nil, fmt.Errorf("cannot make the folder for the site: %w. Name another with --out", err)
	}
	lock, err := takeLock(target)
	if err != nil {
		return nil, err
	}
	s := &Site{target: target, lock: lock}
	if err := s.recover(); err != nil {
		return nil, errors.Join(err, s.Close())
	}
	if err := s.readLedger(); err != nil {
		return nil, errors.Join(err, s.Close())
	}
	return s, nil
}

// Close lets others publish.
func (s *Site) Close() error { return s.lock.release() }

// named is the folder in which the site really is: one with a name of its own,
// behind any links.
func named(target string) (string, error) {
	target = filepath.Clean(target)
	real, err := filepath.EvalSymlinks(target)
	if err == nil {
		target = real
	} else if to, isLink := os.Readlink(target); isLink == nil && errors.Is(err, fs.ErrNotExist) {
		return "", fmt.Errorf("%s is a link to %s, where there is nothing. Make that folder, or name another with --out", target, to)
	}
	switch filepath.Base(target) {
	case ".", "..", string(filepath.Separator):
		return "", fmt.Errorf("%s cannot be swapped for a new site: name the folder of the site with --out", target)
	}
	return target, nil
}

// look reports an error where the target is there but no folder that can be
// read.
func look(target string) error {
	_, err := os.ReadDir(target)
	if err == nil || errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return fmt.Errorf("cannot look into %s: %w. Check its name and its permissions, or name another folder with --out", target, reason(err))
}

// cannotSwap says that the target is where a disk or a volume begins.
func cannotSwap(target string) error {
	return fmt.Errorf("%s is a disk or a volume of its own, and no new site can take its place: name a folder in it with --out, such as %s", target, filepath.Join(target, "site"))
}

// reason is an error of the system without the name of the file, which the
// message around it says.
func reason(err error) error {
	var inPath *fs.PathError
	if errors.As(err, &inPath) {
		return inPath.Err
	}
	return err
}

// below gives the name of a file of the site.
func (s *Site) below(path string) string { return filepath.Join(s.target, filepath.FromSlash(path)) }

// beside gives a name beside the site that begins with its own.
func beside(target, what string) string {
	return filepath.Join(filepath.Dir(target), "."+filepath.Base(target)+"-"+what)
}

// validPath reports whether a path with slashes stays below a site and is free
// for pages.
func validPath(path string) bool {
	return fs.ValidPath(path) && path != "." && !strings.ContainsAny(path, `\:`) && path != ledgerFolder && !strings.HasPrefix(path, ledgerFolder+"/")
}
