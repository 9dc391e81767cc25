// Package search makes the documents that a phone searches: one for every page,
// routine, symptom and own page of a guide.
package search

import (
	"bytes"
	"encoding/json"
	"strings"

	"doorpocket/build/guide"
	"doorpocket/components/prose"
)

// Document is one page as search sees it.
type Document struct {
	ID    int    `json:"id"`
	Path  string `json:"path"` // from the van's start
	Code  string `json:"code,omitempty"`
	Kind  string `json:"kind"` // danger, symptom, routine or page
	Title string `json:"title"`
	About string `json:"about"`
	Words string `json:"words"` // what people say and type
	Text  string `json:"text"`  // headings of the page
}

// Documents lists the documents of a guide, dangers first, so that among equals
// the one that matters most is found first.
func Documents(g *guide.Guide) []Document {
	var all []Document
	add := func(d Document) {
		d.ID = len(all)
		d.Path += language(g) + "index.html"
		all = append(all, d)
	}
	for _, s := range g.Symptoms {
		kind := "symptom"
		if s.Urgent {
			kind = "danger"
		}
		add(Document{Path: s.Path, Kind: kind, Title: s.Words.Title, About: s.Words.About, Words: strings.Join(s.Words.Search, " · ")})
	}
	for _, r := range g.Routines {
		add(Document{Path: r.Path, Kind: "routine", Title: r.Words.Title, About: r.Words.About, Words: strings.Join(r.Words.Search, " · ")})
	}
	for _, p := range g.Pages {
		f := guide.Filler{Guide: g, Page: p}
		add(Document{Path: p.Path, Kind: "page", Code: p.Code, Title: p.Title, About: f.Text(p.Words.About),
			Words: strings.Join(p.Words.Search, " · "), Text: headings(f, p)})
	}
	for _, own := range g.Operator.Pages {
		if w, ok := own.Words[g.Lang]; ok {
			add(Document{Path: guide.OwnPath(own.Name), Kind: "page", Title: w.Title, Text: whole(guide.Filler{Guide: g}, w.Page)})
		}
	}
	return all
}

func language(g *guide.Guide) string {
	if g.Main {
		return ""
	}
	return g.Lang + "/"
}

func headings(f guide.Filler, p *guide.Page) string {
	var titles []string
	for _, i := range p.Sections {
		titles = append(titles, f.Text(p.Words.Page.Sections[i].Title))
	}
	return strings.Join(titles, " · ")
}

func whole(f guide.Filler, page *prose.Page) string {
	var texts []string
	for _, d := range page.Docs() {
		if t := f.Text(d); t != "" {
			texts = append(texts, t)
		}
	}
	return strings.Join(texts, " ")
}

// Script is the documents as a script that a page can load also without a
// server. encoding/json writes < and > as escapes, so no text can end it.
func Script(g *guide.Guide) []byte {
	var b bytes.Buffer
	b.WriteString("window.guideDocuments=")
	if err := json.NewEncoder(&b).Encode(Documents(g)); err != nil {
		panic(err) // strings and numbers can always be encoded
	}
	return append(bytes.TrimSpace(b.Bytes()), ";\n"...)
}
