package guide

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"
	"slices"

	"doorpocket/components/prose"
)

// Safety is a stamp of what keeps people safe in a guide: it differs from that
// of an earlier guide where a number to call, a caution, a step with a caution, a
// first step or a check of a danger differs, or the words and facts of a page
// that lives depend on. A change of the look, of a table or of other words
// leaves it as it is.
func (g *Guide) Safety() string {
	s := stamp{guide: g, sum: sha256.New()}
	s.texts(g.Operator.Call.Helpline, g.Operator.Call.Emergency)
	for _, p := range g.Pages {
		s.cautions(p)
		if grave(p) {
			s.page(p)
		}
	}
	for _, x := range g.Symptoms {
		if !x.Danger {
			continue
		}
		s.texts(x.Path, x.Words.Title)
		s.docs(nil, x.Words.First...)
		for _, c := range x.Checks {
			s.docs(c.Page, c.Words.Look, c.Words.Yes, c.Words.No)
		}
	}
	for _, r := range g.Routines {
		for _, step := range r.Steps {
			if step.Caution != nil {
				s.texts(r.Path)
				s.docs(step.Page, step.Words)
			}
		}
	}
	return hex.EncodeToString(s.sum.Sum(nil))[:16]
}

// stamp adds texts up, each with its length, so that no two lists of texts give
// the same.
type stamp struct {
	guide *Guide
	sum   hash.Hash
}

func (s stamp) texts(texts ...string) {
	for _, t := range texts {
		_, _ = fmt.Fprintf(s.sum, "%d %s\n", len(t), t) // a hash takes everything
	}
}

func (s stamp) docs(p *Page, docs ...prose.Doc) {
	fill := Filler{Guide: s.guide, Page: p}
	for _, d := range docs {
		s.texts(fill.Text(d))
	}
}

func (s stamp) cautions(p *Page) {
	for _, c := range p.Cautions {
		s.texts(p.Path, c.Signal)
		s.docs(p, c.Words.Hazard, c.Words.Consequence, c.Words.Avoid)
	}
}

// grave reports whether lives depend on a page: it stands first on the van's
// start, or has a caution with the gravest signal word.
func grave(p *Page) bool {
	isDanger := func(c Caution) bool { return c.Signal == "danger" }
	return p.Fitted.System.Urgent || slices.ContainsFunc(p.Cautions, isDanger)
}

// page adds all words of a page, filled in.
func (s stamp) page(p *Page) {
	s.texts(p.Path, p.Title, p.Fitted.Note)
	s.docs(p, p.Words.Page.Intro)
	for _, i := range p.Sections {
		s.docs(p, p.Words.Page.Sections[i].Title, p.Words.Page.Sections[i].Body)
	}
}
