package site

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// A publish that is interrupted after any step of its plan, also between two
// folders changing places and its being noted, is ended by the next one.
func TestPlansAreEnded(t *testing.T) {
	clean := map[string]string{}
	for step := 0; ; step++ {
		target, folder, p, st := interrupted(t)
		steps := p.steps()
		if step > 2*len(steps) {
			break
		}
		c := carrier{target: target, folder: folder}
		for _, s := range steps[:step/2] {
			s(&c)
		}
		if k := step / 2; step%2 == 1 && k >= len(p.First) && k < len(p.First)+len(p.Folders) {
			fresh, place, _ := c.names(p.Folders[k-len(p.First)])
			if err := exchange(fresh, place); err != nil && !errors.Is(err, errors.ErrUnsupported) && !errors.Is(err, fs.ErrNotExist) {
				t.Fatal(err)
			}
		}
		if c.err != nil {
			t.Fatal(c.err)
		}
		if err := st.site.Close(); err != nil {
			t.Fatal(err)
		}
		s, err := Open(target)
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		got := content(t, filepath.Dir(target))
		if step == 0 {
			clean = got
			if len(got) != 9 || got["site/hirers/AA/index.html"] != "new" || got["site/hirers/BB/index.html"] != "" {
				t.Fatalf("%v", got)
			}
		}
		if diff := cmp.Diff(clean, got); diff != "" {
			t.Errorf("interrupted at step %d:\n%s", step, diff)
		}
	}
}

// steps are the steps of a plan, as carryOut does them.
func (p plan) steps() []func(*carrier) {
	var all []func(*carrier)
	for _, list := range []struct {
		paths []string
		do    func(*carrier, string)
	}{{p.First, (*carrier).file}, {p.Folders, (*carrier).swap}, {p.Files, (*carrier).file}, {p.Gone, (*carrier).remove}, {p.Records, (*carrier).file}} {
		for _, path := range list.paths {
			all = append(all, func(c *carrier) { list.do(c, path) })
		}
	}
	return all
}

// interrupted is a site of which the plan of the next publish is written down
// and not yet carried out.
func interrupted(t *testing.T) (target, folder string, p plan, st *Staging) {
	t.Helper()
	target = filepath.Join(t.TempDir(), "site")
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	page := func(st *Staging, part, words string) {
		paths := []string{"hirers/" + part + "/index.html", "staff/" + part + "/index.html"}
		if part == Fleet {
			paths = []string{"hirers/index.html", "hirers/parts/" + words + ".js"}
		}
		for _, path := range paths {
			_, err := st.Write(part, path, []byte(words))
			must(err)
		}
		must(st.Seal(part, nil))
	}
	s, err := Open(target)
	must(err)
	st, err = s.Stage(true)
	must(err)
	for _, part := range []string{Fleet, "AA", "BB"} {
		page(st, part, "old")
	}
	must(st.Finish())
	must(s.Close())
	s, err = Open(target)
	must(err)
	st, err = s.Stage(false)
	must(err)
	for _, part := range []string{Fleet, "AA", "CC"} {
		page(st, part, "new")
	}
	st.Remove("BB")
	p, err = st.plan()
	must(err)
	data, err := json.Marshal(p)
	must(err)
	must(os.WriteFile(filepath.Join(st.folder, planName), data, 0o644))
	return target, st.folder, p, st
}

func content(t *testing.T, root string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := fs.WalkDir(os.DirFS(root), ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := os.ReadFile(filepath.Join(root, name))
		all[name] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(fmt.Errorf("%s: %w", root, err))
	}
	return all
}
