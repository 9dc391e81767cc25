//go:build unix

package site

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// hold locks a file until it is closed.
func hold(file *os.File) error {
	err := unix.Flock(int(file.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	if errors.Is(err, unix.EWOULDBLOCK) {
		return errHeld
	}
	return err
}
