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
	add     func(folder string) error // asks events to watch it
	folders map[string]fs.FileInfo    // that are watched
	linked  string                    // what was seen last of files that lie elsewhere
	seen    string                    // what polling saw last
	polling bool
	every   time.Duration // between two looks through the folder
}

// sweep is how often the folders themselves are compared with those that are
// watched: a folder may go and come back without a word. It is also how often
// all is looked through where watching does not work.
const sweep = time.Second

// newWatch begins to watch a fleet folder. add takes the place of asking the system to
// watch a folder, where it is not nil.
func newWatch(root string, changed chan<- struct{}, told func(error), add func(folder string) error) *watch {
	w := &watch{root: root, changed: changed, told: told, folders: map[string]fs.FileInfo{}, every: sweep}
	var err error
	if w.events, err = fsnotify.NewWatcher(); err != nil {
		w.poll(err)
		return w
	}
	if w.add = add; add == nil {
		w.add = w.events.Add
	}
	w.compare()
	return w
}

// run tells of changes until the context ends.
func (w *watch) run(ctx context.Context) error {
	ticks := time.NewTicker(w.every)
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
// others than before, or a file that lies elsewhere is.
func (w *watch) compare() bool {
	lying := lookAround(w.root)
	now := lying.folders
	linked := said(w.linkedFiles(lying))
	other := linked != w.linked
	w.linked = linked
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
		if err := w.add(folder); err != nil {
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
	lying := lookAround(w.root)
	var files []string
	for folder := range lying.folders {
		entries, _ := os.ReadDir(folder) // none where it is gone
		for _, e := range entries {
			files = append(files, filepath.Join(folder, e.Name()))
		}
	}
	return said(slices.DeleteFunc(files, func(name string) bool { return !w.matters(name) }))
}

// linkedFiles are the files of the fleet that are links. What they lead to may lie in
// a folder that is not watched.
func (w *watch) linkedFiles(lying lying) []string {
	return slices.DeleteFunc(lying.links, func(name string) bool { return !w.matters(name) })
}

// said tells names, sizes and times of files, wherever links lead, and names of
// folders.
func said(files []string) string {
	slices.Sort(files)
	var b strings.Builder
	for _, name := range files {
		info, err := os.Stat(name)
		switch {
		case err != nil: // gone, or a link to nowhere
		case info.IsDir():
			fmt.Fprintln(&b, name)
		default:
			fmt.Fprintln(&b, name, info.Size(), info.ModTime().UnixNano())
		}
	}
	return b.String()
}
