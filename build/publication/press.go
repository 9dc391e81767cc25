package publication

import (
	"maps"
	"runtime"
	"slices"
	"sync"

	"doorpocket/build/booklets"
	"doorpocket/build/compare"
	"doorpocket/build/guide"
	"doorpocket/build/offline"
	"doorpocket/build/pictures"
	"doorpocket/build/render"
	"doorpocket/build/site"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
	"doorpocket/layouts"
)

// press holds what the pages of all vans need, and the staging folder that they
// go to. It is safe for concurrent use.
type press struct {
	op      *spec.Operator
	render  *render.Renderer
	kits    []*guide.Kit          // the first is of the main language
	duties  []*components.Routine // the operator's own, for staff
	printed *booklets.List
	staging *site.Staging
	shelf   *shelf
}

func newPress(fleet *spec.Fleet, staging *site.Staging, how func(file string) (picture, error), sum func(file string) string) (*press, error) {
	r, err := render.New(layouts.Files())
	if err != nil {
		return nil, err
	}
	op := &fleet.Operator
	p := &press{op: op, render: r, duties: fleet.StaffRoutines, printed: fleet.Booklets, staging: staging, shelf: &shelf{make: how, sum: sum, staging: staging, places: make(chan struct{}, runtime.GOMAXPROCS(0)), made: map[string]*shelved{}}}
	for _, lang := range op.Languages {
		p.kits = append(p.kits, guide.NewKit(op, lang))
	}
	return p, nil
}

// composed is what is put together of a van: its guides, and apart from them
// the routines for staff, in the main language.
type composed struct {
	guides []*guide.Guide
	staff  []*guide.Routine
}

// compose puts a van together, with the problems that show only then.
func (p *press) compose(r spec.Read) (composed, problem.List) {
	var c composed
	var found problem.List
	for _, kit := range p.kits {
		g, problems := kit.Build(r.Van)
		c.guides = append(c.guides, g)
		found.Add(problems...)
	}
	var added spec.Added
	if r.Staff != nil {
		added = r.Staff.Added
	}
	var problems problem.List
	c.staff, problems = p.kits[0].StaffRoutines(c.guides[0], p.duties, added)
	found.Add(problems...)
	return c, found
}

// printed counts what was written of a van.
type printed struct {
	pages    int
	pictures []madeFrom
	unusable problem.List // pictures that were picked up by their names and could not be made
}

// sums are those of the pictures' files as a phone's list has them.
func (p printed) sums() map[string]string {
	sums := map[string]string{}
	for _, made := range p.pictures {
		for i, v := range made.Made.All() {
			sums[v.Name] = sumOnPhone(made.Stamps[i])
		}
	}
	return sums
}

// sumOnPhone is what a phone's list of files holds of a stamp: both begin with the
// SHA-256 of the content.
func sumOnPhone(stamp site.Stamp) string { return string(stamp)[:offline.SumLong] }

// van writes all pages of a van, and the script that keeps them on phones.
func (p *press) van(c composed, r spec.Read) (printed, error) {
	var out printed
	shown, err := p.pictures(r.Van, &out)
	if err != nil {
		return out, err
	}
	var listed []offline.File
	put := func(f render.File) error {
		stamp, err := p.staging.Write(r.Van.Code, "hirers/"+f.Path, f.Data)
		if err == nil {
			listed = append(listed, offline.File{Path: f.Path, Sum: sumOnPhone(stamp)})
		}
		return err
	}
	for _, g := range c.guides {
		op := *p.op
		op.Pictures = shown
		g.Operator = &op
		if err := p.render.EachOfVan(g, put); err != nil {
			return out, err
		}
	}
	out.pages = len(listed) - len(c.guides) // each has one file of search documents
	worker, err := p.render.Worker(c.guides, listed, out.sums())
	if err != nil {
		return out, err
	}
	if err := put(worker); err != nil {
		return out, err
	}
	return out, p.render.StaffVan(p.kits[0], c.guides[0], r, c.staff, p.putter(r.Van.Code, "staff/"))
}

// putter writes files of a part into a tree.
func (p *press) putter(part, tree string) func(render.File) error {
	return func(f render.File) error {
		_, err := p.staging.Write(part, tree+f.Path, f.Data)
		return err
	}
}

// putAll writes files of a part into a tree.
func (p *press) putAll(part, tree string, files []render.File) error {
	put := p.putter(part, tree)
	for _, f := range files {
		if err := put(f); err != nil {
			return err
		}
	}
	return nil
}

// pictures gives the pictures that a van shows, made and written.
func (p *press) pictures(v *spec.Van, out *printed) (map[string]pictures.Made, error) {
	p.shelf.fetch(v)
	shown := map[string]pictures.Made{}
	for _, f := range v.Fitted {
		for _, name := range f.Pictures {
			if _, twice := shown[name.File]; twice {
				continue
			}
			made, err := p.shelf.take(name.File)
			switch {
			case err != nil && name.ByName:
				out.unusable.Add(spec.UnusablePicture("", name.File, err))
				continue
			case err != nil:
				return nil, pictureError{err}
			case len(made.Made.Variants) == 0: // which was told when the fleet was read
				continue
			}
			shown[name.File] = made.Made
			out.pictures = append(out.pictures, made)
			for i, variant := range made.Made.All() {
				p.staging.Use(v.Code, pathOf(variant), made.Stamps[i])
			}
		}
	}
	return shown, nil
}

// pathOf is where a variant of a picture lies below a site.
func pathOf(v pictures.Variant) string { return "hirers/" + render.PictureFolder + v.Name }

// pictureError is that of a picture that could not be made, which is told as a
// problem of the fleet.
type pictureError struct{ error }

// row is what the fleet's pages say of a van whose own pages are not written. Its
// guide is put together only where there is a booklet to compare it with.
func (p *press) row(r spec.Read) render.StaffRow {
	var g *guide.Guide
	if _, ok := p.printed.Of(r.Van.Code); ok {
		g, _ = p.kits[0].Build(r.Van) // its problems are for whoever writes its pages
	}
	row := render.StaffRowOf(p.op, p.kits[0], r, g)
	row.Survey.Unshown = unshown(r.Problems)
	return row
}

// fleet writes the pages of the whole fleet and what all pages use, with what
// changed since an earlier state where that is asked for.
func (p *press) fleet(vans []spec.Summary, told render.StaffFleet, changes *compare.Report) error {
	pages, err := p.render.Fleet(p.op, vans)
	if err != nil {
		return err
	}
	pages = append(pages, render.Roots(vans)...)
	put := p.putter(site.Fleet, "hirers/")
	for _, f := range append(pages, p.render.Shared()...) {
		if err := put(render.File(f)); err != nil {
			return err
		}
	}
	staff, err := p.render.Staff(p.op, told)
	if err != nil {
		return err
	}
	if changes != nil {
		page, err := p.render.Changes(p.op, changes)
		if err != nil {
			return err
		}
		staff = append(staff, page)
	}
	return p.putAll(site.Fleet, "staff/", staff)
}

// picture is a picture for pages. Where it has Stamps, in the order of all its
// variants, its files are in the site already.
type picture struct {
	Made   pictures.Made
	Stamps []site.Stamp
}

// madeFrom is a picture by its file, without the data of its variants.
type madeFrom struct {
	File string `json:"file"`
	Sum  string `json:"sum,omitempty"` // of the file
	picture
}

// shelf makes every picture once, however many vans show it, and keeps only
// what pages need to know of it.
type shelf struct {
	make    func(file string) (picture, error)
	sum     func(file string) string // of a picture's file
	staging *site.Staging
	// places are for those at work: a photograph takes much memory while it is made
	// small, so there are no more of them than processors.
	places chan struct{}
	mu     sync.Mutex
	made   map[string]*shelved
}

type shelved struct {
	once sync.Once
	made madeFrom
	err  error
}

// fetch makes the pictures of a van, as many at a time as there is room for. What
// goes wrong with one is told to whoever takes it.
func (s *shelf) fetch(v *spec.Van) {
	var files []string
	for _, f := range v.Fitted {
		for _, p := range f.Pictures {
			files = append(files, p.File)
		}
	}
	_ = each(len(files), func(i int) error {
		_, _ = s.take(files[i])
		return nil
	})
}

// take gives a picture that is written already, or will be by this.
func (s *shelf) take(file string) (madeFrom, error) {
	s.mu.Lock()
	one := s.made[file]
	if one == nil {
		one = &shelved{}
		s.made[file] = one
	}
	s.mu.Unlock()
	one.once.Do(func() {
		s.places <- struct{}{}
		defer func() { <-s.places }()
		one.made, one.err = s.write(file)
	})
	return one.made, one.err
}

func (s *shelf) write(file string) (madeFrom, error) {
	p, err := s.make(file)
	if err != nil {
		return madeFrom{}, err
	}
	out := madeFrom{File: file, Sum: s.sum("pictures/" + file), picture: p}
	if p.Stamps != nil {
		return out, nil
	}
	for _, v := range out.Made.Each() {
		stamp, err := s.staging.Share(pathOf(*v), v.Data)
		if err != nil {
			return madeFrom{}, err
		}
		v.Data = nil
		out.Stamps = append(out.Stamps, stamp)
	}
	return out, nil
}

// failed gives the errors of pictures that could not be made.
func (s *shelf) failed() map[string]error {
	s.mu.Lock()
	defer s.mu.Unlock()
	errs := map[string]error{}
	for _, file := range slices.Sorted(maps.Keys(s.made)) {
		if err := s.made[file].err; err != nil {
			errs[file] = err
		}
	}
	return errs
}
