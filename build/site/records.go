package site

import (
	"maps"
	"slices"
	"sync"
	"time"
)

// records are those of the parts of a site, or of what is about to become one.
// They stay on disk: of a large fleet only the last few that were asked for are
// in memory. They are safe for concurrent use.
type records struct {
	file   func(part string) string // the name of a part's record
	mu     sync.Mutex
	briefs map[string]*brief
	recent map[string]*Record
}

// recentMost is how many records are in memory, besides those that are damaged:
// more than there are parts at work at a time.
const recentMost = 32

// brief is what is remembered of a record that has been read.
type brief struct {
	read    time.Time // as in Record
	shared  map[string]Stamp
	damaged *Record // nil for one that is whole
}

func newRecords(file func(part string) string) *records {
	return &records{file: file, briefs: map[string]*brief{}, recent: map[string]*Record{}}
}

// add tells that there is a record of a part.
func (r *records) add(part string) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.briefs[part] = nil
}

// lose tells that there must have been a record of a part.
func (r *records) lose(part string) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.briefs[part] = &brief{damaged: &Record{damaged: true}}
}

func (r *records) has(part string) bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	_, ok := r.briefs[part]
	return ok
}

// parts lists the parts of which there is a record, in order.
func (r *records) parts() []string {
	if r == nil { // a site of which only the folder is known
		return nil
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	return slices.Sorted(maps.Keys(r.briefs))
}

// of gives the record of a part, nil where there is none.
func (r *records) of(part string) *Record {
	r.mu.Lock()
	b, ok := r.briefs[part]
	record := r.recent[part]
	if b != nil && b.damaged != nil {
		record = b.damaged
	}
	r.mu.Unlock()
	if !ok || record != nil {
		return record
	}
	record = readRecord(r.file(part))
	b = &brief{read: record.read, shared: record.Shared}
	if record.damaged {
		b.damaged = record
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	if len(r.recent) >= recentMost {
		clear(r.recent)
	}
	r.briefs[part], r.recent[part] = b, record
	return record
}

// brief gives what is remembered of the record of a part, which there must be.
func (r *records) brief(part string) *brief {
	r.mu.Lock()
	b := r.briefs[part]
	r.mu.Unlock()
	if b != nil {
		return b
	}
	r.of(part)
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.briefs[part]
}
