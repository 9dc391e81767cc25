package site_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"

	"doorpocket/build/site"
)

// publish writes a whole site of the given files.
func publish(t *testing.T, target string, files map[string]string) {
	t.Helper()
	s := open(t, target)
	defer shut(t, s)
	st := stage(t, s, true)
	write(t, st, site.Fleet, files)
	seal(t, st, site.Fleet)
	if err := st.Finish(); err != nil {
		t.Fatal(err)
	}
}

func open(t *testing.T, target string) *site.Site {
	t.Helper()
	s, err := site.Open(target)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func shut(t *testing.T, s *site.Site) {
	t.Helper()
	if err := s.Close(); err != nil {
		t.Error(err)
	}
}

func stage(t *testing.T, s *site.Site, whole bool) *site.Staging {
	t.Helper()
	st, err := s.Stage(whole)
	if err != nil {
		t.Fatal(err)
	}
	return st
}

func write(t *testing.T, st *site.Staging, part string, files map[string]string) {
	t.Helper()
	for path, data := range files {
		if _, err := st.Write(part, path, []byte(data)); err != nil {
			t.Fatal(err)
		}
	}
}

func seal(t *testing.T, st *site.Staging, part string) {
	t.Helper()
	if err := st.Seal(part, nil); err != nil {
		t.Fatal(err)
	}
}

// attempt opens a site and stages a whole one, for tests that want to see it
// fail.
func attempt(t *testing.T, target string) error {
	t.Helper()
	s, err := site.Open(target)
	if err != nil {
		return err
	}
	defer shut(t, s)
	st, err := s.Stage(true)
	if err == nil {
		err = st.Discard()
	}
	return err
}

// tree reads a folder: path with slashes -> content, of a folder "".
func tree(t *testing.T, root string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(root, func(name string, e fs.DirEntry, err error) error {
		if err != nil || name == root {
			return err
		}
		path, err := filepath.Rel(root, name)
		if err != nil {
			return err
		}
		if e.IsDir() {
			all[filepath.ToSlash(path)+"/"] = ""
			return nil
		}
		data, err := os.ReadFile(name)
		all[filepath.ToSlash(path)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// put writes a file that no publish wrote.
func put(t *testing.T, name, data string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(data), 0o644); err != nil {
		t.Fatal(err)
	}
}

// tick waits until the clock of a folder's file system has moved on.
func tick(t *testing.T, folder string) {
	t.Helper()
	probe := filepath.Join(folder, "tick")
	now := func() time.Time {
		put(t, probe, "x")
		info, err := os.Stat(probe)
		if err != nil {
			t.Fatal(err)
		}
		return info.ModTime()
	}
	for begin := now(); !now().After(begin); {
		time.Sleep(time.Millisecond)
	}
	if err := os.Remove(probe); err != nil {
		t.Fatal(err)
	}
}

var (
	first  = map[string]string{"hirers/index.html": "one", "hirers/RW/G1/index.html": "gas", "staff/index.html": "keys"}
	second = map[string]string{"hirers/index.html": "two", "hirers/RW/W1/index.html": "water"}
)
