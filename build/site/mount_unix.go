//go:build unix

package site

import (
	"os"
	"path/filepath"
	"syscall"
)

// mounted reports whether a folder is on another file system than the folder that
// it lies in: no folder beside it can take its place.
func mounted(folder string) bool {
	of := func(name string) (*syscall.Stat_t, bool) {
		info, err := os.Stat(name)
		if err != nil {
			return nil, false
		}
		stat, ok := info.Sys().(*syscall.Stat_t)
		return stat, ok
	}
	mine, ok := of(folder)
	above, okAbove := of(filepath.Dir(folder))
	return ok && okAbove && mine.Dev != above.Dev
}
