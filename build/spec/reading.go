package spec

import (
	"io/fs"
	"iter"
	"maps"
	"runtime"
	"slices"
	"strings"
	"sync"

	"doorpocket/build/label"
	"doorpocket/build/pictures"
	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// Reading is a fleet folder of which everything is read that vans share. The
// vans are read one at a time and not kept, so that a fleet may be larger than
// the memory.
type Reading struct {
	l  *loader
	mu sync.Mutex
	// shots are the pictures that vans read so far name.
	shots map[string][]problem.Span
}

// Summary is what the whole fleet needs to know of a van.
type Summary struct {
	Code, Name string
	Build      string
	SpecDate   manifest.Date
	At         problem.Span // of the code
	Labels     label.Van    // what is fitted, as the register is compared with it
	Sound      bool         // all of it could be read
}

// Read is a spec as read: what hirers may know and what only staff may see,
// apart.
type Read struct {
	Van      *Van // nil where the file could not be read
	Staff    *Staff
	Summary  Summary
	Listings []Listing         // the spec, then the build sheet that it names and those under it
	Sheet    *Sheet            // nil for none
	Sources  map[string][]byte // the spec by the name shown in problems
	Problems problem.List
	shots    map[string][]problem.Span
}

// Sheet is what a build sheet says of its vans, with those under it and without
// defaults. It is shared by all of them: do not change it.
type Sheet struct {
	Name   string
	Body   map[string]fact.Value
	Fitted []*Fitted
}

// Listing is the text of a file, by its name in the fleet folder.
type Listing struct {
	File string
	Data []byte
}

// Open reads what the vans of a fleet folder share.
func Open(files fs.FS, prefix string, lib *components.Library) *Reading {
	return &Reading{l: open(files, prefix, lib), shots: map[string][]problem.Span{}}
}

// OpenForLabels is Open for whoever does not mind that the register of labels is
// behind the specs.
func OpenForLabels(files fs.FS, prefix string, lib *components.Library) *Reading {
	r := Open(files, prefix, lib)
	r.l.settling = true
	return r
}

// Fleet is what was read, without vans.
func (r *Reading) Fleet() *Fleet { return r.l.fleet }

// Specs lists the files of the vans.
func (r *Reading) Specs() []string { return r.l.specs() }

// Van reads one spec. It is safe for concurrent use.
func (r *Reading) Van(file string) Read {
	read := r.l.readVan(file)
	read.Problems.Quote(read.Sources)
	read.Problems.Quote(r.l.fleet.Sources)
	read.Sources = nil
	r.mu.Lock()
	defer r.mu.Unlock()
	for name, spans := range read.shots {
		r.shots[name] = append(r.shots[name], spans...)
	}
	return read
}

// Vans reads all specs, in order, a few ahead of whoever asks for them: no more are
// held at a time than there are processors.
func (r *Reading) Vans() iter.Seq[Read] { return ahead(r.Specs(), r.Van) }

// Skim reads all vans and keeps of them only what the register is compared with. No
// picture is looked at. It gives the problems of the whole fleet, in order.
func (r *Reading) Skim() problem.List {
	var found problem.List
	var all []Summary
	for read := range r.Vans() {
		found.Add(read.Problems...)
		all = append(all, read.Summary)
	}
	found.Add(r.Close(all, nil)...)
	found.Sort()
	found.Dedupe()
	return found
}

// Picture makes one picture that vans name. It is safe for concurrent use.
func (r *Reading) Picture(file string) (pictures.Made, error) {
	return r.l.makePicture(file, pictures.Make)
}

// Close gives the problems of all but the vans alone: of what they share, of
// the fleet as a whole, and of pictures that could not be made.
func (r *Reading) Close(vans []Summary, pictures map[string]error) problem.List {
	r.l.checkFleet(vans)
	for _, file := range slices.Sorted(maps.Keys(pictures)) {
		spans := slices.Concat(r.l.shots[file], r.shots[file])
		if len(spans) == 0 {
			continue
		}
		slices.SortFunc(spans, bySpan)
		r.l.badPicture(spans, file, pictures[file])
	}
	r.l.problems.Quote(r.l.fleet.Sources)
	return r.l.problems
}

func bySpan(a, b problem.Span) int {
	if c := strings.Compare(a.File, b.File); c != 0 {
		return c
	}
	return a.Start.Line - b.Start.Line
}

// Broken reports whether what the vans share has errors, so that nothing can be
// rendered; the vans are still read for theirs.
func (r *Reading) Broken() bool { return r.l.problems.HasErrors() }

// Texts gives the listings by their names in the fleet folder.
func (r Read) Texts() map[string][]byte {
	texts := map[string][]byte{}
	for _, l := range r.Listings {
		texts[l.File] = l.Data
	}
	return texts
}

// Specs lists the specs of a fleet folder.
func Specs(files fs.FS) []string {
	names, _ := tomlFiles(files, "vans")
	return names
}

// specs lists the files of the vans, and warns of others in their folder.
func (l *loader) specs() []string { return l.list("vans") }

// readVan reads a spec with what the loader has read before, which it leaves
// as it is.
func (l *loader) readVan(file string) Read {
	fleet := *l.fleet
	fleet.Staff, fleet.Sources = map[string]*Staff{}, map[string][]byte{}
	own := &loader{settling: l.settling, files: l.files, prefix: l.prefix, given: l.given, fleet: &fleet, prose: l.prose, sheets: l.sheets,
		torn: map[string]bool{}, shots: map[string][]problem.Span{}, albums: l.albums, used: map[string]bool{}, extra: l.extra}
	v := own.van(file)
	read := Read{Van: v, Sources: fleet.Sources, Problems: own.problems, shots: own.shots}
	if v == nil {
		return read
	}
	read.Staff = fleet.Staff[v.Code]
	read.Summary = Summary{Code: v.Code, Name: v.Name, Build: v.Build, SpecDate: v.SpecDate, At: v.At}
	read.Summary.Labels, read.Summary.Sound = own.labelVan(v), !own.problems.HasErrors()
	read.Listings = []Listing{{File: file, Data: fleet.Sources[l.prefix+file]}}
	if s := l.sheets[v.Build]; s != nil {
		read.Sheet = &Sheet{Name: s.name, Body: s.body, Fitted: s.fitted}
	}
	seen := map[string]bool{}
	for s := l.sheets[v.Build]; s != nil && !seen[s.name]; s = l.sheets[s.build] {
		seen[s.name] = true
		read.Listings = append(read.Listings, Listing{File: s.file, Data: l.fleet.Sources[l.prefix+s.file]})
	}
	return read
}

// ahead reads specs on all processors, a few ahead of whoever asks for them, and
// gives them in the order of the files, so that nothing depends on how many
// processors there are.
func ahead(files []string, read func(file string) Read) iter.Seq[Read] {
	return func(yield func(Read) bool) {
		stop, begun := make(chan struct{}), make(chan chan Read, runtime.GOMAXPROCS(0))
		defer close(stop)
		go func() {
			defer close(begun)
			for _, file := range files {
				one := make(chan Read, 1)
				select {
				case begun <- one:
				case <-stop:
					return
				}
				go func() { one <- read(file) }()
			}
		}()
		for one := range begun {
			if !yield(<-one) {
				return
			}
		}
	}
}

// take puts a van that was read into the fleet.
func (l *loader) take(r Read) {
	l.problems.Add(r.Problems...)
	maps.Copy(l.fleet.Sources, r.Sources)
	for file, spans := range r.shots {
		l.shot(file, spans...)
	}
	if r.Van == nil {
		return
	}
	at, _ := slices.BinarySearchFunc(l.fleet.Vans, r.Van, func(a, b *Van) int {
		if a.Code <= b.Code { // after those with the same code
			return -1
		}
		return 1
	})
	l.fleet.Vans = slices.Insert(l.fleet.Vans, at, r.Van)
	if r.Staff != nil {
		l.fleet.Staff[r.Van.Code] = r.Staff
	}
	l.fleet.read[r.Van] = r
}

// Picture makes one of the Pictures of a fleet that was loaded again, with modern
// variants.
func (f *Fleet) Picture(file string) (pictures.Made, error) {
	if _, ok := f.Pictures[file]; !ok {
		return pictures.Made{}, nil
	}
	return f.make(file)
}

// Reads gives all vans of a fleet that was loaded, as they were read.
func (f *Fleet) Reads() []Read {
	var all []Read
	for _, v := range f.Vans {
		all = append(all, f.read[v])
	}
	return all
}
