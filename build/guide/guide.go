// Package guide puts together what the hirers of one van may read: its pages,
// routines, symptoms and tables in one language. It knows words and values but
// no HTML, and it is given nothing that only staff may see.
package guide

import (
	"cmp"
	"slices"

	"golang.org/x/text/language"

	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
)

// Guide is the guide of one van in one language.
type Guide struct {
	Operator *spec.Operator
	Van      *spec.Van
	Lang     string
	Main     bool // in the fleet's main language
	Pages    []*Page
	Routines []*Routine
	Symptoms []*Symptom
	Changed  []Changed
	Gone     []*Gone // labels whose things are not there any more

	values components.ValueWords
	format *quantity.Formatter
	byName map[string]*Page
}

// Kit is what the guides of one language share. Make one a language and keep
// it for all vans.
type Kit struct {
	operator *spec.Operator
	lang     string
	values   components.ValueWords
	format   *quantity.Formatter
	tables   *tables
}

// NewKit makes what all guides of a fleet in one language share.
func NewKit(op *spec.Operator, lang string) *Kit {
	return &Kit{operator: op, lang: lang, values: op.Library.Values[lang],
		format: quantity.NewFormatter(language.Make(lang)), tables: newTables(op.Library)}
}

// Build makes the guide of one van. The guide is complete as far as it could be
// put together; it may be published if the problems hold no error.
func (k *Kit) Build(v *spec.Van) (*Guide, problem.List) {
	b := k.builder(v)
	b.pages()
	b.tables()
	b.routines()
	b.symptoms()
	b.joinUp()
	b.changed()
	b.guide.Gone = k.gone(v.Gone)
	return b.guide, b.problems
}

// Tables makes as much of the guide of one van as its tables need: pages with
// their tables, without routines and symptoms. The problems are those of the
// tables.
func (k *Kit) Tables(v *spec.Van) (*Guide, problem.List) {
	b := k.builder(v)
	b.pages()
	b.tables()
	return b.guide, b.problems
}

func (k *Kit) builder(v *spec.Van) *builder {
	return &builder{kit: k, guide: &Guide{
		Operator: k.operator, Van: v, Lang: k.lang, Main: k.lang == k.operator.Languages[0],
		values: k.values, format: k.format, byName: map[string]*Page{},
	}}
}

type builder struct {
	kit      *Kit
	guide    *Guide
	problems problem.List
}

// Page is the page of one fitted system.
type Page struct {
	Fitted   *spec.Fitted
	Words    *components.Words
	Code     string // the label code, "" for none
	Path     string // below the van: "G1/" or "about/masses/"
	Title    string
	Sections []int // of Words.Page.Sections, those that stand
	Cautions []Caution
	Tables   map[string]*Table
	Checks   []*SymptomChecks
	Routines []*Routine // in which it takes part
	Related  []*Page
}

// Caution is a caution that stands on this van.
type Caution struct {
	*components.Caution
	Words components.CautionWords
}

// SymptomChecks are the checks of one page for one symptom.
type SymptomChecks struct {
	Symptom *Symptom
	Checks  []Check
}

// Family is the pages of one family, in order.
type Family struct {
	*components.Family
	Words components.FamilyWords
	Pages []*Page
}

// Families groups the pages, leaving out families of which nothing is aboard.
func (g *Guide) Families() []Family {
	var all []Family
	for _, f := range g.Operator.Library.Families {
		family := Family{Family: f, Words: f.Words[g.Lang]}
		for _, p := range g.Pages {
			if p.Fitted.System.Family == f.ID {
				family.Pages = append(family.Pages, p)
			}
		}
		if len(family.Pages) > 0 {
			all = append(all, family)
		}
	}
	return all
}

// Page finds the page of a fitted system by its name, nil where there is none.
func (g *Guide) Page(fitted string) *Page { return g.byName[fitted] }

// byCode orders pages with a label by family, letter and number, before those
// without.
func byCode(a, b *Page) int {
	switch {
	case (a.Code == "") != (b.Code == ""):
		if a.Code == "" {
			return 1
		}
		return -1
	case a.Code == "":
		return 0
	}
	return cmp.Or(cmp.Compare(a.Code[:1], b.Code[:1]), cmp.Compare(len(a.Code), len(b.Code)), cmp.Compare(a.Code, b.Code))
}

// pages makes a page for everything fitted, in the order of the families and
// within one by label code.
func (b *builder) pages() {
	g := b.guide
	for _, family := range b.kit.operator.Library.Families {
		var pages []*Page
		for _, f := range g.Van.Fitted {
			if f.System.Family == family.ID {
				if p := b.page(f); p != nil {
					pages = append(pages, p)
				}
			}
		}
		slices.SortStableFunc(pages, byCode)
		g.Pages = append(g.Pages, pages...)
	}
}

func (b *builder) page(f *spec.Fitted) *Page {
	g := b.guide
	words := f.System.Words[g.Lang]
	if words == nil {
		b.problems.Errorf(f.Span, "missing-language", "No words for "+f.System.ID+" in \""+g.Lang+"\"",
			"Write lines.%s.toml and page.%s.md for it, or take the language out of fleet.toml.", g.Lang, g.Lang)
		return nil
	}
	p := &Page{Fitted: f, Words: words, Code: f.Label, Title: f.Title, Tables: map[string]*Table{}}
	p.Path = "about/" + f.Name + "/"
	if p.Code != "" {
		p.Path = p.Code + "/"
	}
	if p.Title == "" {
		p.Title = words.Title
	}
	for i := range f.System.Cautions {
		c := &f.System.Cautions[i]
		if g.Van.Holds(f, c.When) {
			p.Cautions = append(p.Cautions, Caution{Caution: c, Words: words.Cautions[c.ID]})
		}
	}
	slices.SortStableFunc(p.Cautions, func(a, b Caution) int {
		return cmp.Compare(severity[a.Signal], severity[b.Signal])
	})
	p.Sections = b.sections(f, words)
	g.byName[f.Name] = p
	return p
}

// severity puts the gravest signal word first.
var severity = map[string]int{"danger": 0, "warning": 1, "caution": 2, "notice": 3}
