package spec

import (
	"errors"
	"io/fs"
	"os"
)

// Dir is a fleet folder on this computer. Only its files and folders can be opened:
// whoever reads a pipe that nobody writes to waits for ever.
func Dir(folder string) fs.FS { return dir{os.DirFS(folder)} }

type dir struct{ fs.FS }

// errNoFile says that something is neither a file nor a folder.
var errNoFile = errors.New("it is no file but a pipe, a device or the like")

func (d dir) Open(name string) (fs.File, error) {
	if err := d.check("open", name); err != nil {
		return nil, err
	}
	return d.FS.Open(name)
}

func (d dir) ReadFile(name string) ([]byte, error) {
	if err := d.check("open", name); err != nil {
		return nil, err
	}
	return fs.ReadFile(d.FS, name)
}

func (d dir) ReadDir(name string) ([]fs.DirEntry, error) { return fs.ReadDir(d.FS, name) }

func (d dir) Stat(name string) (fs.FileInfo, error) { return fs.Stat(d.FS, name) }

func (d dir) check(op, name string) error {
	info, err := fs.Stat(d.FS, name)
	if err == nil && !info.Mode().IsRegular() && !info.IsDir() {
		return &fs.PathError{Op: op, Path: name, Err: errNoFile}
	}
	return nil // what else is wrong, opening it tells
}
