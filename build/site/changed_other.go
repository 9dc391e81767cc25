//go:build !linux && !darwin

package site

import (
	"io/fs"
	"time"
)

// changed is when the content of a file or folder last changed, or was made to look so:
// more is not asked of this system.
func changed(info fs.FileInfo) time.Time { return info.ModTime() }
