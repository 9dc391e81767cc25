// Package publication is the pipeline from a fleet folder to its site: each van
// is read, put together, rendered and written, and then forgotten. What has not
// changed since the last publish stays as it is.
package publication

import (
	"errors"
	"io/fs"
	"slices"
	"strings"

	"doorpocket/build/compare"
	"doorpocket/build/site"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
)

// Job is a fleet to be published.
type Job struct {
	Files   fs.FS  // the fleet folder
	Prefix  string // shown before the names of its files in problems
	Target  string // the folder of the site
	Version string // of the program: another one makes other pages
	Part    Part   // of the fleet, the zero Part for all of it
	All     bool   // makes every page anew, whatever has changed
	Durable bool   // what is published outlasts a power cut; see site.Durable
	// Library is what systems are taken from, nil for the one that comes with the
	// program.
	Library func() (*components.Library, problem.List)
	// Abandoned is closed where nobody waits for the publish any more; nil for never.
	// It then ends soon, with ErrAbandoned, and the last site stays.
	Abandoned <-chan struct{}
	// Changes is what changed since an earlier state, for a page of the staff tree,
	// nil for none.
	Changes *compare.Report
	// Progress is told of every van that is done; it may be nil.
	Progress func(done, total int)
}

// ErrAbandoned is the error of a publish that nobody waited for.
var ErrAbandoned = errors.New("nobody waits for this publish any more")

// Made counts what a site holds after a publish, and what of it is new.
type Made struct {
	Name                string // of the fleet
	Vans, Pages, Labels int
	Written             int      // vans that were made anew
	Files               int      // files that were written
	Reasons             []Reason // why each of them was, in order
}

// Reason tells why a van was made anew, or is gone.
type Reason struct{ Van, Why string }

// Run publishes a fleet. Where there are errors among the problems nothing is
// published; should anything else fail, that is the error. In both cases the
// last site stays as it was.
func Run(job Job) (Made, problem.List, error) {
	s, err := site.Open(job.Target)
	if err != nil {
		return Made{}, nil, err
	}
	if job.Durable {
		s.Durable()
	}
	p := &publishing{job: job, site: s, census: takeCensus(job, s)}
	found, err := p.run()
	return p.made, shown(found, job.Prefix), errors.Join(err, s.Close())
}

// shown puts problems in order and the fleet folder's name before its files.
func shown(list problem.List, prefix string) problem.List {
	list = slices.Clone(list)
	name := func(file string) string {
		if prefix == "" || strings.HasPrefix(file, "library/") {
			return file
		}
		return prefix + file
	}
	for i := range list {
		list[i].File = name(list[i].File)
		list[i].Notes = slices.Clone(list[i].Notes)
		for k := range list[i].Notes {
			list[i].Notes[k].File = name(list[i].Notes[k].File)
		}
	}
	list.Sort()
	list.Dedupe()
	return list
}

// Publish writes the site of a fleet that has been read without errors into
// the folder target. Should anything fail, the site that was there stays.
func Publish(fleet *spec.Fleet, target, version string) (Made, error) {
	s, err := site.Open(target)
	if err != nil {
		return Made{}, err
	}
	made, err := publishRead(fleet, s, version)
	return made, errors.Join(err, s.Close())
}

func publishRead(fleet *spec.Fleet, s *site.Site, version string) (Made, error) {
	p := &publishing{job: Job{Version: version}, site: s, census: &census{all: true}}
	if err := p.begin(); err != nil {
		return Made{}, err
	}
	err := p.write(&p.made, func() error {
		press, err := newPress(fleet, p.staging, func(file string) (picture, error) {
			made, err := fleet.Picture(file)
			return picture{Made: made}, err
		}, func(string) string { return "" })
		if err != nil {
			return err
		}
		reads := fleet.Reads()
		err = each(len(reads), func(i int) error {
			_, err := p.printVan(press, reads[i], vanInputs{})
			return err
		})
		if err != nil {
			return err
		}
		return p.printFleet(press, nil)
	})
	return p.made, err
}

// library reads the library that the job names.
func (j Job) library() (*components.Library, problem.List) {
	if j.Library != nil {
		return j.Library()
	}
	return components.Load(components.Embedded())
}
