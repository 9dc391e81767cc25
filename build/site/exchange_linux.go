package site

import (
	"errors"

	"golang.org/x/sys/unix"
)

// exchange lets two folders change places at once. The error is
// errors.ErrUnsupported where the system or the file system cannot.
func exchange(a, b string) error {
	err := unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, unix.RENAME_EXCHANGE)
	if errors.Is(err, unix.EINVAL) || errors.Is(err, unix.ENOSYS) {
		return errors.ErrUnsupported
	}
	return err
}
