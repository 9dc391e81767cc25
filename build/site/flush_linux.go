package site

import (
	"fmt"
	"os"

	"golang.org/x/sys/unix"
)

// flush waits until all that was written to the file system of a folder is on its
// disk: one call, however many files there are.
func flush(folder string) error {
	f, err := os.Open(folder)
	if err != nil {
		return err
	}
	defer f.Close()
	if err := unix.Syncfs(int(f.Fd())); err != nil {
		return fmt.Errorf("syncfs %s: %w", folder, err)
	}
	return nil
}
