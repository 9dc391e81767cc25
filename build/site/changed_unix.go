//go:build linux || darwin

package site

import (
	"io/fs"
	"syscall"
	"time"
)

// changed is when anything of a file or folder last changed: its content, its name,
// its times. Unlike the time of its content nobody can set it back, or ahead.
func changed(info fs.FileInfo) time.Time {
	stat, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return info.ModTime()
	}
	return time.Unix(changeTime(stat).Unix())
}
