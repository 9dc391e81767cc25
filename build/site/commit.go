package site

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// plan is how parts of a site change places with new ones: each step can be
// done again without harm, so that whoever finds a plan half carried out does
// all of it.
type plan struct {
	First   []string `json:"first,omitempty"`   // shared files that pages will need
	Folders []string `json:"folders,omitempty"` // of vans, each swapped whole
	Files   []string `json:"files,omitempty"`
	Gone    []string `json:"gone,omitempty"` // files and folders that are no more
	Records []string `json:"records,omitempty"`
}

func (p plan) empty() bool {
	return len(p.First)+len(p.Folders)+len(p.Files)+len(p.Gone)+len(p.Records) == 0
}

// plan compares what was written with what is there.
func (st *Staging) plan() (plan, error) {
	var p plan
	s := st.site
	for _, part := range st.sealed.parts() {
		before := s.records.of(part)
		if part == Fleet {
			st.planFleet(&p, before)
			continue
		}
		if err := st.planVan(&p, part, before); err != nil {
			return p, err
		}
		p.Records = append(p.Records, recordPath(part))
	}
	for _, part := range st.gone {
		if err := st.planGone(&p, part); err != nil {
			return p, err
		}
	}
	p.Gone = append(p.Gone, s.older...)
	st.planShared(&p)
	// That of Fleet is the last, and comes with whatever changes: its time tells when
	// the site was as the ledger says.
	if st.sealed.has(Fleet) && (!p.empty() || !st.sameRecord(Fleet)) {
		p.Records = append(p.Records, recordPath(Fleet))
	}
	return p, nil
}

func (st *Staging) planFleet(p *plan, before *Record) {
	now := st.sealed.of(Fleet)
	var since time.Time
	if before != nil {
		since = st.site.standing(Fleet, before.read)
	}
	for _, path := range slices.Sorted(maps.Keys(now.Files)) {
		if before != nil && before.Files[path] == now.Files[path] && st.site.intact(path, now.Files[path], since) {
			continue
		}
		if strings.Count(path, "/") > 1 { // scripts and the like
			p.First = append(p.First, path)
		} else {
			p.Files = append(p.Files, path)
		}
	}
	if before == nil {
		return
	}
	for _, path := range slices.Sorted(maps.Keys(before.Files)) {
		if _, still := now.Files[path]; !still {
			p.Gone = append(p.Gone, path)
		}
	}
}

func (st *Staging) planVan(p *plan, part string, before *Record) error {
	now := &Record{}
	if before == nil || before.damaged {
		now = st.sealed.of(part)
	}
	for _, folder := range folders(part) {
		known := func(path string) bool {
			if before != nil && has(before.Files, path) {
				return true
			}
			// A van without a record that can be read had one once.
			return has(now.Files, path)
		}
		if err := st.site.strangers(folder, known); err != nil {
			return err
		}
		if _, err := os.Lstat(st.in(folder)); err == nil {
			p.Folders = append(p.Folders, folder)
		} else if _, err := os.Lstat(st.site.below(folder)); err == nil {
			p.Gone = append(p.Gone, folder)
		}
	}
	return nil
}

func has(files map[string]Stamp, path string) bool {
	_, ok := files[path]
	return ok
}

func (st *Staging) planGone(p *plan, part string) error {
	before := st.site.records.of(part)
	if before == nil {
		return nil
	}
	for _, folder := range folders(part) {
		if err := st.site.strangers(folder, func(path string) bool { return has(before.Files, path) }); err != nil {
			return err
		}
		if _, err := os.Lstat(st.site.below(folder)); err == nil {
			p.Gone = append(p.Gone, folder)
		}
	}
	p.Gone = append(p.Gone, recordPath(part))
	return nil
}

// planShared brings in the shared files that were written and takes out those
// that no part uses any more.
func (st *Staging) planShared(p *plan) {
	before, used := st.site.records, map[string]bool{}
	for _, part := range before.parts() {
		if !st.sealed.has(part) && !slices.Contains(st.gone, part) {
			for path := range before.brief(part).shared {
				used[path] = true
			}
		}
	}
	for _, part := range st.sealed.parts() {
		for path := range st.sealed.brief(part).shared {
			used[path] = true
		}
	}
	for _, path := range slices.Sorted(maps.Keys(used)) {
		if st.shared[path] && !st.there(path) {
			p.First = append(p.First, path)
		}
	}
	dropped := map[string]bool{}
	for _, part := range before.parts() {
		for path := range before.brief(part).shared {
			dropped[path] = dropped[path] || !used[path]
		}
	}
	for _, path := range slices.Sorted(maps.Keys(dropped)) {
		if dropped[path] && !st.site.owned(path) {
			p.Gone = append(p.Gone, path)
		}
	}
}

// owned reports whether a file is one that a single part has for itself, whatever the
// records of others say.
func (s *Site) owned(path string) bool {
	return s.Has(partOf(path), path) || s.Has(Fleet, path)
}

// there reports whether a shared file is in the site already.
func (st *Staging) there(path string) bool {
	before := st.site.records
	for _, part := range before.parts() {
		b := before.brief(part)
		if stamp, ok := b.shared[path]; ok && st.site.intact(path, stamp, st.site.standing(part, b.read)) {
			return true
		}
	}
	return false
}

// sameRecord reports whether the record of a part is there already, byte for
// byte.
func (st *Staging) sameRecord(part string) bool {
	now, err := os.ReadFile(st.in(recordPath(part)))
	if err != nil {
		return false
	}
	before, err := os.ReadFile(st.site.below(recordPath(part)))
	return err == nil && string(before) == string(now)
}

// commit writes the plan down and carries it out. From then on there is no way
// back but forward: the next publish would end what this one cannot.
func (st *Staging) commit(p plan) error {
	data, err := json.Marshal(p)
	if err != nil {
		return fmt.Errorf("plan: %w", err)
	}
	draft := filepath.Join(st.folder, planName+".draft")
	if err := os.WriteFile(draft, data, 0o644); err != nil {
		return cannotWrite(err)
	}
	if err := st.site.barrier(st.folder); err != nil {
		return cannotWrite(err)
	}
	if err := os.Rename(draft, filepath.Join(st.folder, planName)); err != nil {
		return cannotWrite(err)
	}
	st.committed = true
	if err := carryOut(st.site, st.folder, p); err != nil {
		return err
	}
	st.site.vouchFor(st.sealed.parts())
	return nil
}

// carryOut does every step of a plan that is not yet done, then removes the
// staging folder.
func carryOut(s *Site, folder string, p plan) error {
	target := s.target
	c := carrier{target: target, folder: folder}
	c.do(func() error { return s.barrier(folder) }) // the plan is there before its first step
	for _, path := range p.First {
		c.file(path)
	}
	for _, path := range p.Folders {
		c.swap(path)
	}
	for _, path := range p.Files {
		c.file(path)
	}
	for _, path := range p.Gone {
		c.remove(path)
	}
	for _, path := range p.Records {
		c.file(path)
	}
	if c.err != nil {
		return fmt.Errorf("the new pages are written but cannot all be put in place: %w. Check the permissions of %s and publish again: it goes on where this one stopped", c.err, target)
	}
	if err := s.clear(folder); err != nil {
		return fmt.Errorf("the new site is in place, but what it replaced cannot be removed: %w", err)
	}
	return nil
}

// carrier carries out a plan and remembers the first step that failed; the
// steps after it are left undone.
type carrier struct {
	target, folder string
	err            error
}

func (c *carrier) names(path string) (fresh, place, old string) {
	path = filepath.FromSlash(path)
	return filepath.Join(c.folder, treeName, path), filepath.Join(c.target, path), filepath.Join(c.folder, oldName, path)
}

func (c *carrier) do(step func() error) {
	if c.err == nil {
		c.err = step()
	}
}

// file moves a new file into its place.
func (c *carrier) file(path string) {
	fresh, place, _ := c.names(path)
	c.do(func() error {
		if _, err := os.Lstat(fresh); errors.Is(err, fs.ErrNotExist) {
			return nil // done before
		}
		if err := os.MkdirAll(filepath.Dir(place), 0o755); err != nil {
			return err
		}
		return os.Rename(fresh, place)
	})
}

// swap puts a new folder in the place of the old one. Where the old one is in
// the staging folder already, an interrupted publish had swapped them.
func (c *carrier) swap(path string) {
	fresh, place, old := c.names(path)
	c.do(func() error {
		if _, err := os.Lstat(fresh); errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		for _, parent := range []string{filepath.Dir(place), filepath.Dir(old)} {
			if err := os.MkdirAll(parent, 0o755); err != nil {
				return err
			}
		}
		if !c.swapped(path) {
			if err := replace(fresh, place, old); err != nil {
				return err
			}
		}
		if err := os.Rename(fresh, old); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		return nil
	})
}

// swapped reports whether the folder in place is the new one: it holds exactly
// what the new record of its part says.
func (c *carrier) swapped(path string) bool {
	part := filepath.Base(path)
	fresh, _, _ := c.names(recordPath(part))
	data, err := os.ReadFile(fresh)
	if err != nil {
		return false
	}
	var r Record
	if json.Unmarshal(data, &r) != nil {
		return false
	}
	there := &Site{target: c.target}
	prefix := path + "/"
	for file, stamp := range r.Files {
		if strings.HasPrefix(file, prefix) && !there.intact(file, stamp, epoch) {
			return false
		}
	}
	return there.strangers(path, func(file string) bool { return has(r.Files, file) }) == nil
}

// remove takes a file or folder out of the site, and the folders that it
// leaves empty.
func (c *carrier) remove(path string) {
	_, place, old := c.names(path)
	c.do(func() error {
		if err := os.MkdirAll(filepath.Dir(old), 0o755); err != nil {
			return err
		}
		if err := os.Rename(place, old); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		for folder := filepath.Dir(place); folder != c.target && os.Remove(folder) == nil; folder = filepath.Dir(folder) {
		}
		return nil
	})
}
