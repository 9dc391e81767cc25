package publication_test

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"doorpocket/build/publication"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
	"doorpocket/content"
)

// demo reads the demonstration fleet, which must be free of problems: it
// teaches how a fleet is written.
var demo = sync.OnceValues(func() (*spec.Fleet, string) {
	lib, found := components.Load(components.Embedded())
	fleet, more := spec.Load(content.Fleet(), "content/", lib)
	found.Add(more...)
	if len(found) == 0 {
		return fleet, ""
	}
	var b strings.Builder
	if err := problem.Write(&b, found, problem.Style{}); err != nil {
		return fleet, err.Error()
	}
	return fleet, b.String()
})

func demoFleet(t *testing.T) *spec.Fleet {
	t.Helper()
	fleet, problems := demo()
	if problems != "" {
		t.Fatal(problems)
	}
	return fleet
}

// publishDemo publishes the demonstration fleet and gives the site's folder.
func publishDemo(t *testing.T) string {
	t.Helper()
	target := filepath.Join(t.TempDir(), "site")
	made, err := publication.Publish(demoFleet(t), target, "test")
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d vans, %d pages, %d labels", made.Vans, made.Pages, made.Labels)
	return target
}

// published is one published demonstration fleet for all tests that only read.
var published = sync.OnceValues(func() (string, error) {
	fleet, problems := demo()
	if problems != "" {
		return "", errors.New(problems)
	}
	target := filepath.Join(scratch, "site")
	_, err := publication.Publish(fleet, target, "test")
	return target, err
})

// scratch is a folder for what the tests of the package share.
var scratch string

func TestMain(m *testing.M) {
	var err error
	if scratch, err = os.MkdirTemp("", "publication-test-"); err != nil {
		panic(err)
	}
	status := m.Run()
	chromium.end()
	_ = os.RemoveAll(scratch)
	os.Exit(status)
}

// demoSite is the folder of the published demonstration fleet: only to be read.
func demoSite(t *testing.T) string {
	t.Helper()
	site, err := published()
	if err != nil {
		t.Fatal(err)
	}
	return site
}

// files reads a tree: path with slashes -> content.
func files(t *testing.T, root string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := fs.WalkDir(os.DirFS(root), ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := os.ReadFile(filepath.Join(root, name))
		all[path.Clean(name)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// rowan is the van that the tests look at closely: it has gas, a boiler and a
// cassette toilet.
func rowan(t *testing.T) *spec.Van {
	t.Helper()
	for _, v := range demoFleet(t).Vans {
		if v.Code == "RW" {
			return v
		}
	}
	t.Fatal("the demonstration fleet has no van RW")
	return nil
}
