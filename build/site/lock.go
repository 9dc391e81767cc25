package site

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"time"
)

// lock keeps two publishes of one site apart. The system lets go of it when a
// process ends, however it ends: no lock is ever stale.
type lock struct {
	file  *os.File
	began time.Time // when it was taken, by the clock of the site's file system; zero where that does not tell
}

// errHeld says that another process holds a lock.
var errHeld = errors.New("held")

// ErrBusy is the error of Open where another publish is writing the site.
var ErrBusy = errors.New("another publish is writing it")

// busy is ErrBusy in words for people.
type busy struct{ words string }

func (b busy) Error() string      { return b.words }
func (busy) Is(target error) bool { return target == ErrBusy }

// takeLock takes the lock beside the site.
func takeLock(target string) (*lock, error) {
	name := beside(target, "lock")
	for {
		file, err := os.OpenFile(name, os.O_CREATE|os.O_RDWR, 0o644)
		if err != nil {
			return nil, fmt.Errorf("cannot write beside %s: %w. Check the permissions of the folder, or name another with --out", target, reason(err))
		}
		if err := hold(file); err != nil {
			holder := whoHolds(file)
			_ = file.Close()
			if errors.Is(err, errHeld) {
				return nil, busy{fmt.Sprintf("another publish%s is writing %s. Wait until it is done, or name another folder with --out", holder, target)}
			}
			return nil, fmt.Errorf("cannot lock %s: %w", name, err)
		}
		if same(file, name) {
			l := &lock{file: file}
			l.began = l.now()
			return l, nil
		}
		_ = file.Close() // whoever held it before has just removed it
	}
}

// now is the time by the clock of the site's file system, zero where that does not
// tell. It writes who holds the lock, for the message of others.
func (l *lock) now() time.Time {
	_ = l.file.Truncate(0)
	if _, err := l.file.WriteAt([]byte(strconv.Itoa(os.Getpid())+"\n"), 0); err != nil {
		return time.Time{}
	}
	info, err := l.file.Stat()
	if err != nil {
		return time.Time{}
	}
	return info.ModTime()
}

// same reports whether a file is still the one of its name.
func same(file *os.File, name string) bool {
	mine, err := file.Stat()
	if err != nil {
		return false
	}
	there, err := os.Stat(name)
	return err == nil && os.SameFile(mine, there)
}

func whoHolds(file *os.File) string {
	var text [32]byte
	n, _ := file.ReadAt(text[:], 0)
	var pid int
	if _, err := fmt.Sscan(string(text[:n]), &pid); err != nil {
		return ""
	}
	return fmt.Sprintf(" (process %d)", pid)
}

func (l *lock) release() error {
	err := os.Remove(l.file.Name())
	if errors.Is(err, os.ErrNotExist) || onWindows(err) {
		err = nil
	}
	return errors.Join(err, l.file.Close())
}

// onWindows reports whether a file could not be removed because it is open,
// which only Windows minds; it stays there and does no harm.
func onWindows(err error) bool { return err != nil && filepath.Separator == '\\' }
