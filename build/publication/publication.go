// Package publication is the pipeline from a fleet to its site: guides are put
// together, rendered and written, van by van.
package publication

import (
	"errors"
	"runtime"
	"sync"

	"doorpocket/build/guide"
	"doorpocket/build/render"
	"doorpocket/build/site"
	"doorpocket/build/spec"
	"doorpocket/layouts"
)

// Made counts what a publish wrote.
type Made struct{ Vans, Pages, Labels int }

// Publish writes the site of a fleet without errors into the folder target.
// Should anything fail, the site that was there stays.
func Publish(fleet *spec.Fleet, target, version string) (Made, error) {
	r, err := render.New(layouts.Files())
	if err != nil {
		return Made{}, err
	}
	staging, err := site.Begin(target, version)
	if err != nil {
		return Made{}, err
	}
	w := work{fleet: fleet, render: r, staging: staging}
	for _, step := range []func() error{w.shared, w.pictures, w.vans, w.staff, staging.Finish} {
		if err := step(); err != nil {
			return Made{}, errors.Join(err, staging.Discard())
		}
	}
	return w.made, nil
}

type work struct {
	fleet   *spec.Fleet
	render  *render.Renderer
	staging *site.Staging
	mu      sync.Mutex
	made    Made
}

// shared writes what pages of all vans use, and the pages of the whole fleet.
func (w *work) shared() error {
	files := w.render.Shared()
	pages, err := w.render.Fleet(&w.fleet.Operator, w.fleet.Vans)
	if err != nil {
		return err
	}
	for _, f := range append(pages, files...) {
		if err := w.staging.Write("hirers/"+f.Path, f.Data); err != nil {
			return err
		}
	}
	return nil
}

// vans writes the guides, several vans at a time and no more in memory than
// there are workers.
func (w *work) vans() error {
	for _, lang := range w.fleet.Languages {
		kit := guide.NewKit(&w.fleet.Operator, lang)
		err := each(w.fleet.Vans, func(v *spec.Van) error { return w.van(kit, v) })
		if err != nil {
			return err
		}
	}
	w.made.Vans = len(w.fleet.Vans)
	return nil
}

func (w *work) van(kit *guide.Kit, v *spec.Van) error {
	g, _ := kit.Build(v) // its problems were told when the fleet was loaded
	files, err := w.render.Van(g)
	if err != nil {
		return err
	}
	for _, f := range files {
		if err := w.staging.Write("hirers/"+f.Path, f.Data); err != nil {
			return err
		}
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	w.made.Pages += len(files) - 1 // one is the search documents
	if g.Main {
		for _, p := range g.Pages {
			if p.Code != "" {
				w.made.Labels++
			}
		}
	}
	return nil
}

// staff writes the tree that only staff see.
func (w *work) staff() error {
	files, err := w.render.Staff(w.fleet)
	if err != nil {
		return err
	}
	for _, f := range files {
		if err := w.staging.Write("staff/"+f.Path, f.Data); err != nil {
			return err
		}
	}
	return nil
}

// each does the work for all vans, a few at a time, and gives the errors.
func each(vans []*spec.Van, do func(*spec.Van) error) error {
	queue := make(chan *spec.Van)
	errs := make([]error, runtime.GOMAXPROCS(0))
	var group sync.WaitGroup
	for i := range errs {
		group.Go(func() {
			for v := range queue {
				if errs[i] == nil {
					errs[i] = do(v)
				}
			}
		})
	}
	for _, v := range vans {
		queue <- v
	}
	close(queue)
	group.Wait()
	return errors.Join(errs...)
}
