package site

import "golang.org/x/sys/unix"

// exchange lets two folders change places at once. The error is
// errors.ErrUnsupported where the file system cannot.
func exchange(a, b string) error { return unix.RenamexNp(a, b, unix.RENAME_SWAP) }
