package site

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"syscall"
	"time"
)

// Staging is what is about to become part of a site, or all of it. It is safe
// for concurrent use.
type Staging struct {
	site   *Site
	folder string
	whole  bool
	mu     sync.Mutex
	open   map[string]*opened // the parts being written
	sealed *records           // those that are complete
	shared map[string]bool    // the files written that several parts use
	files  int                // written
	gone   []string           // parts that are to go
	// committed tells that what was written no longer may be discarded.
	committed bool
}

// opened is a part that is being written, with its record of the site before.
type opened struct {
	Record
	before *Record   // nil for none
	since  time.Time // the files of before must be untouched
}

// Names within a staging folder.
const (
	markName = "doorpocket-staging" // tells that the folder is ours
	treeName = "tree"               // what is new, in the shape of the site
	oldName  = "old"                // what has made room for it
	planName = "plan.json"
)

// Stage begins to write. whole says that what is written will be the whole
// site and nothing of the one before stays. It fails, with nothing changed,
// where the folder holds files that no publish wrote.
func (s *Site) Stage(whole bool) (*Staging, error) {
	damaged := slices.ContainsFunc(s.Parts(), s.Damaged) // then nobody knows yet; Finish does
	check := s.Strangers
	if whole && !damaged {
		check = func() error { return s.checkWhole(func(string) bool { return false }) }
	}
	if err := check(); err != nil {
		return nil, err
	}
	folder, err := os.MkdirTemp(filepath.Dir(s.target), filepath.Base(stagingPrefix(s.target)))
	if err != nil {
		return nil, fmt.Errorf("cannot write beside %s: %w. Check the permissions of the folder, or name another with --out", s.target, reason(err))
	}
	st := &Staging{site: s, folder: folder, whole: whole, open: map[string]*opened{}, shared: map[string]bool{}}
	st.sealed = newRecords(func(part string) string { return st.in(recordPath(part)) })
	err = os.WriteFile(filepath.Join(folder, markName), []byte("A new site that is being written. The next publish removes it.\n"), 0o644)
	if err == nil {
		err = os.Mkdir(filepath.Join(folder, treeName), 0o755)
	}
	if err != nil {
		return nil, errors.Join(cannotWrite(err), st.Discard())
	}
	return st, nil
}

func cannotWrite(err error) error {
	return fmt.Errorf("cannot write the site: %w. Make room, or check the permissions of the folder, and publish again", err)
}

func (st *Staging) in(path string) string {
	return filepath.Join(st.folder, treeName, filepath.FromSlash(path))
}

// Write adds a file to a part. path is below the site, with slashes, and must
// stay below it; the files of a van stay below its own folders.
func (st *Staging) Write(part, path string, data []byte) (Stamp, error) {
	if !validPath(path) || part != Fleet && !inFolders(part, path) {
		return "", fmt.Errorf("%q is no path of %s below a site", path, part)
	}
	stamp := stampOf(data)
	if !st.note(part, path, stamp, false) {
		return "", fmt.Errorf("two pages want to be %s", path)
	}
	if err := st.put(path, data); err != nil {
		return "", err
	}
	st.keepTime(part, path)
	return stamp, nil
}

// keepTime lets the time of a file tell whether it is another than in the site
// before, to the second, for whoever copies only what has changed: one that is
// the same keeps its time, one that is not gets a later one.
func (st *Staging) keepTime(part, path string) {
	st.mu.Lock()
	now := st.open[part]
	if now == nil || now.before == nil || !has(now.before.Files, path) {
		st.mu.Unlock()
		return
	}
	before, since, same := now.before, now.since, now.before.Files[path] == now.Files[path]
	st.mu.Unlock()
	was, err := os.Lstat(st.site.below(path))
	if err != nil {
		return
	}
	if same {
		if st.site.intact(path, before.Files[path], since) {
			_ = os.Chtimes(st.in(path), was.ModTime(), was.ModTime()) // it only saves copying
		}
		return
	}
	is, err := os.Lstat(st.in(path))
	if err == nil && is.ModTime().Unix() <= was.ModTime().Unix() {
		later := was.ModTime().Truncate(time.Second).Add(time.Second)
		_ = os.Chtimes(st.in(path), later, later) // it only helps copying
	}
}

// Share adds a file that several parts use, once however many do.
func (st *Staging) Share(path string, data []byte) (Stamp, error) {
	if !validPath(path) {
		return "", fmt.Errorf("%q is no path below a site", path)
	}
	stamp := stampOf(data)
	st.mu.Lock()
	twice := st.shared[path]
	st.shared[path] = true
	if !twice {
		st.files++
	}
	st.mu.Unlock()
	if twice {
		return stamp, nil
	}
	return stamp, st.put(path, data)
}

// Use notes that a part uses a shared file, written now or before.
func (st *Staging) Use(part, path string, stamp Stamp) { st.note(part, path, stamp, true) }

// note keeps a file in the record of its part, unless it is there already, or
// the part is sealed.
func (st *Staging) note(part, path string, stamp Stamp, shared bool) bool {
	st.mu.Lock()
	defer st.mu.Unlock()
	r := st.begun(part)
	switch {
	case r == nil:
		return false
	case shared:
		if r.Shared == nil {
			r.Shared = map[string]Stamp{}
		}
		r.Shared[path] = stamp
		return true
	case st.has(path):
		return false
	}
	st.files++
	r.Files[path] = stamp
	return true
}

// begun gives a part that is being written, nil where it is sealed already. The
// lock is held.
func (st *Staging) begun(part string) *opened {
	r := st.open[part]
	if r == nil && !st.sealed.has(part) {
		r = &opened{Record: Record{Format: ledgerFormat, Files: map[string]Stamp{}}, before: st.site.records.of(part)}
		if r.before != nil {
			r.since = st.site.standing(part, r.before.read)
		}
		st.open[part] = r
	}
	return r
}

func (st *Staging) put(path string, data []byte) error {
	name := st.in(path)
	err := os.WriteFile(name, data, 0o644)
	if errors.Is(err, fs.ErrNotExist) { // the first file of a folder
		if err = os.MkdirAll(filepath.Dir(name), 0o755); err == nil {
			err = os.WriteFile(name, data, 0o644)
		}
	}
	if err != nil {
		return cannotWrite(err)
	}
	return nil
}

// Seal ends a part with what its maker wants to be remembered, and forgets it but
// for its record on disk. Nothing can be added to it afterwards.
func (st *Staging) Seal(part string, made any) error {
	data, err := json.Marshal(made)
	if err != nil {
		return fmt.Errorf("ledger: %w", err)
	}
	st.mu.Lock()
	r := st.begun(part)
	st.mu.Unlock()
	if r == nil {
		return fmt.Errorf("two parts want to be %s", part)
	}
	r.Made = data
	text, err := json.Marshal(r.Record)
	if err != nil {
		return fmt.Errorf("ledger: %w", err)
	}
	if err := st.put(recordPath(part), append(text, '\n')); err != nil {
		return err
	}
	st.mu.Lock()
	defer st.mu.Unlock()
	delete(st.open, part)
	st.sealed.add(part)
	return nil
}

// Name tells which vans' parts the site should have in the end, whoever writes
// them.
func (st *Staging) Name(parts []string) {
	st.mu.Lock()
	defer st.mu.Unlock()
	if r := st.begun(Fleet); r != nil {
		r.Parts = parts
	}
}

// Remove takes a part out of the site.
func (st *Staging) Remove(part string) {
	st.mu.Lock()
	defer st.mu.Unlock()
	st.gone = append(st.gone, part)
}

// Discard removes what was written so far; the site stays as it was.
func (st *Staging) Discard() error { return removeStaging(st.folder) }

// Files counts the files written so far, records aside.
func (st *Staging) Files() int {
	st.mu.Lock()
	defer st.mu.Unlock()
	return st.files
}

// complete reports an error where a file of the new site is gone: half a site
// never takes the place of a whole one.
func (st *Staging) complete() error {
	gone := func(path string) error {
		if _, err := os.Lstat(st.in(path)); err != nil {
			return fmt.Errorf("somebody removed parts of the new site while it was written, publish again: %w", err)
		}
		return nil
	}
	for part := range st.open {
		return fmt.Errorf("the part %s of the new site was never sealed", part)
	}
	for path := range st.shared {
		if err := gone(path); err != nil {
			return err
		}
	}
	for _, part := range st.sealed.parts() {
		if st.sealed.brief(part).damaged != nil {
			return fmt.Errorf("somebody changed parts of the new site while it was written, publish again: %s is spoilt", recordPath(part))
		}
		for path := range st.sealed.of(part).Files {
			if err := gone(path); err != nil {
				return err
			}
		}
	}
	return nil
}

// Finish puts what was written in place and removes the staging folder. Should
// it fail, the site is as it was, or the error says that the next publish ends
// what this one could not.
func (st *Staging) Finish() error {
	err := st.finish()
	if err != nil && !st.committed {
		err = errors.Join(err, st.Discard())
	}
	return err
}

func (st *Staging) finish() error {
	if err := st.complete(); err != nil {
		return err
	}
	if st.whole {
		return st.swap()
	}
	p, err := st.plan()
	if err != nil {
		return err
	}
	if p.empty() {
		return st.Discard()
	}
	return st.commit(p)
}

// swap puts a whole new site in place of the old one.
func (st *Staging) swap() error {
	s := st.site
	if err := s.checkWhole(st.has); err != nil {
		return err
	}
	if err := s.barrier(st.folder); err != nil {
		return cannotWrite(err)
	}
	if err := replace(st.in("."), s.target, filepath.Join(st.folder, oldName)); err != nil {
		if errors.Is(err, syscall.EBUSY) || errors.Is(err, syscall.EXDEV) {
			return cannotSwap(s.target)
		}
		return fmt.Errorf("cannot put the new site in place: %w. The last site is as it was: check the permissions of %s and of the folder that it lies in, and publish again", err, s.target)
	}
	st.committed = true
	if err := s.clear(st.folder); err != nil {
		return fmt.Errorf("the new site is in place, but the old one cannot be removed: %w", err)
	}
	return nil
}

// replace puts a folder in the place of another at once, or where the system
// cannot do that in two steps, of which recover can do the second. What was
// there is afterwards at old, or still at from.
func replace(from, to, old string) error {
	err := os.Rename(from, to)
	if _, there := os.Lstat(to); there == nil && err != nil {
		err = exchange(from, to)
		if errors.Is(err, errors.ErrUnsupported) {
			if err = os.Rename(to, old); err == nil {
				if err = os.Rename(from, to); err != nil {
					err = errors.Join(err, os.Rename(old, to))
				}
			}
		}
	}
	return err
}
