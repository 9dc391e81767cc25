package render

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"

	"github.com/alecthomas/chroma/v2"
	chromahtml "github.com/alecthomas/chroma/v2/formatters/html"
	"github.com/alecthomas/chroma/v2/lexers"
	"github.com/alecthomas/chroma/v2/styles"

	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/manifest"
)

type staffVanRow struct {
	link
	Build, SpecDate string
	Systems, Labels int
	Registration    string
}

type staffView struct {
	frame
	Vans []staffVanRow
}

type staffEntry struct{ Name, Text string }

type listing struct {
	File string
	HTML template.HTML
}

type staffVanView struct {
	frame
	Heading  string
	Guide    string // the hirers' guide
	Entries  []staffEntry
	Labels   []link
	Listings []listing
}

// Staff renders the tree that only staff see: the fleet at a glance, and for
// each van what its spec keeps for staff, its labels and the spec itself.
func (r *Renderer) Staff(fleet *spec.Fleet) ([]File, error) {
	lang := fleet.Languages[0]
	w := r.words[lang]
	if w == nil {
		return nil, fmt.Errorf("the interface has no words for language %q: add layouts/words.%s.toml", lang, lang)
	}
	values := fleet.Library.Values[lang]
	view := staffView{frame: r.staffFrame(w, fleet, lang, w.must("staff_title"))}
	var files []File
	for _, v := range fleet.Vans {
		row := staffVanRow{link: link{Href: v.Code + "/index.html", Code: v.Code, Title: v.Name}, Build: v.Build,
			SpecDate: values.Date(v.SpecDate), Systems: len(v.Fitted)}
		page := r.staffVan(w, fleet, v, values)
		row.Labels = len(page.Labels)
		if staff := fleet.Staff[v.Code]; staff != nil {
			for _, e := range staff.Entries {
				if e.Key == "registration" && !e.Own {
					row.Registration = e.Text
				}
			}
		}
		view.Vans = append(view.Vans, row)
		data, err := r.execute("staff-van", page)
		if err != nil {
			return nil, err
		}
		files = append(files, File{Path: v.Code + "/index.html", Data: data})
	}
	data, err := r.execute("staff", view)
	return append(files, File{Path: "index.html", Data: data}), err
}

func (r *Renderer) staffFrame(w *Words, fleet *spec.Fleet, lang, title string) frame {
	f := r.frame(w, &fleet.Operator, lang, title+" · "+fleet.Name)
	f.Style, f.Policy = r.staffStyle, r.staffPolicy
	return f
}

func (r *Renderer) staffVan(w *Words, fleet *spec.Fleet, v *spec.Van, values components.ValueWords) staffVanView {
	lang := fleet.Languages[0]
	view := staffVanView{frame: r.staffFrame(w, fleet, lang, v.Name), Heading: v.Name, Guide: "../../hirers/" + v.Code + "/index.html"}
	view.Code = v.Code
	if staff := fleet.Staff[v.Code]; staff != nil {
		for _, e := range staff.Entries {
			view.Entries = append(view.Entries, staffEntry{Name: entryName(w, e), Text: entryText(e, values)})
		}
	}
	for _, f := range v.Fitted {
		if f.Label != "" {
			title := f.Title
			if words := f.System.Words[lang]; title == "" && words != nil {
				title = words.Title
			}
			view.Labels = append(view.Labels, link{Href: "../../hirers/" + v.Code + "/" + f.Label + "/index.html", Code: f.Label, Title: title})
		}
	}
	view.Listings = append(view.Listings, listing{File: v.File, HTML: colour(fleet.Sources[v.File])})
	if sheet := strings.TrimSuffix(v.File, v.File[strings.LastIndex(v.File, "vans/"):]) + "builds/" + v.Build + ".toml"; v.Build != "" {
		view.Listings = append(view.Listings, listing{File: sheet, HTML: colour(fleet.Sources[sheet])})
	}
	return view
}

func entryName(w *Words, e spec.StaffEntry) string {
	if e.Own {
		return e.Key
	}
	return w.must("staff_" + e.Key)
}

func entryText(e spec.StaffEntry, values components.ValueWords) string {
	if e.Date != (manifest.Date{}) {
		return values.Date(e.Date)
	}
	return e.Text
}

// colour marks up a spec. A listing that cannot be coloured is shown plain.
func colour(source []byte) template.HTML {
	lexer := chroma.Coalesce(lexers.Get("toml"))
	tokens, err := lexer.Tokenise(nil, string(source))
	if err == nil {
		var b bytes.Buffer
		format := chromahtml.New(chromahtml.WithClasses(true), chromahtml.ClassPrefix("t-"), chromahtml.WithPreWrapper(plainPre{}))
		if err = format.Format(&b, styles.Fallback, tokens); err == nil {
			return template.HTML(b.String())
		}
	}
	return template.HTML("<pre>" + template.HTMLEscapeString(string(source)) + "</pre>")
}

// plainPre puts a listing into a pre element that can be scrolled by keyboard.
type plainPre struct{}

func (plainPre) Start(code bool, _ string) string {
	return `<pre class="listing" tabindex="0">`
}

func (plainPre) End(bool) string { return "</pre>" }
