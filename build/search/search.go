// Package search makes the documents that a phone searches: one for every page,
// routine, symptom and own page of a guide, and for every label whose thing is
// gone.
package search

import (
	"bytes"
	"encoding/json"
	"regexp"
	"slices"
	"strings"

	"doorpocket/build/guide"
	"doorpocket/components/prose"
)

// Document is one page as search sees it.
type Document struct {
	ID    int    `json:"id"`
	Path  string `json:"path"` // from the van's start
	Code  string `json:"code,omitempty"`
	Kind  string `json:"kind"` // danger, symptom, routine, page or gone
	Title string `json:"title"`
	About string `json:"about"`
	Words string `json:"words"` // what people say and type
	// Lines are sentences of the page, one of which stands below a result.
	Lines []string `json:"lines"`
}

// Documents lists the documents of a guide, dangers first, so that among equals
// the one that matters most is found first.
func Documents(g *guide.Guide, l Language) []Document {
	var all []Document
	add := func(d Document, said []string) {
		d.Path += language(g) + "index.html"
		d.Words = strings.Join(said, " · ")
		all = append(all, d)
	}
	for _, s := range g.Symptoms {
		kind := "symptom"
		if s.Urgent {
			kind = "danger"
		}
		add(Document{Path: s.Path, Kind: kind, Title: s.Words.Title, About: s.Words.About, Lines: symptomLines(g, s)}, s.Words.Search)
	}
	for _, r := range g.Routines {
		add(Document{Path: r.Path, Kind: "routine", Title: r.Words.Title, About: r.Words.About, Lines: routineLines(g, r)}, r.Words.Search)
	}
	for _, p := range g.Pages {
		f := guide.Filler{Guide: g, Page: p}
		kind := "page"
		if p.Fitted.System.Urgent {
			kind = "danger"
		}
		add(Document{Path: p.Path, Kind: kind, Code: p.Code, Title: p.Title, About: f.Text(p.Words.About), Lines: pageLines(f, p)}, p.Words.Search)
	}
	for _, own := range g.Operator.Pages {
		if w, ok := own.Words[g.Lang]; ok {
			add(Document{Path: guide.OwnPath(own.Name), Kind: "page", Title: w.Title, Lines: ownLines(guide.Filler{Guide: g}, w.Page)}, headings(guide.Filler{Guide: g}, w.Page))
		}
	}
	if len(g.Changed) > 0 {
		d := Document{Path: guide.ChangedPath, Kind: "page", Title: l.Changed, Lines: []string{}}
		for _, c := range g.Changed {
			d.Lines = append(d.Lines, l.SayChanged(c))
		}
		add(d, nil)
	}
	for _, x := range g.Gone {
		add(Document{Path: x.Path, Kind: "gone", Code: x.Code, Title: l.OldLabel, About: l.WasFor(x), Lines: []string{}}, nil)
	}
	slices.SortStableFunc(all, func(a, b Document) int { return slices.Index(kinds, a.Kind) - slices.Index(kinds, b.Kind) })
	for i := range all {
		all[i].ID = i
	}
	return all
}

// kinds are the kinds of documents in the order in which they stand.
var kinds = []string{"danger", "symptom", "routine", "page", "gone"}

func language(g *guide.Guide) string {
	if g.Main {
		return ""
	}
	return g.Lang + "/"
}

// pageLines are the headings of a page, each with the first sentence below it.
func pageLines(f guide.Filler, p *guide.Page) []string {
	lines := []string{}
	for _, i := range p.Sections {
		section := p.Words.Page.Sections[i]
		line := f.Text(section.Title)
		if first, _ := sentence(f.Text(section.Body)); first != "" {
			line += ": " + first
		}
		lines = append(lines, line)
	}
	return lines
}

// symptomLines are what to do first and what to look at.
func symptomLines(g *guide.Guide, s *guide.Symptom) []string {
	lines := []string{}
	for _, d := range s.Words.First {
		lines = append(lines, guide.Filler{Guide: g}.Text(d))
	}
	for _, c := range s.Checks {
		lines = append(lines, guide.Filler{Guide: g, Page: c.Page}.Text(c.Words.Look))
	}
	return lines
}

func routineLines(g *guide.Guide, r *guide.Routine) []string {
	lines := []string{}
	for _, s := range r.Steps {
		lines = append(lines, guide.Filler{Guide: g, Page: s.Page}.Text(s.Words))
	}
	return lines
}

// headings stand in for the words that people say of a page of the operator's.
func headings(f guide.Filler, page *prose.Page) []string {
	var titles []string
	for _, s := range page.Sections {
		titles = append(titles, f.Text(s.Title))
	}
	return titles
}

func ownLines(f guide.Filler, page *prose.Page) []string {
	lines := []string{}
	for _, d := range page.Docs() {
		lines = append(lines, sentences(f.Text(d))...)
	}
	return lines
}

// end is where a sentence ends: in every language of the guides, as far as
// search needs to know.
var end = regexp.MustCompile(`[.!?:]\s+`)

func sentences(text string) []string {
	var all []string
	for first, rest := sentence(text); first != ""; first, rest = sentence(rest) {
		all = append(all, first)
	}
	return all
}

// sentence cuts the first sentence off a text.
func sentence(text string) (first, rest string) {
	text = strings.TrimSpace(text)
	if at := end.FindStringIndex(text); at != nil {
		return strings.TrimSpace(text[:at[1]]), text[at[1]:]
	}
	return text, ""
}

// Language is what search has to know of the language of a guide, and its words
// for labels whose things are gone.
type Language struct {
	Idle    string `json:"idle"`    // words that mean nothing in a question, with spaces between
	Trouble string `json:"trouble"` // words that tell of trouble, with spaces between
	Endings string `json:"endings"` // of words that mean the same without, with spaces between

	OldLabel string                   `json:"-"`
	WasFor   func(*guide.Gone) string `json:"-"` // needed where something is gone

	Changed    string                     `json:"-"` // what the page of that is called
	SayChanged func(guide.Changed) string `json:"-"` // needed where something changed lately
}

// Script is the documents as a script that a page can load also without a
// server. encoding/json writes < and > as escapes, so no text can end it.
func Script(g *guide.Guide, l Language) []byte {
	var b bytes.Buffer
	b.WriteString("window.guideDocuments=")
	data := struct {
		Language
		Documents []Document `json:"documents"`
	}{l, Documents(g, l)}
	if err := json.NewEncoder(&b).Encode(data); err != nil {
		panic(err) // strings and numbers can always be encoded
	}
	return append(bytes.TrimSpace(b.Bytes()), ";\n"...)
}
