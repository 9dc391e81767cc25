package compare

import (
	"slices"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components/problem"
)

// Voice puts changes into the words of one language.
type Voice interface {
	// Say gives the words for a key with names and values in turn.
	Say(key string, pairs ...any) string
	// Where says in words where something is on the van of a guide.
	Where(g *guide.Guide, p spec.Place) string
}

// Sticker is a label: what it is called, and all else that is printed on it but for
// its address, in a form that only equality is asked of.
type Sticker struct{ Title, Rest string }

// Stickers gives the labels of a van by their codes.
type Stickers func(op *spec.Operator, v *spec.Van) map[string]Sticker

// Make compares two sides that have no errors of their own. The problems are
// errors that show only when guides are put together; the report is nil then.
func Make(old, new *Side, lang string, voice Voice, stickers Stickers) (*Report, problem.List) {
	c := comparison{old: newBench(old, lang), new: newBench(new, lang), lang: lang, voice: voice, stickers: stickers}
	report := &Report{Fleet: new.operator().Name, Old: old.Name, New: new.Name}
	report.Shared = c.shared()
	results := c.vans()
	var found problem.List
	for _, r := range results {
		found.Add(r.problems...)
	}
	if found.HasErrors() {
		found.Sort()
		found.Dedupe()
		return nil, found
	}
	report.Joined, report.Left, report.Groups, report.Same = c.gather(results)
	report.Notes = gatherNotes(results)
	report.Files = files(old.files, new.files)
	return report, nil
}

type comparison struct {
	old, new *bench
	lang     string
	voice    Voice
	stickers Stickers
}

// result is what became of one van.
type result struct {
	ref      VanRef
	build    string
	isOld    bool // there before
	isNew    bool // there now
	changes  Both
	notes    []Note
	problems problem.List
}

// vans compares van by van, a few at a time, in the order of their codes.
func (c *comparison) vans() []result {
	codes := slices.Concat(c.old.side.codes(), c.new.side.codes())
	slices.Sort(codes)
	codes = slices.Compact(codes)
	results := make([]result, len(codes))
	same := alike(c.old.side, c.new.side)
	each(len(codes), func(i int) { results[i] = c.van(codes[i], same) })
	return results
}

// van compares one van. alike tells that all but its own files are the same.
func (c *comparison) van(code string, alike bool) result {
	r := result{ref: VanRef{Code: code}}
	var was, is known
	was, r.isOld = c.old.side.vans[code]
	is, r.isNew = c.new.side.vans[code]
	if alike && r.isOld && r.isNew && was.sum == is.sum {
		r.ref.Name, r.build = is.name, is.build
		return r
	}
	var before, now van
	if r.isOld {
		before, r.problems = c.old.van(code)
	}
	if r.isNew {
		var more problem.List
		now, more = c.new.van(code)
		r.problems.Add(more...)
	}
	switch {
	case r.problems.HasErrors():
	case !r.isNew:
		r.ref.Name, r.ref.Labels = before.guide.Van.Name, labelsOf(before.guide.Van)
	case !r.isOld:
		r.ref.Name, r.ref.Labels, r.build = now.guide.Van.Name, labelsOf(now.guide.Van), now.guide.Van.Build
	default:
		r.ref.Name, r.build = now.guide.Van.Name, now.guide.Van.Build
		r.changes.Hirers = c.hirers(before.guide, now.guide)
		r.notes = c.notes(before.guide, now.guide)
		r.changes.Staff = c.staff(before, now)
	}
	return r
}
