package publication

import (
	"cmp"
	"errors"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"doorpocket/build/pictures"
	"doorpocket/build/render"
	"doorpocket/build/site"
	"doorpocket/build/spec"
	"doorpocket/components/problem"
)

// rowMade is a van's row in the staff's list.
type rowMade = render.StaffRow

// publishing is one publish at work.
type publishing struct {
	job     Job
	site    *site.Site
	census  *census
	staging *site.Staging
	reading *spec.Reading
	made    Made

	mu     sync.Mutex
	vans   []vanMade // done, or as the ledger remembers them
	taken  map[string]bool
	failed atomic.Bool // there is an error: nothing more is rendered
	// trouble is what could not be written. The other vans are read all the same:
	// what is wrong with the fleet can only be said of all of it.
	trouble error
}

func (p *publishing) run() (problem.List, error) {
	c := p.census
	if c.quiet {
		return p.nothingChanged(), p.site.Strangers()
	}
	lib, found := p.job.library()
	found = slices.Clone(found)
	p.reading = spec.Open(p.job.Files, "", lib)
	p.census.in.given(p.reading.Fleet().Register)
	if err := p.begin(); err != nil {
		return nil, err
	}
	err := p.write(&p.made, func() error {
		more, err := p.printAll()
		found.Add(more...)
		if err == nil && found.HasErrors() {
			return errHasErrors
		}
		return err
	})
	if errors.Is(err, errHasErrors) {
		return found, nil
	}
	return found, err
}

// errHasErrors says that the fleet has errors, which the problems tell.
var errHasErrors = errors.New("the fleet has errors")

// nothingChanged counts from the ledger alone.
func (p *publishing) nothingChanged() problem.List {
	found := slices.Clone(p.census.fleet.Problems)
	p.made.Name = p.census.fleet.Name
	for _, file := range p.census.specs {
		v := p.census.fresh[file]
		if p.job.Part.Has(p.census.specs, file) {
			p.count(v)
		}
		found.Add(v.Problems...)
	}
	return found
}

func (p *publishing) count(v *vanMade) {
	p.made.Vans++
	p.made.Pages += v.Pages
	p.made.Labels += v.Row.Labels
}

// begin opens a staging folder: for the whole site where nothing of it stays.
func (p *publishing) begin() error {
	keeps := len(p.census.fresh) > 0 || p.job.Part.some() && len(p.site.Parts()) > 0
	var err error
	p.staging, err = p.site.Stage(!keeps)
	p.taken = map[string]bool{}
	return err
}

// write does the work and puts its result in place; on any error it leaves no
// trace.
func (p *publishing) write(made *Made, work func() error) error {
	err := work()
	if err == nil {
		made.Files = p.staging.Files()
		return p.staging.Finish()
	}
	return errors.Join(err, p.staging.Discard())
}

// printAll writes whatever is not as it should be, and finds every problem of
// the fleet on the way.
func (p *publishing) printAll() (problem.List, error) {
	fleet := p.reading.Fleet()
	p.made.Name = fleet.Name
	var found problem.List
	if p.reading.Broken() {
		p.failed.Store(true)
	}
	press, err := newPress(fleet, p.staging, p.picture, p.census.in.sum)
	if err != nil {
		return nil, err
	}
	var done atomic.Int64
	specs := p.census.specs
	problems := make([]problem.List, len(specs))
	_ = each(len(specs), func(i int) error {
		problems[i] = p.oneVan(press, specs[i])
		if p.job.Progress != nil {
			p.job.Progress(int(done.Add(1)), len(specs))
		}
		return nil // what goes wrong with one van is kept until all are read
	})
	if p.abandoned() {
		return nil, ErrAbandoned
	}
	for _, list := range problems {
		found.Add(list...)
	}
	var all []spec.Summary
	for _, v := range p.sorted() {
		all = append(all, v.Summary)
	}
	shared := p.reading.Close(all, press.shelf.failed())
	found.Add(shared...)
	if found.HasErrors() { // which may be why something could not be written
		return found, nil
	}
	if p.trouble != nil {
		return found, p.trouble
	}
	for _, v := range press.op.Left {
		p.take(v.Code)
	}
	for _, part := range p.site.Parts() {
		if part != site.Fleet && !p.taken[part] {
			p.staging.Remove(part)
			p.made.Reasons = append(p.made.Reasons, Reason{part, "there is no spec of it any more"})
		}
	}
	slices.SortFunc(p.made.Reasons, func(a, b Reason) int { return cmp.Compare(a.Van, b.Van) })
	return found, p.printFleet(press, shared)
}

// abandoned reports whether nobody waits for the publish any more.
func (p *publishing) abandoned() bool {
	select {
	case <-p.job.Abandoned: // never, where it is nil
		return true
	default:
		return false
	}
}

// oneVan takes a van from the ledger, or reads and writes it.
func (p *publishing) oneVan(press *press, file string) problem.List {
	if p.abandoned() {
		return nil
	}
	mine := p.job.Part.Has(p.census.specs, file)
	if before := p.census.fresh[file]; before != nil {
		p.keep(before, mine)
		return before.Problems
	}
	r := p.reading.Van(file)
	found := r.Problems
	if r.Van == nil || r.Van.Code == "" || found.HasErrors() || p.failed.Load() {
		p.failed.Store(p.failed.Load() || found.HasErrors())
		p.skip(r)
		return found
	}
	if !mine {
		p.keep(&vanMade{Summary: r.Summary, Row: press.row(r)}, false)
		return found
	}
	if !p.take(r.Van.Code) {
		p.skip(r)
		return found
	}
	more, err := p.printVan(press, r, p.census.in.of(file, p.census.sum, r))
	found.Add(more...)
	if err != nil || more.HasErrors() {
		p.failed.Store(true)
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.trouble == nil { // a full disk is told once, not once for each van at work
		p.trouble = err
	}
	p.made.Written++
	p.made.Reasons = append(p.made.Reasons, Reason{r.Van.Code, p.census.stale[file]})
	return found
}

// take claims a code for a van; a second one with it is an error that is told
// when all are read.
func (p *publishing) take(code string) bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	again := p.taken[code]
	p.taken[code] = true
	return !again
}

// keep counts a van that stays as it is.
func (p *publishing) keep(v *vanMade, counts bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.vans = append(p.vans, vanMade{Summary: v.Summary, Row: v.Row}) // of a large fleet no more is kept
	p.taken[v.Summary.Code] = true
	if counts {
		p.count(v)
	}
}

// skip notes a van that is not rendered, for the checks of the fleet.
func (p *publishing) skip(r spec.Read) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.vans = append(p.vans, vanMade{Summary: r.Summary})
}

// printVan writes a van that was read.
func (p *publishing) printVan(press *press, r spec.Read, from vanInputs) (problem.List, error) {
	put, found := press.compose(r)
	found.Quote(press.op.Library.Sources)
	found.Quote(r.Texts())
	made := vanMade{Inputs: from, Summary: r.Summary, Row: render.StaffRowOf(press.op, press.kits[0], r, put.guides[0])}
	made.Problems = append(slices.Clone(r.Problems), found...)
	if found.HasErrors() {
		p.skip(r)
		return found, nil
	}
	out, err := press.van(put, r)
	if err != nil {
		p.skip(r)
		if told := (pictureError{}); errors.As(err, &told) {
			return found, nil
		}
		return found, err
	}
	found.Add(out.unusable...)
	made.Problems = append(made.Problems, out.unusable...)
	made.Row.Survey.Unshown = unshown(made.Problems)
	made.Pages, made.Pictures = out.pages, out.pictures
	if err := p.staging.Seal(r.Van.Code, made); err != nil {
		p.skip(r)
		return found, err
	}
	p.keep(&made, true)
	return found, nil
}

// printFleet writes the pages of the whole fleet, with the problems of it that
// are none of a single van.
func (p *publishing) printFleet(press *press, found problem.List) error {
	var vans []spec.Summary
	var rows []render.StaffRow
	for _, v := range p.sorted() {
		vans = append(vans, v.Summary)
		rows = append(rows, v.Row)
	}
	told := render.StaffFleet{Rows: rows, Booklets: press.printed, Changed: p.job.Changes != nil, Unshown: unshown(found)}
	if err := press.fleet(vans, told, p.job.Changes); err != nil {
		return err
	}
	codes, err := p.left(press)
	if err != nil {
		return err
	}
	if err := p.labels(press.op.Register); err != nil {
		return err
	}
	for _, v := range vans {
		codes = append(codes, v.Code)
	}
	p.staging.Name(codes)
	found = slices.Clone(found)
	found.Sort()
	found.Dedupe()
	return p.staging.Seal(site.Fleet, fleetMade{Name: press.op.Name, Shared: p.census.shared, Rest: p.census.rest, Agreed: p.census.agreed, Problems: found})
}

// sorted gives the vans by code; of those that share one, by file.
func (p *publishing) sorted() []vanMade {
	slices.SortFunc(p.vans, func(a, b vanMade) int {
		return cmp.Or(cmp.Compare(a.Summary.Code, b.Summary.Code), cmp.Compare(a.Summary.At.File, b.Summary.At.File))
	})
	return p.vans
}

// picture takes a picture from the site where it is there already, or makes it.
func (p *publishing) picture(file string) (picture, error) {
	if there, ok := p.census.pictures[file]; ok {
		return there, nil
	}
	if made, ok := p.again(file); ok {
		return picture{Made: made}, nil
	}
	made, err := p.reading.Picture(file)
	return picture{Made: made}, err
}

// again reads a picture that was made before out of the site: it may be written
// anew, and so much less has to be done than for a photograph.
func (p *publishing) again(file string) (pictures.Made, bool) {
	earlier, ok := p.census.earlier[file]
	if !ok || len(earlier.Stamps) != len(earlier.Made.All()) {
		return pictures.Made{}, false
	}
	made := pictures.Made{Variants: slices.Clone(earlier.Made.Variants), Modern: slices.Clone(earlier.Made.Modern)}
	for i, v := range made.Each() {
		if v.Data, ok = p.site.Read(pathOf(*v), earlier.Stamps[i]); !ok {
			return pictures.Made{}, false
		}
	}
	return made, true
}

// each does the work for every number below n, a few at a time, and gives the
// errors.
func each(n int, do func(i int) error) error {
	errs := make([]error, min(n, runtime.GOMAXPROCS(0)))
	var next atomic.Int64
	var failed atomic.Bool
	var group sync.WaitGroup
	for worker := range errs {
		group.Go(func() {
			for !failed.Load() {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				if errs[worker] = do(i); errs[worker] != nil {
					failed.Store(true)
				}
			}
		})
	}
	group.Wait()
	return errors.Join(errs...)
}
