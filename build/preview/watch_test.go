package preview

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// patience is how long a test waits for what must come; it is never waited out
// where all is well.
const patience = time.Minute

// watched is a fleet folder under watch.
type watched struct {
	t       *testing.T
	root    string
	changed chan struct{}
	told    chan error
}

func watchFolder(t *testing.T, poll bool) *watched {
	t.Helper()
	return watchWith(t, poll, func(f *watched) {
		f.write("fleet.toml", "a")
		f.write("vans/rowan.toml", "a")
	})
}

// watchWith watches a folder with the files that before puts there.
func watchWith(t *testing.T, poll bool, before func(f *watched)) *watched {
	t.Helper()
	f := &watched{t: t, root: filepath.Join(t.TempDir(), "fleet"), changed: make(chan struct{}, 1), told: make(chan error, 1)}
	before(f)
	w := newWatch(f.root, f.changed, func(err error) { f.told <- err }, nil)
	if poll {
		w.poll(errors.New("a test wants it"))
		w.every /= 20
	}
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error)
	go func() { ended <- w.run(ctx) }()
	t.Cleanup(func() {
		stop()
		if err := <-ended; err != nil {
			t.Error(err)
		}
	})
	return f
}

func (f *watched) write(name, text string) {
	f.t.Helper()
	name = filepath.Join(f.root, name)
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		f.t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		f.t.Fatal(err)
	}
}

// link makes a link to a name as seen from the folder that it lies in.
func (f *watched) link(to, name string) {
	f.t.Helper()
	f.must(os.MkdirAll(filepath.Dir(f.path(name)), 0o755))
	f.must(os.Symlink(to, f.path(name)))
}

func (f *watched) must(err error) {
	f.t.Helper()
	if err != nil {
		f.t.Fatal(err)
	}
}

// expect waits for a signal, and until no more follow.
func (f *watched) expect(what string) {
	f.t.Helper()
	select {
	case <-f.changed:
	case <-time.After(patience):
		f.t.Fatalf("%s: nothing was told", what)
	}
	f.calm()
}

func (f *watched) calm() {
	for {
		select {
		case <-f.changed:
		case <-time.After(200 * time.Millisecond):
			return
		}
	}
}

func (f *watched) path(name string) string { return filepath.Join(f.root, name) }

// Whatever an editor does when it saves is seen, also after the folder itself
// has gone and come back.
func TestWatchSeesChanges(t *testing.T) {
	for name, poll := range map[string]bool{"watching": false, "polling": true} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			f := watchFolder(t, poll)
			f.calm()
			f.write("vans/rowan.toml", "another text")
			f.expect("written in place")
			for _, text := range []string{"renamed over", "renamed over once more"} {
				f.write("vans/.rowan.toml.tmp", text)
				f.must(os.Rename(f.path("vans/.rowan.toml.tmp"), f.path("vans/rowan.toml")))
				f.expect(text)
			}
			f.write("systems/living/bike-box/system.toml", "new folders, with a file in them at once")
			f.expect("new folders")
			f.write("systems/living/bike-box/page.en.md", "more in the new folder")
			f.expect("file in a new folder")
			f.write("pictures/RW/gas-locker open.jpg", "a van's folder of pictures")
			f.expect("new folder of pictures")
			f.write("pictures/RW/gas-locker shut.jpg", "another")
			f.expect("picture in the folder of a van")
			f.must(os.Remove(f.path("pictures/RW/gas-locker shut.jpg")))
			f.expect("picture removed")
			f.must(os.RemoveAll(f.path("vans")))
			f.expect("folder removed")
			f.write("vans/rowan.toml", "it is back")
			f.expect("folder back")
			f.write("vans/rowan.toml", "and watched again")
			f.expect("changed after it came back")
			f.write("fleet.toml", "the fleet's own file")
			f.expect("fleet.toml")
			f.must(os.Rename(f.root, f.root+"-away"))
			f.expect("all of it gone")
			f.must(os.Rename(f.root+"-away", f.root))
			f.expect("all of it back")
			f.write("fleet.toml", "and watched")
			f.expect("fleet.toml after that")
		})
	}
}

// Folders and files of a fleet may be links to elsewhere: what changes there is seen,
// in new folders too, and wherever a link leads then.
func TestWatchFollowsLinks(t *testing.T) {
	for name, poll := range map[string]bool{"watching": false, "polling": true} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			f := watchWith(t, poll, func(f *watched) {
				f.write("fleet.toml", "a")
				for _, name := range []string{"photos/RW/gas-locker open.jpg", "sheets/batch/ridge.toml", "specs/rowan.toml", "shared/hours.toml"} {
					f.write("../elsewhere/"+name, "a")
				}
				f.link("../elsewhere/photos", "pictures")
				f.link("../elsewhere/sheets", "builds")
				f.write("vans/ash.toml", "a")
				f.link("../../elsewhere/specs/rowan.toml", "vans/rowan.toml")
				f.link("../elsewhere/shared/hours.toml", "hours.toml")
				f.link("..", "../elsewhere/photos/circle")
			})
			f.calm()
			f.write("../elsewhere/photos/RW/gas-locker open.jpg", "another")
			f.expect("a picture in a folder of a link")
			f.write("../elsewhere/photos/OK/gas-locker.jpg", "a")
			f.expect("a new folder behind a link")
			f.write("../elsewhere/photos/OK/gas-locker.jpg", "another")
			f.expect("a picture in the new folder")
			f.write("../elsewhere/sheets/batch/ridge.toml", "another")
			f.expect("a file deeper behind a link")
			f.write("../elsewhere/specs/rowan.toml", "another text")
			f.expect("a spec that is a link")
			f.write("../elsewhere/specs/.new", "a third text, renamed over")
			f.must(os.Rename(f.path("../elsewhere/specs/.new"), f.path("../elsewhere/specs/rowan.toml")))
			f.expect("a spec that is a link, replaced")
			f.write("../elsewhere/shared/hours.toml", "another")
			f.expect("a file of the fleet folder that is a link")
			f.write("../elsewhere/album/gas-locker.jpg", "a")
			f.link("../../elsewhere/album", "../elsewhere/photos/EL")
			f.expect("a link behind a link")
			f.write("../elsewhere/album/gas-locker.jpg", "another")
			f.expect("a picture behind both")
			f.write("../elsewhere/others/RW/gas-locker.jpg", "a")
			f.must(os.Remove(f.path("pictures")))
			f.link("../elsewhere/others", "pictures")
			f.expect("a link that leads elsewhere")
			f.write("../elsewhere/others/RW/gas-locker.jpg", "another")
			f.expect("a picture there")
		})
	}
}

// What is no file of the fleet is not worth a look: a site within the folder
// that is written by every publish above all.
func TestWatchIgnores(t *testing.T) {
	w := &watch{root: "/fleet"}
	for name, want := range map[string]bool{
		"/fleet/fleet.toml": true, "/fleet/labels.toml": true, "/fleet/vans/rowan.toml": true, "/fleet/vans": true, "/fleet": true,
		"/fleet/systems/living/box/page.en.md": true, "/fleet/pictures/Box 1.JPG": true,
		"/fleet/site": false, "/fleet/site/hirers/index.html": false, "/fleet/.site-new-12": false, "/fleet/.site-lock": false,
		"/fleet/vans/.rowan.toml.swp": false, "/fleet/vans/rowan.toml~": false, "/fleet/vans/#rowan.toml#": false, "/fleet/vans/.#rowan.toml": false,
		"/fleet/notes.txt": false, "/fleet/site/fleet.toml": false, "/elsewhere/fleet.toml": false, "/fleet2/fleet.toml": false,
	} {
		if got := w.matters(name); got != want {
			t.Errorf("%s matters: %v", name, got)
		}
	}
}
