package preview

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"time"

	"github.com/fsnotify/fsnotify"

	"doorpocket/build/spec"
)

// watch tells of changes in a fleet folder. It watches folders, not files: an
// editor that writes a new file and renames it over the old one would end the
// watch of a file.
type watch struct {
	root    string
	changed chan<- struct{}
	told    func(error)
	events  *fsnotify.Watcher
	folders map[string]fs.FileInfo // that are watched
	seen    string                 // what polling saw last
	polling bool
}

// sweep is how often the folders themselves are compared with those that are
// watched: a folder may go and come back without a word. It is also how often
// all is looked through where watching does not work.
const sweep = time.Second

func newWatch(root string, changed chan<- struct{}, told func(error)) (*watch, error) {
	w := &watch{root: root, changed: changed, told: told, folders: map[string]fs.FileInfo{}}
	var err error
	if w.events, err = fsnotify.NewWatcher(); err != nil {
		w.poll(err)
		return w, nil
	}
	w.compare()
	return w, nil
}

// run tells of changes until the context ends.
func (w *watch) run(ctx context.Context) error {
	ticks := time.NewTicker(sweep)
	defer ticks.Stop()
	for {
		var events chan fsnotify.Event
		var errs chan error
		if !w.polling {
			events, errs = w.events.Events, w.events.Errors
		}
		select {
		case <-ctx.Done():
			return w.close()
		case <-ticks.C:
			w.tick()
		case e := <-events:
			if w.matters(e.Name) {
				w.compare() // a new folder is watched before its files are read
				w.signal()
			}
		case err := <-errs:
			if errors.Is(err, fsnotify.ErrEventOverflow) {
				w.compare()
				w.signal()
			} else {
				w.poll(err)
			}
		}
	}
}

func (w *watch) close() error {
	if w.events == nil {
		return nil
	}
	return w.events.Close()
}

func (w *watch) signal() {
	select {
	case w.changed <- struct{}{}:
	default: // somebody is told already
	}
}

func (w *watch) tick() {
	if !w.polling {
		if w.compare() {
			w.signal()
		}
		return
	}
	if now := w.look(); now != w.seen {
		w.seen = now
		w.signal()
	}
}

// matters reports whether a change of this name can be one of the fleet: the
// fleet's own files, and all below its folders, but for what editors keep for
// themselves.
func (w *watch) matters(name string) bool {
	path, err := filepath.Rel(w.root, name)
	if err != nil || path == ".." || strings.HasPrefix(path, ".."+string(filepath.Separator)) {
		return false
	}
	base := filepath.Base(path)
	if path != "." && (strings.HasPrefix(base, ".") || strings.HasSuffix(base, "~") || strings.HasSuffix(base, ".swp") || strings.HasPrefix(base, "#")) {
		return false
	}
	first, _, deeper := strings.Cut(filepath.ToSlash(path), "/")
	return path == "." || slices.Contains(spec.Folders, first) || !deeper && filepath.Ext(path) == ".toml"
}

// compare watches the folders that there are now. It reports whether they are
// others than before.
func (w *watch) compare() bool {
	now := w.list()
	other := false
	for folder, info := range w.folders {
		if there, ok := now[folder]; !ok || !os.SameFile(info, there) {
			_ = w.events.Remove(folder) // it ended with the folder, if that is gone
			delete(w.folders, folder)
			other = true
		}
	}
	for _, folder := range slices.Sorted(maps.Keys(now)) {
		if _, watched := w.folders[folder]; watched {
			continue
		}
		other = true
		if err := w.events.Add(folder); err != nil {
			if errors.Is(err, fs.ErrNotExist) {
				continue // gone again; the next sweep will tell
			}
			w.poll(err)
			return true
		}
		w.folders[folder] = now[folder]
	}
	return other
}

// list gives the folders that a fleet's files are in.
func (w *watch) list() map[string]fs.FileInfo {
	all := map[string]fs.FileInfo{}
	if info, err := os.Stat(w.root); err == nil && info.IsDir() {
		all[w.root] = info
	}
	for _, folder := range spec.Folders {
		_ = filepath.WalkDir(filepath.Join(w.root, folder), func(name string, e fs.DirEntry, err error) error {
			if err != nil {
				return nil // gone while we look; the next sweep will tell
			}
			if info, err := os.Stat(name); err == nil && info.IsDir() {
				all[name] = info
			}
			return nil
		})
	}
	return all
}

// poll gives up watching and looks through the folder again and again instead.
func (w *watch) poll(why error) {
	if w.polling {
		return
	}
	w.polling = true
	w.seen = w.look()
	switch {
	case errors.Is(why, syscall.ENOSPC):
		why = errors.New("the system has no watches left for so many folders (on Linux: fs.inotify.max_user_watches)")
	case errors.Is(why, syscall.EMFILE):
		why = errors.New("the system lets no more programs watch folders (on Linux: fs.inotify.max_user_instances)")
	}
	w.told(why)
}

// look tells names, sizes and times of all files of the fleet.
func (w *watch) look() string {
	var b strings.Builder
	note := func(name string) {
		if info, err := os.Stat(name); err == nil && !info.IsDir() && w.matters(name) {
			fmt.Fprintln(&b, name, info.Size(), info.ModTime().UnixNano())
		}
	}
	entries, _ := os.ReadDir(w.root) // none where the folder is gone
	for _, e := range entries {
		note(filepath.Join(w.root, e.Name()))
	}
	for _, folder := range slices.Sorted(maps.Keys(w.list())) {
		if folder == w.root {
			continue
		}
		entries, _ := os.ReadDir(folder)
		for _, e := range entries {
			note(filepath.Join(folder, e.Name()))
		}
	}
	return b.String()
}
