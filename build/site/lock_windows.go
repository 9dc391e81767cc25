package site

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// hold locks a file until it is closed. The lock lies far behind the content,
// so that others can still read who holds it.
func hold(file *os.File) error {
	const far = 1 << 30
	err := windows.LockFileEx(windows.Handle(file.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, &windows.Overlapped{Offset: far})
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) {
		return errHeld
	}
	return err
}
