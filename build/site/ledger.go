package site

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// ledgerFolder holds a record for every part of a site.
const ledgerFolder = "ledger"

// ledgerFormat tells records of this form from those of other versions.
const ledgerFormat = 1

// Record is what is remembered of one part. It holds no time: publishing twice
// gives the same bytes.
type Record struct {
	Format int              `json:"format"`
	Made   json.RawMessage  `json:"made,omitempty"` // for the maker of the part
	Files  map[string]Stamp `json:"files"`          // written for this part alone, by path below the site
	Shared map[string]Stamp `json:"shared,omitempty"`
	Parts  []string         `json:"parts,omitempty"` // of Fleet: all that the site should have

	read    time.Time // when the record was written; zero where it cannot be trusted
	damaged bool
}

// Stamp tells the content of a file: its SHA-256, cut to 128 bits, and its size.
type Stamp string

func stampOf(data []byte) Stamp {
	sum := sha256.Sum256(data)
	return Stamp(hex.EncodeToString(sum[:16]) + "-" + strconv.Itoa(len(data)))
}

func (s Stamp) size() int64 {
	_, size, _ := strings.Cut(string(s), "-")
	n, err := strconv.ParseInt(size, 10, 64)
	if err != nil {
		return -1
	}
	return n
}

func recordPath(part string) string { return ledgerFolder + "/" + part + ".json" }

// readLedger reads the records of all parts. One that is damaged, or of
// another version, only tells which files are ours.
func (s *Site) readLedger() error {
	s.records = map[string]*Record{}
	entries, err := os.ReadDir(s.below(ledgerFolder))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("cannot read the ledger of %s: %w", s.target, reason(err))
	}
	for _, e := range entries {
		part, ok := strings.CutSuffix(e.Name(), ".json")
		if !ok || e.IsDir() {
			continue // it is no file of ours, and is found as such
		}
		record, err := s.readRecord(part)
		if err != nil {
			return err
		}
		s.records[part] = record
	}
	s.missLost()
	if data, err := os.ReadFile(s.below("ledger.json")); err == nil {
		s.older = append(salvaged(data), "ledger.json")
	}
	return nil
}

// missLost counts parts that must have had a record among the damaged ones.
func (s *Site) missLost() {
	if len(s.records) == 0 {
		return
	}
	lost := &Record{damaged: true}
	fleet := s.records[Fleet]
	if fleet == nil {
		s.records[Fleet] = lost
		return
	}
	for _, part := range fleet.Parts {
		if _, err := os.Lstat(s.below(folders(part)[0])); s.records[part] == nil && err == nil {
			s.records[part] = lost
		}
	}
}

func (s *Site) readRecord(part string) (*Record, error) {
	name := s.below(recordPath(part))
	info, err := os.Lstat(name)
	if err != nil {
		return nil, fmt.Errorf("cannot read the ledger of %s: %w", s.target, err)
	}
	data, err := os.ReadFile(name)
	if err != nil {
		return nil, fmt.Errorf("cannot read the ledger of %s: %w", s.target, err)
	}
	r := &Record{}
	if err := json.Unmarshal(data, r); err != nil || r.Format != ledgerFormat || !r.valid() {
		r = &Record{damaged: true, Files: map[string]Stamp{}}
		for _, path := range salvaged(data) {
			r.Files[path] = ""
		}
		return r, nil
	}
	r.read = info.ModTime()
	return r, nil
}

// valid reports whether all paths of the record are such as a publish writes.
func (r *Record) valid() bool {
	for _, files := range []map[string]Stamp{r.Files, r.Shared} {
		for path := range files {
			if !validPath(path) {
				return false
			}
		}
	}
	return !slices.ContainsFunc(r.Parts, func(part string) bool { return !validPath(part) || strings.Contains(part, "/") })
}

var pathInLedger = regexp.MustCompile(`"((?:hirers|staff)/[^"\\]+)"`)

// salvaged are the paths that stand in a ledger that cannot be read as a whole.
func salvaged(data []byte) []string {
	var paths []string
	for _, m := range pathInLedger.FindAllSubmatch(data, -1) {
		if validPath(string(m[1])) {
			paths = append(paths, string(m[1]))
		}
	}
	return paths
}

// Parts lists the parts of which there is a record, in order.
func (s *Site) Parts() []string { return slices.Sorted(maps.Keys(s.records)) }

// Made fills in what the maker of a part wanted to be remembered. It reports
// whether there was anything that can be trusted.
func (s *Site) Made(part string, made any) bool {
	r := s.records[part]
	return r != nil && !r.damaged && json.Unmarshal(r.Made, made) == nil
}

// Damaged reports whether a part has a record that cannot be used.
func (s *Site) Damaged(part string) bool { return s.records[part] != nil && s.records[part].damaged }

// Intact reports whether all files of a part are as they were written. A file
// that looks untouched since is not read.
func (s *Site) Intact(part string) bool {
	r := s.records[part]
	if r == nil || r.damaged {
		return false
	}
	for _, files := range []map[string]Stamp{r.Files, r.Shared} {
		for path, stamp := range files {
			if !s.intact(path, stamp, r.read) {
				return false
			}
		}
	}
	return true
}

func (s *Site) intact(path string, stamp Stamp, written time.Time) bool {
	name := s.below(path)
	info, err := os.Lstat(name)
	if err != nil || !info.Mode().IsRegular() || info.Size() != stamp.size() {
		return false
	}
	if !info.ModTime().After(written) {
		return true
	}
	data, err := os.ReadFile(name)
	return err == nil && stampOf(data) == stamp
}

// ours is every file of the site that a publish wrote.
func (s *Site) ours() map[string]bool {
	known := map[string]bool{}
	for _, path := range s.older {
		known[path] = true
	}
	for part, r := range s.records {
		known[recordPath(part)] = true
		for path := range r.Files {
			known[path] = true
		}
		for path := range r.Shared {
			known[path] = true
		}
	}
	return known
}

// folders are the folders that a van's part has for itself: they are swapped
// whole.
func folders(part string) []string {
	if part == Fleet {
		return nil
	}
	return []string{path.Join("hirers", part), path.Join("staff", part)}
}

// inFolders reports whether a path lies in a part's own folders.
func inFolders(part, path string) bool {
	return slices.ContainsFunc(folders(part), func(f string) bool { return strings.HasPrefix(path, f+"/") })
}
