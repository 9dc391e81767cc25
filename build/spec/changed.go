package spec

import (
	"cmp"
	"fmt"
	"slices"

	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// Changed is something that hirers may want to know was otherwise a while ago.
type Changed struct {
	On     manifest.Date
	Fitted string             // what it is about, "" for nothing or for what is gone
	Fact   string             // of that; "" for none
	Was    fact.Value         // what the fact was, zero where it was not stated
	Gone   *components.System // what is not there any more, nil for nothing
	Words  map[string]string  // the operator's own, by language; nil for none
}

// noted is a [[changed]] as it was read: what was is understood only where a van
// has the thing.
type noted struct {
	Changed
	was manifest.Entry
	at  problem.Span
}

// readChanged reads every [[changed]] of a file.
func (l *loader) readChanged(r *manifest.Reader) []noted {
	var all []noted
	for _, c := range r.Tables("changed") {
		if n, ok := l.noted(c); ok {
			all = append(all, n)
		}
	}
	return all
}

func (l *loader) noted(r *manifest.Reader) (noted, bool) {
	n := noted{at: r.At()}
	var ok bool
	n.On, ok = r.Date("on", manifest.Required)
	n.Fitted, _ = r.Text("fitted", manifest.Example(`"tyres"`))
	n.Fact, _ = r.Text("fact", manifest.Example(`"rear"`))
	if was, stated := r.Raw("was"); stated {
		n.was = was
	}
	if r.Has("text") {
		n.Words = l.ownWords(r, "text")
	}
	if id, stated := r.Text("gone", manifest.Example(`"electrics/tv"`)); stated {
		if n.Gone = l.fleet.Library.System(id); n.Gone == nil {
			r.Problem("gone", "unknown-system", fmt.Sprintf("Unknown system %q", id), l.fleet.Library.SystemHint(id))
			ok = false
		}
	}
	switch {
	case n.Fact != "" && n.Fitted == "":
		r.ProblemAt(n.at, "missing-key", "A fact of nothing", "Write beside it what it is a fact of, for example fitted = \"tyres\".")
	case n.was.Value != nil && n.Fact == "":
		r.Problem("was", "senseless-key", "What was otherwise is not said", "Write beside it the name of a fact, for example fact = \"rear\".")
	case n.Gone != nil && (n.Fitted != "" || n.Words != nil):
		r.Problem("gone", "senseless-key", "What is gone stands for itself", "Take out fitted and text, or take out gone and say it in your own words.")
	case n.Words != nil && n.Fact != "":
		r.Problem("fact", "senseless-key", "Words and a fact", "Take out fact and was, or text: one says what changed.")
	case n.Words == nil && n.Gone == nil && n.Fitted == "" && ok:
		r.ProblemAt(n.at, "missing-key", "What changed is not said", "Write fitted, fact and was for a fact; fitted alone for what is new; gone for what is not there any more; or text for your own words.")
	default:
		return n, ok
	}
	return n, false
}

// lately is what changed of a van as far back as a year before its spec, the last
// first. What a build sheet or fleet.toml says counts where the van has the thing
// and does not state the fact otherwise itself.
func (l *loader) lately(v *Van, all []noted) []Changed {
	since := v.SpecDate
	since.Year--
	var list []Changed
	for _, n := range all {
		mine := n.at.File == v.File
		if n.Fitted != "" && !l.stillTrue(v, &n, mine) || n.On.Compare(since) < 0 {
			continue
		}
		list = append(list, n.Changed)
	}
	slices.SortStableFunc(list, func(a, b Changed) int { return cmp.Compare(0, a.On.Compare(b.On)) })
	return list
}

// stillTrue reports whether what is noted of a thing holds on a van, and reads what
// the fact was.
func (l *loader) stillTrue(v *Van, n *noted, mine bool) bool {
	f := v.Named(n.Fitted)
	if f == nil {
		if mine {
			l.badNote(problem.Warning, n, "unknown-name", fmt.Sprintf("Nothing is fitted under the name %q", n.Fitted), namesOf(v.Fitted), n.Fitted)
		}
		return false
	}
	if n.Fact == "" {
		return true
	}
	d := f.System.Fact(n.Fact)
	if d == nil {
		var facts []string
		for _, d := range f.System.Facts {
			facts = append(facts, d.Name)
		}
		l.badNote(problem.Error, n, "unknown-fact", fmt.Sprintf("%s has no fact %q", f.System.ID, n.Fact), facts, n.Fact)
		return false
	}
	now := f.Values[n.Fact]
	if !mine && now.At.File != n.at.File {
		return false
	}
	if n.was.Value != nil {
		if n.Was = d.Decode(n.was, &l.problems); n.Was.IsZero() {
			return false
		}
	}
	if n.Was.Same(now) {
		l.problems.Add(problem.New(problem.Warning, n.at, "not-changed", fmt.Sprintf("%s of %s is what it was", n.Fact, n.Fitted), "Hirers are not told of it. Correct the value, or remove this note."))
		return false
	}
	return true
}

func (l *loader) badNote(severity problem.Severity, n *noted, code, summary string, valid []string, near string) {
	detail := "Hirers are not told of it. Correct it, or remove this note."
	if better := problem.Nearest(near, valid); better != "" {
		detail = fmt.Sprintf("Did you mean %q?", better)
	}
	l.problems.Add(problem.New(severity, n.at, code, summary, detail))
}
