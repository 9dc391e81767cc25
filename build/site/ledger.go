package site

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
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

	read    time.Time // when all that it tells was in place; zero where it cannot be trusted
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

// readLedger finds of which parts there are records. One that is damaged, or of
// another version, only tells which files are ours.
func (s *Site) readLedger() error {
	s.records = newRecords(func(part string) string { return s.below(recordPath(part)) })
	entries, err := os.ReadDir(s.below(ledgerFolder))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("cannot read the ledger of %s: %w. Check the folder %s and its permissions, or name another site with --out", s.target, reason(err), s.below(ledgerFolder))
	}
	for _, e := range entries {
		if part, ok := strings.CutSuffix(e.Name(), ".json"); ok && !e.IsDir() { // any other is no file of ours, and is found as such
			s.records.add(part)
		}
	}
	s.missLost()
	if fleet := s.records.of(Fleet); fleet != nil {
		s.moved = s.anyTouched(trees, fleet.read)
	}
	if data, err := os.ReadFile(s.below("ledger.json")); err == nil {
		s.older = append(salvaged(data), "ledger.json")
	}
	return nil
}

// missLost counts parts that must have had a record among the damaged ones.
func (s *Site) missLost() {
	if len(s.records.briefs) == 0 {
		return
	}
	fleet := s.records.of(Fleet)
	if fleet == nil {
		s.records.lose(Fleet)
		return
	}
	for _, part := range fleet.Parts {
		if _, err := os.Lstat(s.below(folders(part)[0])); err == nil && !s.records.has(part) {
			s.records.lose(part)
		}
	}
}

// readRecord reads a record. One that cannot be read is damaged.
func readRecord(name string) *Record {
	r := &Record{}
	info, err := os.Lstat(name)
	if err != nil {
		return &Record{damaged: true}
	}
	data, err := os.ReadFile(name)
	if err != nil {
		return &Record{damaged: true}
	}
	if err := json.Unmarshal(data, r); err != nil || r.Format != ledgerFormat || !r.valid() {
		r = &Record{damaged: true, Files: map[string]Stamp{}}
		for _, path := range salvaged(data) {
			r.Files[path] = ""
		}
		return r
	}
	r.read = info.ModTime()
	return r
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
func (s *Site) Parts() []string { return s.records.parts() }

// Made fills in what the maker of a part wanted to be remembered. It reports
// whether there was anything that can be trusted.
func (s *Site) Made(part string, made any) bool {
	r := s.records.of(part)
	return r != nil && !r.damaged && json.Unmarshal(r.Made, made) == nil
}

// Damaged reports whether a part has a record that cannot be used.
func (s *Site) Damaged(part string) bool {
	return s.records.has(part) && s.records.brief(part).damaged != nil
}

// loose are the files that publishes wrote but for those that are in the record
// of a single van.
func (s *Site) loose() map[string]bool {
	known := map[string]bool{}
	for _, path := range s.older {
		known[path] = true
	}
	add := func(files map[string]Stamp) {
		for path := range files {
			known[path] = true
		}
	}
	for _, part := range s.records.parts() {
		known[recordPath(part)] = true
		b := s.records.brief(part)
		add(b.shared)
		if b.damaged != nil {
			add(b.damaged.Files)
		}
	}
	if fleet := s.records.of(Fleet); fleet != nil {
		add(fleet.Files)
	}
	return known
}

// partOf is the part whose folders a path lies in, where it is one of a van.
func partOf(path string) string {
	_, rest, _ := strings.Cut(path, "/")
	part, _, _ := strings.Cut(rest, "/")
	return part
}

// trees are the folders in which all parts lie. No publish changes them later than
// it writes the record of Fleet.
var trees = []string{"hirers", "staff"}

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
