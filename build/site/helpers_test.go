package site_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"doorpocket/build/site"
)

// publish writes a whole site of the given files.
func publish(t *testing.T, target string, files map[string]string) {
	t.Helper()
	s := begin(t, target)
	write(t, s, files)
	if err := s.Finish(); err != nil {
		t.Fatal(err)
	}
}

func begin(t *testing.T, target string) *site.Staging {
	t.Helper()
	s, err := site.Begin(target, "1.0")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func write(t *testing.T, s *site.Staging, files map[string]string) {
	t.Helper()
	for path, data := range files {
		if err := s.Write(path, []byte(data)); err != nil {
			t.Fatal(err)
		}
	}
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

var (
	first  = map[string]string{"hirers/index.html": "one", "hirers/RW/G1/index.html": "gas", "staff/index.html": "keys"}
	second = map[string]string{"hirers/index.html": "two", "hirers/RW/W1/index.html": "water"}
)
