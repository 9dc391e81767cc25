package site

import (
	"path/filepath"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"
)

// Of a staging folder the mark goes last, however it is removed: a publish that is
// killed meanwhile leaves nothing that the next one does not know as its own.
func TestMarkGoesLast(t *testing.T) {
	for name, remove := range map[string]func(st *Staging, p plan) error{
		"discarded": func(st *Staging, _ plan) error { return st.Discard() },
		"put in place": func(st *Staging, p plan) error {
			return carryOut(st.site, st.folder, p)
		},
		"left over": func(st *Staging, _ plan) error { return st.site.settle(st.folder) },
	} {
		t.Run(name, func(t *testing.T) {
			_, folder, p, st := interrupted(t)
			watcher, err := fsnotify.NewBufferedWatcher(1000)
			if err != nil {
				t.Fatal(err)
			}
			defer watcher.Close()
			if err := watcher.Add(folder); err != nil {
				t.Fatal(err)
			}
			if err := remove(st, p); err != nil {
				t.Fatal(err)
			}
			var gone []string
			for end := time.After(time.Minute); len(gone) == 0 || gone[len(gone)-1] != filepath.Base(folder); {
				select {
				case e := <-watcher.Events:
					if e.Has(fsnotify.Remove) {
						gone = append(gone, filepath.Base(e.Name))
					}
				case err := <-watcher.Errors:
					t.Fatal(err)
				case <-end:
					t.Fatalf("removed: %v", gone)
				}
			}
			if n := len(gone); n < 3 || gone[n-2] != markName {
				t.Errorf("removed in the order %v", gone)
			}
			if err := st.site.Close(); err != nil {
				t.Error(err)
			}
		})
	}
}
