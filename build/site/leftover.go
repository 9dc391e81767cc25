package site

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// unused is how long nothing in a staging folder has changed before it counts
// as left over. A publish writes file after file and is done in minutes; where
// one was held up for longer, Finish finds that its files are gone.
const unused = time.Hour

// stagingPrefix begins the names of the folders in which new sites are written.
func stagingPrefix(target string) string { return "." + filepath.Base(target) + "-new-" }

// clearLeftovers removes what interrupted publishes of the site left. What
// cannot be removed stays: it costs room but does no harm.
func clearLeftovers(target string) {
	parent := filepath.Dir(target)
	entries, err := os.ReadDir(parent)
	if err != nil {
		return
	}
	for _, e := range entries {
		number, ours := strings.CutPrefix(e.Name(), stagingPrefix(target))
		if !ours || number == "" || strings.Trim(number, "0123456789") != "" || !e.IsDir() {
			continue
		}
		if folder := filepath.Join(parent, e.Name()); time.Since(lastChange(folder)) > unused {
			_ = os.RemoveAll(folder)
		}
	}
}

// lastChange is when something in a folder last changed; now where that cannot
// be told.
func lastChange(folder string) time.Time {
	var last time.Time
	err := filepath.WalkDir(folder, func(_ string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := e.Info()
		if err == nil && info.ModTime().After(last) {
			last = info.ModTime()
		}
		return err
	})
	if err != nil {
		return time.Now()
	}
	return last
}
