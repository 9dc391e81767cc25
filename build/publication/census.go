package publication

import (
	"slices"

	"doorpocket/build/label"
	"doorpocket/build/pictures"
	"doorpocket/build/site"
	"doorpocket/build/spec"
	"doorpocket/components/problem"
)

// census compares a fleet folder with what the ledger remembers.
type census struct {
	in       *inputs
	all      bool // every van is made anew
	shared   []Input
	sum      string // of shared
	rest     []Input
	agreed   string // the sum of the register with which all vans will be made, "" where only a part of them is looked at
	specs    []string
	fresh    map[string]*vanMade // by spec: vans that can stay as they are
	stale    map[string]string   // by spec: why it cannot
	left     bool                // there are parts of which no spec is known
	pictures map[string]picture  // that vans show which stay, by file
	earlier  map[string]madeFrom // that the site has of vans which do not, by file, of files that are the same
	fleet    fleetMade
	quiet    bool // nothing at all has changed
}

func takeCensus(job Job, s *site.Site) *census {
	c := &census{in: newInputs(job.Files), all: job.All, specs: spec.Specs(job.Files), fresh: map[string]*vanMade{}, stale: map[string]string{}}
	c.shared = c.in.shared(job.Version)
	c.sum = sumOfInputs(c.shared)
	c.rest = c.in.rest()
	if job.Changes != nil {
		c.rest = append(c.rest, Input{"what changed since an earlier state", job.Changes.Sum()})
	}
	known := s.Made(site.Fleet, &c.fleet)
	labels := c.in.sum(label.RegisterFile)
	c.in.agreed = known && c.fleet.Agreed != "" && c.fleet.Agreed == labels
	if c.in.agreed || !job.Part.some() {
		c.agreed = labels
	}
	records := c.records(s, known)
	c.pictures, c.earlier = map[string]picture{}, map[string]madeFrom{}
	for _, file := range c.specs {
		r := records[file]
		if r == nil {
			r = &recorded{reason: c.why(s, known, file, nil)}
		}
		if r.reason != "" {
			c.stale[file] = r.reason
			for _, m := range r.pictures {
				c.earlier[m.File] = m
			}
			continue
		}
		c.fresh[file] = r.made
		for _, m := range r.made.Pictures {
			c.pictures[m.File] = m.picture
		}
		r.made.Pictures = nil
	}
	c.quiet = known && len(c.stale) == 0 && !c.left && !c.all &&
		slices.Equal(c.fleet.Shared, c.shared) && slices.Equal(c.fleet.Rest, c.rest) && s.Intact(site.Fleet)
	return c
}

// recorded is a van as the ledger remembers it. Only of one that stays is more
// kept than the reason why it must be made anew.
type recorded struct {
	file, reason string
	made         *vanMade
	left         bool       // it has left the fleet, and its pages are as they were written
	pictures     []madeFrom // of one that does not stay: those that need not be made anew
}

// records reads what is remembered of the vans, by spec: each once, and no more of
// it is kept than is needed.
func (c *census) records(s *site.Site, known bool) map[string]*recorded {
	parts := s.Parts()
	all := make([]*recorded, len(parts))
	_ = each(len(parts), func(i int) error {
		if parts[i] != site.Fleet {
			all[i] = c.recorded(s, known, parts[i])
		}
		return nil
	})
	records := map[string]*recorded{}
	for i, part := range parts {
		switch r := all[i]; {
		case part == site.Fleet, r != nil && r.left:
		case r == nil || r.file == "":
			c.left = true
		default:
			c.left = c.left || records[r.file] != nil
			records[r.file] = r
		}
	}
	return records
}

// recorded reads what is remembered of a part, nil where that is of no use.
func (c *census) recorded(s *site.Site, known bool, part string) *recorded {
	var m vanMade
	if !s.Made(part, &m) || m.Summary.Code != part {
		return nil
	}
	if m.Left {
		return &recorded{left: s.Intact(part)}
	}
	file := m.Inputs.Spec.Name
	if _, there := slices.BinarySearch(c.specs, file); !there {
		return nil
	}
	r := &recorded{file: file, reason: c.why(s, known, file, &m)}
	if r.reason != "" {
		r.pictures = c.unchanged(m.Pictures)
		return r
	}
	m.Inputs = vanInputs{}
	r.made = &m
	return r
}

// unchanged are the pictures that need not be made anew: their files are the same,
// and so is the program.
func (c *census) unchanged(made []madeFrom) []madeFrom {
	if c.all || !slices.Contains(c.fleet.Shared, c.shared[0]) {
		return nil
	}
	return slices.DeleteFunc(made, func(m madeFrom) bool { return m.Sum == "" || m.Sum != c.in.sum("pictures/"+m.File) })
}

// why tells why a van must be made anew, "" where it need not.
func (c *census) why(s *site.Site, known bool, file string, before *vanMade) string {
	switch {
	case c.all:
		return "everything is made anew"
	case !known && len(s.Parts()) == 0:
		return "there was no site yet"
	case !known:
		return "the ledger cannot be read"
	case before == nil && slices.ContainsFunc(s.Parts(), s.Damaged):
		return file + " is new, or its record in the ledger cannot be read"
	case before == nil:
		return file + " is new"
	case before.Inputs.Spec.Sum != c.in.sum(file):
		return file + " changed"
	case before.Inputs.Shared != c.sum:
		return c.whyShared()
	}
	if name, changed := c.in.changed(before.Inputs.From); changed {
		return name + " changed"
	}
	needs := func(p problem.Problem) bool { return p.Code == spec.NeedsProgram }
	if slices.ContainsFunc(before.Problems, needs) && pictures.ReadsHEIC() {
		return "a program that reads its pictures is there now"
	}
	if !s.Intact(before.Summary.Code) {
		return "its pages are not as they were written"
	}
	return ""
}

// whyShared names what changed of what all vans are made from.
func (c *census) whyShared() string {
	before := map[string]string{}
	for _, i := range c.fleet.Shared {
		before[i.Name] = i.Sum
	}
	for _, i := range c.shared {
		sum, known := before[i.Name]
		delete(before, i.Name)
		switch {
		case !known:
			return i.Name + " is new"
		case sum != i.Sum:
			return i.Name + " changed"
		}
	}
	for _, i := range c.fleet.Shared {
		if _, left := before[i.Name]; left {
			return i.Name + " is gone"
		}
	}
	return "it was made when the fleet was another"
}
