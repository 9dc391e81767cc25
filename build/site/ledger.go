package site

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// ledgerName is the file in a site's root that tells what a publish wrote.
const ledgerName = "ledger.json"

// Ledger is what the last publish wrote. It holds no time: publishing twice
// gives the same bytes.
type Ledger struct {
	Version string            `json:"version"` // of the program
	Files   map[string]string `json:"files"`   // path below the site -> SHA-256
}

func (s *Staging) writeLedger() error {
	data, err := json.MarshalIndent(s.ledger, "", " ")
	if err != nil {
		return fmt.Errorf("ledger: %w", err)
	}
	if err := os.WriteFile(filepath.Join(s.folder, ledgerName), append(data, '\n'), 0o644); err != nil {
		return fmt.Errorf("cannot write the ledger: %w", err)
	}
	return nil
}

// Files counts the files written so far.
func (s *Staging) Files() int { return len(s.ledger.Files) }

// ours reports an error where the target holds what no publish wrote.
func ours(target string) error {
	entries, err := os.ReadDir(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("cannot look into %s: %w. Check its name and its permissions, or name another folder with --out", target, reason(err))
	case len(entries) == 0:
		return nil
	}
	data, err := os.ReadFile(filepath.Join(target, ledgerName))
	if err != nil {
		return foreign(target, entries[0].Name())
	}
	var ledger Ledger
	if err := json.Unmarshal(data, &ledger); err != nil {
		return fmt.Errorf("the ledger in %s is damaged, so nobody can tell what a publish wrote there: move the folder away and publish again", target)
	}
	return filepath.WalkDir(target, func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		path, err := filepath.Rel(target, name)
		if err != nil {
			return err
		}
		if _, known := ledger.Files[filepath.ToSlash(path)]; !known && path != ledgerName {
			return foreign(target, path)
		}
		return nil
	})
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

func foreign(target, name string) error {
	return fmt.Errorf("%s holds %s, which no publish wrote: it would be lost. Move it elsewhere, or name another folder with --out", target, name)
}

// Paths lists what was written, in order.
func (l Ledger) Paths() []string {
	var paths []string
	for path := range l.Files {
		paths = append(paths, path)
	}
	slices.Sort(paths)
	return paths
}
