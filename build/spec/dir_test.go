//go:build unix

package spec_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"testing/fstest"

	"doorpocket/build/spec"
)

// A pipe in a fleet folder is told of, and nobody waits for what comes out of it.
func TestPipesAmongSpecs(t *testing.T) {
	folder := t.TempDir()
	for _, name := range []string{"vans", "builds", "vans/folder.toml"} {
		if err := os.Mkdir(filepath.Join(folder, name), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"vans/pipe.toml", "builds/pipe.toml", "labels.toml"} {
		if err := syscall.Mkfifo(filepath.Join(folder, name), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Symlink("pipe.toml", filepath.Join(folder, "vans", "link.toml")); err != nil {
		t.Fatal(err)
	}
	_, found := spec.Load(spec.Dir(folder), "", library())
	for _, name := range []string{"vans/folder.toml", "vans/pipe.toml", "vans/link.toml", "builds/pipe.toml", "labels.toml"} {
		told := false
		for _, p := range found {
			told = told || p.File == name
		}
		if !told {
			t.Errorf("nothing is said of %s: %v", name, found)
		}
	}
	if _, err := fs.ReadFile(spec.Dir(folder), "labels.toml"); err == nil || !strings.Contains(err.Error(), "pipe") {
		t.Errorf("a pipe was read, or said is %v", err)
	}
}

func TestDir(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "fleet.toml"), []byte("name = \"Fleet\"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := fstest.TestFS(spec.Dir(folder), "fleet.toml"); err != nil {
		t.Error(err)
	}
}
