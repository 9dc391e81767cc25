package label

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"doorpocket/components/manifest"
)

// Printed gives the register after labels were printed on a day, for Revise. A
// label that is not registered, or that stands for nothing any more, is an error
// that names it.
func (r *Register) Printed(labels []Ref, on manifest.Date) (*Register, error) {
	next := r.clone()
	for _, ref := range labels {
		e := next.Find(ref)
		if e == nil {
			return nil, fmt.Errorf("%s is not registered: run doorpocket labels first", ref)
		}
		if !next.Current(e) {
			return nil, fmt.Errorf("%s stands for nothing any more: it is not printed again", ref)
		}
		e.Printed = on
	}
	return next, nil
}

// WriteRegister puts a revised register in the place of the file it was made
// from, whole or not at all. before is what was read, nil where there was no
// file; where the file says something else by now, nothing is written.
func WriteRegister(path string, before, after []byte) error {
	now, err := os.ReadFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist) && before == nil:
	case err != nil:
		return fmt.Errorf("cannot read %s again: %w", path, err)
	case before == nil || !bytes.Equal(now, before):
		return fmt.Errorf("%s has changed while this was at work: nothing was written. Run the command again", path)
	}
	file, err := os.CreateTemp(filepath.Dir(path), ".labels-*.toml")
	if err != nil {
		return fmt.Errorf("cannot write beside %s: %w", path, err)
	}
	defer os.Remove(file.Name()) // gone already where all went well
	_, err = file.Write(after)
	err = errors.Join(err, file.Sync(), file.Chmod(mode(path)), file.Close())
	if err == nil {
		err = os.Rename(file.Name(), path)
	}
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	return nil
}

// mode is that of the file which is written over.
func mode(path string) fs.FileMode {
	if info, err := os.Stat(path); err == nil {
		return info.Mode().Perm()
	}
	return 0o644
}
