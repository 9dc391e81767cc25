package guide

import (
	"slices"

	"doorpocket/components/prose"
)

// joinUp lets the pages know of each other: related pages, and the routines and
// symptoms in which they play a part.
func (b *builder) joinUp() {
	g := b.guide
	for _, p := range g.Pages {
		for _, id := range p.Fitted.System.Related {
			for _, other := range g.Pages {
				if other.Fitted.System.ID == id && other != p {
					p.Related = append(p.Related, other)
				}
			}
		}
	}
	for _, r := range g.Routines {
		for _, s := range r.Steps {
			if s.Page != nil && !slices.Contains(s.Page.Routines, r) {
				s.Page.Routines = append(s.Page.Routines, r)
			}
		}
	}
	for _, s := range g.Symptoms {
		for _, c := range s.Checks {
			last := len(c.Page.Checks) - 1
			if last < 0 || c.Page.Checks[last].Symptom != s {
				c.Page.Checks = append(c.Page.Checks, &SymptomChecks{Symptom: s})
				last++
			}
			c.Page.Checks[last].Checks = append(c.Page.Checks[last].Checks, c)
		}
	}
}

// Path resolves an address of the library's words to a path below the van, ""
// and false where the van has no such page.
func (g *Guide) Path(scheme, target string) (string, bool) {
	switch scheme {
	case "system":
		for _, p := range g.Pages {
			if p.Fitted.System.ID == target {
				return p.Path, true
			}
		}
	case "fitted":
		if p := g.byName[target]; p != nil {
			return p.Path, true
		}
	case "routine":
		for _, r := range g.Routines {
			if r.ID == target {
				return r.Path, true
			}
		}
	case "symptom":
		for _, s := range g.Symptoms {
			if s.ID == target {
				return s.Path, true
			}
		}
	case "page":
		for _, own := range g.Operator.Pages {
			if own.Name == target {
				return OwnPath(own.Name), true
			}
		}
	}
	return "", false
}

// OwnPath is where a page of the operator's stands below the van.
func OwnPath(name string) string { return "read/" + name + "/" }

// Filler fills the library's words with the values of one page; what is to be
// written for links and embeds is for a later stage.
type Filler struct {
	Guide *Guide
	Page  *Page
}

// Value is a fact of the page in words.
func (f Filler) Value(name, unit string) (string, bool) {
	if f.Page == nil {
		return f.Guide.Value(nil, name, unit)
	}
	return f.Guide.Value(f.Page.Fitted, name, unit)
}

// Link gives no address: plain text has none.
func (f Filler) Link(string, string) (string, bool) { return "", false }

// Embed gives nothing: plain text shows no table and no figure.
func (f Filler) Embed(string, string, string) (string, bool) { return "", false }

// Text is a text of the library's for this page without markup.
func (f Filler) Text(d prose.Doc) string { return d.Text(f) }
