package render

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"

	"doorpocket/build/figure"
	"doorpocket/build/guide"
	"doorpocket/build/label"
	"doorpocket/build/offline"
	"doorpocket/build/search"
	"doorpocket/build/spec"
)

// File is one file of a van's guide, by its path below the hirer tree.
type File struct {
	Path string
	Data []byte
}

// van renders the guide of one van.
type van struct {
	r     *Renderer
	w     *Words
	guide *guide.Guide
	put   func(File) error
	sheet bytes.Buffer // the page at work
	drawn []byte       // likewise, with each sign drawn once
	ready []byte       // likewise, as it is written
	err   error
	// staff is set while pages for staff are rendered: their links lead over to
	// the hirers' tree.
	staff bool
	// frames are the parts of the frame that are the same on all pages of one
	// depth, by the way to the van's start.
	frames map[string]framed
	// ticked tells that the page at work has a table whose rows can be ticked.
	ticked bool
	// asked are the files of the pictures that the words of the page at work ask for.
	asked []string
}

// van is a guide of which nothing is rendered yet.
func (r *Renderer) van(w *Words, g *guide.Guide) *van {
	return &van{r: r, w: w, guide: g, frames: map[string]framed{}}
}

// Van renders every page of a guide, for whoever wants all at once.
func (r *Renderer) Van(g *guide.Guide) ([]File, error) {
	var files []File
	err := r.EachOfVan(g, func(f File) error {
		f.Data = bytes.Clone(f.Data)
		files = append(files, f)
		return nil
	})
	return files, err
}

// EachOfVan renders every page of a guide and gives one after the other to put,
// until that fails. The data of a file is only good until put returns.
func (r *Renderer) EachOfVan(g *guide.Guide, put func(File) error) error {
	w, err := r.Words(g.Lang)
	if err != nil {
		return err
	}
	v := r.van(w, g)
	v.put = put
	v.start()
	for _, p := range g.Pages {
		v.system(p)
	}
	for _, x := range g.Routines {
		v.routine(x)
	}
	for _, x := range g.Symptoms {
		v.symptom(x)
	}
	for _, own := range g.Operator.Pages {
		v.own(own)
	}
	v.changed()
	for _, x := range g.Gone {
		v.gone(x)
	}
	v.add(v.searchPath(), search.Script(g, v.searchLanguage()))
	return v.err
}

// add gives away a file, unless something failed before; path is below the van.
func (v *van) add(path string, data []byte) {
	if v.err == nil {
		v.err = v.put(File{Path: v.guide.Van.Code + "/" + path, Data: data})
	}
}

// page executes a template and gives the result away, sealed with its revision.
func (v *van) page(path, name string, view any) {
	if v.err != nil {
		return
	}
	v.sheet.Reset()
	if err := v.w.pages.ExecuteTemplate(&v.sheet, name, view); err != nil {
		v.err = fmt.Errorf("page %s/%s: %w", v.guide.Van.Code, path, err)
		return
	}
	v.drawn = drawOnce(v.drawn[:0], v.sheet.Bytes())
	v.ready = v.r.finish(v.ready[:0], v.drawn)
	v.add(path+v.lang()+"index.html", v.ready)
}

// lang is the folder of a language that is not the main one.
func (v *van) lang() string {
	if v.guide.Main {
		return ""
	}
	return v.guide.Lang + "/"
}

// searchLanguage is what search needs of the words of the guide's language.
func (v *van) searchLanguage() search.Language {
	return search.Language{
		Idle: v.w.must("find_idle"), Trouble: v.w.must("find_trouble"), Endings: v.w.must("find_endings"),
		OldLabel: v.w.must("gone"), Changed: v.w.must("changed_title"), SayChanged: v.w.SayChanged,
		WasFor: func(x *guide.Gone) string { return v.w.wasFor(v.guide.Van.Code, x) },
	}
}

func (v *van) searchPath() string {
	if v.guide.Main {
		return "find.js"
	}
	return "find-" + v.guide.Lang + ".js"
}

// up is the way from a page at path (below the van) to the van's folder.
func (v *van) up(path string) string {
	return strings.Repeat("../", strings.Count(path+v.lang(), "/"))
}

// href is the address of another page of this van, seen from the page at from.
// It names index.html, so that a guide also works from a folder without a
// server.
func (v *van) href(from, to string) string {
	up := v.up(from)
	if v.staff {
		up += "../../hirers/" + v.guide.Van.Code + "/"
	}
	return up + to + v.lang() + "index.html"
}

func (v *van) frame(path, title, code string) Frame {
	g := v.guide
	f := v.r.frame(v.w, g.Operator, g.Lang, title+" · "+g.Van.Name)
	f.Van = &vanView{Code: g.Van.Code, Name: g.Van.Name, SpecDate: g.SpecDate()}
	f.Paper = v.w.paper(g.Operator.Address.Reading(g.Van.Code+"/"+path+v.lang()), g.Van.Code+" "+g.Van.Name)
	f.Home = v.href(path, "")
	f.Code = code
	f.framed = v.framed(f)
	root := v.up(path) + "../"
	f.Keep = keepView{Script: root + v.r.script("guide"), Worker: root + offline.Address(g.Van.Code), Scope: root + g.Van.Code}
	if path != "" && !strings.HasPrefix(path, "do/") { // a step leads to the thing it is about
		f.Report = v.report(code, title)
	}
	f.Mark, v.err = mark(g.Operator, g.Van.Code+"/"+path+v.lang(), v.err)
	return f
}

func (r *Renderer) frame(w *Words, op *spec.Operator, lang, title string) Frame {
	return Frame{
		W: w, Lang: lang, Title: title, Style: sheetToken, Early: r.early, Policy: policy, Fleet: op.Name, Revision: revisionToken, Paper: w.paper(op.Address.Reading(""), op.Name),
		Call: callView{
			Helpline: op.Call.Helpline, Emergency: op.Call.Emergency, Hours: op.Call.Hours, Mail: op.Call.Mail,
			Dial: dial(op.Call.Helpline), Urgent: dial(op.Call.Emergency),
		},
	}
}

// dial is a number as an address; the fleet's numbers have been checked to be
// numbers.
func dial(number string) template.URL {
	keep := func(r rune) rune {
		if r >= '0' && r <= '9' || r == '+' {
			return r
		}
		return -1
	}
	return template.URL("tel:" + strings.Map(keep, number))
}

// mark makes the QR symbol of a page, unless something failed before.
func mark(op *spec.Operator, path string, before error) (markView, error) {
	if before != nil {
		return markView{}, before
	}
	symbol, err := label.NewSymbol(op.Address.To(path), op.Level)
	if err != nil {
		return markView{}, err
	}
	return markView{Drawing: template.HTML(`<path d="` + symbol.Path() + `"/>`), Side: symbol.Side(), Reading: op.Address.Reading(path)}, nil
}

func (v *van) start() {
	g := v.guide
	view := startView{Frame: v.frame("", v.w.must("guide_to", "name", g.Van.Name), "")}
	parts := v.up("") + "../"
	view.Scripts = []string{parts + v.r.script("search")}
	view.Load = parts + v.r.script("minisearch") + " " + v.up("") + v.searchPath()
	view.Outside, view.Inside = v.plans()
	for _, s := range g.Symptoms {
		l := link{Href: v.href("", s.Path), Title: s.Words.Title}
		if s.Urgent {
			view.Danger = append(view.Danger, l)
			continue
		}
		view.Wrong = append(view.Wrong, l)
	}
	for _, p := range g.Pages {
		if p.Fitted.System.Urgent {
			view.Danger = append(view.Danger, v.link("", p))
		}
	}
	for _, r := range g.Routines {
		view.Do = append(view.Do, link{Href: v.href("", r.Path), Title: r.Words.Title, About: r.Words.About})
	}
	for _, own := range g.Operator.Pages {
		if w, ok := own.Words[g.Lang]; ok {
			view.Read = append(view.Read, link{Href: v.href("", guide.OwnPath(own.Name)), Title: w.Title})
		}
	}
	if l := v.changedLink(); l != nil {
		view.Read = append(view.Read, *l)
	}
	for _, f := range g.Families() {
		fv := familyView{ID: f.ID, Letter: f.Letter, Title: f.Words.Title}
		for _, p := range f.Pages {
			fv.Pages = append(fv.Pages, v.placed(p))
		}
		view.Families = append(view.Families, fv)
	}
	v.page("", "van", view)
}

// link is a page in a list, seen from the page at from.
func (v *van) link(from string, p *guide.Page) link {
	return link{Href: v.href(from, p.Path), Code: p.Code, Title: p.Title}
}

// placed is a page in the list of the van's start, which says in words what the
// plans draw: where the thing is. What has no place says what it is about.
func (v *van) placed(p *guide.Page) link {
	l := v.link("", p)
	if l.About = v.place(p.Fitted.Place); l.About == "" {
		l.About = v.fill("", p).text(p.Words.About)
	}
	return l
}

// plans draw the van with every labelled thing that has a place: one plan of
// what one reaches from outside and one of what is inside, each "" where there
// is nothing.
func (v *van) plans() (outside, inside template.HTML) {
	g := v.guide
	var out, in []figure.Point
	for _, p := range g.Pages {
		if p.Code == "" || p.Fitted.Place.Side == "" {
			continue
		}
		point := v.point(p)
		point.Href = v.href("", p.Path)
		if point.Side == figure.Within || point.Side == figure.Roof {
			in = append(in, point)
		} else {
			out = append(out, point)
		}
	}
	return v.plan(out, "plan_outside"), v.plan(in, "plan_inside")
}

func (v *van) plan(points []figure.Point, title string) template.HTML {
	if len(points) == 0 {
		return ""
	}
	words := figure.Words{
		Title: v.w.must(title, "name", v.guide.Van.Name), Front: v.w.must("front"),
		Left: v.w.must("nearside"), Right: v.w.must("offside"),
	}
	if v.guide.LeftHandDrive() {
		words.Left, words.Right = words.Right, words.Left
	}
	return template.HTML(figure.Plan(v.body(), points, words))
}
