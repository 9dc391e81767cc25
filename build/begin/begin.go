// Package begin writes a small working fleet for somebody to start from.
package begin

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// ErrTaken says that a folder holds something already. Nothing was written.
type ErrTaken struct{ Folder, Name string }

func (e ErrTaken) Error() string {
	return fmt.Sprintf("%s holds %s already: name a new folder, or an empty one", e.Folder, e.Name)
}

// Write copies the starter into a folder, which it makes where there is none,
// and gives the names of the files in it. It never writes over anything: a
// folder that holds more than a version-control folder is refused.
func Write(starter fs.FS, folder string) ([]string, error) {
	if err := free(folder); err != nil {
		return nil, err
	}
	var written []string
	err := fs.WalkDir(starter, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		target := strings.Replace(name, "gitignore", ".gitignore", 1)
		written = append(written, target)
		return copyFile(starter, name, filepath.Join(folder, filepath.FromSlash(target)))
	})
	return written, err
}

// free reports whether a folder is empty or not there.
func free(folder string) error {
	entries, err := os.ReadDir(folder)
	if err != nil && !os.IsNotExist(err) {
		return err
	}
	for _, e := range entries {
		if e.Name() != ".git" {
			return ErrTaken{Folder: folder, Name: e.Name()}
		}
	}
	return nil
}

func copyFile(files fs.FS, name, target string) error {
	data, err := fs.ReadFile(files, name)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(target), 0o755); err != nil {
		return err
	}
	f, err := os.OpenFile(target, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	if _, err := f.Write(data); err != nil {
		_ = f.Close()
		return err
	}
	return f.Close()
}
