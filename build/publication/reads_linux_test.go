package publication_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unsafe"

	"golang.org/x/sys/unix"

	"doorpocket/build/sample"
)

// readings tells which pages of a site are read while something is done.
func readings(t *testing.T, site string, do func()) []string {
	t.Helper()
	watch, err := unix.InotifyInit1(unix.IN_NONBLOCK | unix.IN_CLOEXEC)
	if err != nil {
		t.Fatal(err)
	}
	defer unix.Close(watch)
	folders := map[int32]string{}
	for _, tree := range []string{"hirers", "staff"} {
		err := filepath.WalkDir(filepath.Join(site, tree), func(name string, e fs.DirEntry, err error) error {
			if err != nil || !e.IsDir() {
				return err
			}
			n, err := unix.InotifyAddWatch(watch, name, unix.IN_ACCESS)
			folders[int32(n)], _ = filepath.Rel(site, name)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	do()
	return accessed(t, watch, folders)
}

// accessed lists the files of which something was read, folders aside.
func accessed(t *testing.T, watch int, folders map[int32]string) []string {
	t.Helper()
	var all []string
	buffer := make([]byte, 1<<16)
	for {
		n, err := unix.Read(watch, buffer)
		if err == unix.EAGAIN || n == 0 {
			slices.Sort(all)
			return slices.Compact(all)
		}
		if err != nil {
			t.Fatal(err)
		}
		for rest := buffer[:n]; len(rest) >= unix.SizeofInotifyEvent; {
			event := (*unix.InotifyEvent)(unsafe.Pointer(&rest[0]))
			name := rest[unix.SizeofInotifyEvent : unix.SizeofInotifyEvent+event.Len]
			if event.Mask&unix.IN_Q_OVERFLOW != 0 {
				t.Fatal("more was read than can be told")
			}
			if event.Mask&unix.IN_ACCESS != 0 && event.Mask&unix.IN_ISDIR == 0 {
				all = append(all, folders[event.Wd]+"/"+strings.TrimRight(string(name), "\x00"))
			}
			rest = rest[unix.SizeofInotifyEvent+event.Len:]
		}
	}
}

// A publish with nothing to do reads no page, however the pages came into their
// place. Where they look touched and are not it reads them once, and writes nothing.
func TestUntouchedPagesAreNotRead(t *testing.T) {
	lib, _ := theLibrary()
	fleet := sample.Many(lib, 3, 1)
	bikeBox(fleet)
	fleet["pictures/box.jpg"] = file(photo(t, 40, 30, 40))
	fleet["vans/van-0001.toml"] = file(string(fleet["vans/van-0001.toml"].Data) + bikes)
	target := filepath.Join(t.TempDir(), "site")
	publish := func() int {
		made, found, err := publishFiles(fleet, target, nil)
		if err != nil || found.HasErrors() {
			t.Fatal(err, found)
		}
		return made.Files
	}
	publish()
	each := func(do func(name string) error) func() {
		return func() {
			err := filepath.WalkDir(target, func(name string, e fs.DirEntry, err error) error {
				if err != nil || e.IsDir() || filepath.Base(filepath.Dir(name)) == "ledger" {
					return err
				}
				return do(name)
			})
			if err != nil {
				t.Fatal(err)
			}
		}
	}
	lose := func(pattern string) func() {
		return func() {
			found, err := filepath.Glob(filepath.Join(target, pattern))
			if err != nil || len(found) == 0 {
				t.Fatal(pattern, err)
			}
			if err := os.Remove(found[0]); err != nil {
				t.Fatal(err)
			}
		}
	}
	edit := func(name string) func() {
		return func() {
			fleet[name] = file(strings.Replace(string(fleet[name].Data), "name = \"", "name = \"New ", 1))
		}
	}
	for _, c := range []struct {
		name    string
		change  func()
		written bool // some of it; no page of a van that stays is read
		read    bool // all of it, once
	}{
		{name: "nothing", change: func() {}},
		{name: "a spec", change: edit("vans/van-0001.toml"), written: true},
		{name: "a lost page", change: lose("hirers/*/*/index.html"), written: true},
		{name: "a lost script", change: lose("hirers/parts/*"), written: true},
		{name: "a lost picture", change: lose("hirers/pictures/*"), written: true},
		{name: "a lost record", change: lose("ledger/*"), written: true},
		{name: "fleet.toml", change: edit("fleet.toml"), written: true},
		{name: "other permissions", change: each(func(name string) error { return os.Chmod(name, 0o600) }), read: true},
		{name: "a snapshot by hard links", change: each(func(name string) error { return os.Link(name, filepath.Join(t.TempDir(), "link")) }), read: true},
		{name: "moved elsewhere and back", change: func() {
			aside := filepath.Join(t.TempDir(), "site")
			if err := errors.Join(os.Rename(target, aside), os.Rename(aside, target)); err != nil {
				t.Fatal(err)
			}
		}},
		{name: "copied elsewhere", change: func() {
			copied := filepath.Join(t.TempDir(), "site")
			if err := os.CopyFS(copied, os.DirFS(target)); err != nil {
				t.Fatal(err)
			}
			target = copied
		}, read: true},
	} {
		c.change()
		pages := 0
		each(func(string) error { pages++; return nil })()
		var written int
		read := readings(t, target, func() { written = publish() })
		if written > 0 != c.written {
			t.Errorf("%s: %d files are written", c.name, written)
		}
		if c.read && len(read) < pages*9/10 {
			t.Errorf("%s: only %d of %d files are read", c.name, len(read), pages)
		}
		if !c.read && !c.written && len(read) > 0 {
			t.Errorf("%s: %d files are read, the first is %s", c.name, len(read), read[0])
		}
		if stays := sample.Code(2); !c.read && c.name != "fleet.toml" && slices.ContainsFunc(read, func(path string) bool { return strings.Contains(path, "/"+stays+"/") }) {
			t.Errorf("%s: pages of %s are read", c.name, stays)
		}
		if again := readings(t, target, func() { written = publish() }); len(again) > 0 || written > 0 {
			t.Errorf("%s, again: %d files are read, %d are written: %.200q", c.name, len(again), written, again)
		}
	}
}
