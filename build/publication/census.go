package publication

import (
	"slices"

	"doorpocket/build/site"
	"doorpocket/build/spec"
)

// census compares a fleet folder with what the ledger remembers.
type census struct {
	in       *inputs
	all      bool // every van is made anew
	shared   []Input
	sum      string // of shared
	rest     []Input
	specs    []string
	fresh    map[string]*vanMade // by spec: vans that can stay as they are
	stale    map[string]string   // by spec: why it cannot
	left     bool                // there are parts of which no spec is known
	pictures map[string]picture  // that vans show which stay, by file
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
	records := c.records(s)
	reasons := make([]string, len(c.specs))
	_ = each(len(c.specs), func(i int) error {
		reasons[i] = c.why(s, known, c.specs[i], records[c.specs[i]])
		return nil
	})
	c.pictures = map[string]picture{}
	for i, file := range c.specs {
		if reasons[i] == "" {
			c.fresh[file] = records[file]
			for _, m := range records[file].Pictures {
				c.pictures[m.File] = m.picture
			}
		} else {
			c.stale[file] = reasons[i]
		}
	}
	c.quiet = known && len(c.stale) == 0 && !c.left && !c.all &&
		slices.Equal(c.fleet.Shared, c.shared) && slices.Equal(c.fleet.Rest, c.rest) && s.Intact(site.Fleet)
	return c
}

// records reads what is remembered of the vans, by spec.
func (c *census) records(s *site.Site) map[string]*vanMade {
	parts := s.Parts()
	made := make([]*vanMade, len(parts))
	_ = each(len(parts), func(i int) error {
		var m vanMade
		if parts[i] != site.Fleet && s.Made(parts[i], &m) && m.Summary.Code == parts[i] {
			made[i] = &m
		}
		return nil
	})
	records := map[string]*vanMade{}
	for i, part := range parts {
		if part == site.Fleet {
			continue
		}
		if made[i] != nil && made[i].Left {
			c.left = c.left || !s.Intact(part)
			continue
		}
		if made[i] == nil {
			c.left = true
			continue
		}
		file := made[i].Inputs.Spec.Name
		_, known := slices.BinarySearch(c.specs, file)
		c.left = c.left || !known || records[file] != nil
		if known {
			records[file] = made[i]
		}
	}
	return records
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
	case before == nil:
		return file + " is new, or not in the ledger"
	case before.Inputs.Spec.Sum != c.in.sum(file):
		return file + " changed"
	case before.Inputs.Shared != c.sum:
		return c.whyShared()
	}
	if name, changed := c.in.changed(before.Inputs.From); changed {
		return name + " changed"
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
