package site

import (
	"fmt"
	"io/fs"
	"os"
	"time"
)

// A file is as it was written where it has the size that its record says and was not
// touched since: neither its content nor, where the system tells, anything else of
// it. What was touched is read. What then proves to be the same is not read again the next time:
// its record takes the time at which this publish began.
//
// All times compared are of the clock of the file system that the site lies on, which
// may be another than that of this machine.

// touched reports whether a file or folder may have become another since a time.
func touched(info fs.FileInfo, since time.Time) bool {
	return changed(info).After(since)
}

// Intact reports whether all files of a part are as they were written. A file
// that looks untouched since is not read.
func (s *Site) Intact(part string) bool {
	r := s.records.of(part)
	if r == nil || r.damaged {
		return false
	}
	since := s.standing(part, r.read)
	switch sound, read := s.sound(r, since); {
	case !sound:
		s.vouch(part, epoch) // until all of it is written anew
		return false
	case read || part == Fleet && s.moved:
		s.vouch(part, s.lock.began)
	}
	return true
}

// sound reports whether all files of a record are as they were written, and whether
// any had to be read for that.
func (s *Site) sound(r *Record, since time.Time) (sound, read bool) {
	for _, files := range []map[string]Stamp{r.Files, r.Shared} {
		for path, stamp := range files {
			ok, opened := s.checked(path, stamp, since)
			if read = read || opened; !ok {
				return false, read
			}
		}
	}
	return true, read
}

// standing is the time since which the files of a part must be untouched: the epoch,
// so that all of them are read, where the clock was ahead when its record was
// written, or a folder was moved that the whole part could have come in.
func (s *Site) standing(part string, written time.Time) time.Time {
	ahead := !s.lock.began.IsZero() && written.After(s.lock.began)
	if s.moved || ahead || s.anyTouched(folders(part), written) {
		return epoch
	}
	return written
}

// anyTouched reports whether any of some files or folders was touched since a time.
// One that is not there was not.
func (s *Site) anyTouched(paths []string, since time.Time) bool {
	for _, path := range paths {
		if info, err := os.Lstat(s.below(path)); err == nil && touched(info, since) {
			return true
		}
	}
	return false
}

// intact reports whether a single file is as it was written. One that was not touched
// since a time, which standing tells, is not read.
func (s *Site) intact(path string, stamp Stamp, since time.Time) bool {
	ok, _ := s.checked(path, stamp, since)
	return ok
}

// checked is that, and whether the file had to be read.
func (s *Site) checked(path string, stamp Stamp, since time.Time) (intact, read bool) {
	info, err := os.Lstat(s.below(path))
	switch {
	case err != nil || !info.Mode().IsRegular() || info.Size() != stamp.size():
		return false, false
	case !touched(info, since):
		return true, false
	}
	_, intact = s.Read(path, stamp)
	return intact, true
}

// Read gives the content of a file that is as it was written.
func (s *Site) Read(path string, stamp Stamp) (data []byte, ok bool) {
	if !validPath(path) {
		return nil, false
	}
	data, err := os.ReadFile(s.below(path))
	return data, err == nil && stampOf(data) == stamp
}

// vouch gives the record of a part the time at which all that it tells was in place.
// Where that fails the next publish reads more than it must, and nothing else.
func (s *Site) vouch(part string, when time.Time) {
	if !when.IsZero() {
		_ = os.Chtimes(s.below(recordPath(part)), when, when)
	}
}

// vouchFor is that for parts that have just been put in place, with files that were
// moved after their records were written. The time of a record is never set back.
func (s *Site) vouchFor(parts []string) {
	now := s.lock.now()
	for _, part := range parts {
		if info, err := os.Lstat(s.below(recordPath(part))); err == nil && info.ModTime().Before(now) {
			s.vouch(part, now)
		}
	}
}

// State tells one state of the site in a folder from another: it is the same as long
// as nothing is published there. It is "" where there is no site.
func State(target string) string {
	info, err := os.Stat((&Site{target: target}).below(recordPath(Fleet)))
	if err != nil {
		return ""
	}
	return fmt.Sprint(info.Size(), info.ModTime().UnixNano())
}
