package render

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"

	"github.com/alecthomas/chroma/v2"
	chromahtml "github.com/alecthomas/chroma/v2/formatters/html"
	"github.com/alecthomas/chroma/v2/styles"

	"doorpocket/build/figure"
	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/manifest"
)

type staffEntry struct{ Name, Text string }

type listing struct {
	File string
	HTML template.HTML
}

type staffVanView struct {
	Frame
	Heading  string
	Guide    string // the hirers' guide
	Do       []link
	Sheets   []link
	Views    []template.HTML
	Entries  []staffEntry
	Labels   []link
	Listings []listing
}

// StaffVan renders what staff see of one van, in the main language: what its
// spec keeps for them, their routines, its labels, the van from all sides and
// the spec itself. The pages are given one after the other to put, until that
// fails. The data of a file is only good until put returns.
func (r *Renderer) StaffVan(kit *guide.Kit, g *guide.Guide, read spec.Read, routines []*guide.Routine, put func(File) error) error {
	op := g.Operator
	w, err := r.mainWords(op)
	if err != nil {
		return err
	}
	v := r.van(w, g)
	v.staff, v.put = true, put
	view := r.staffVan(w, op, read)
	for _, routine := range routines {
		view.Do = append(view.Do, link{Href: routine.Path + "index.html", Title: routine.Words.Title, About: routine.Words.About})
		v.staffRoutine(op, routine)
	}
	view.Sheets = v.sheetPages(op, g.Sheets(routines, read))
	view.Views = v.views()
	v.page("", "staff-van", view)
	v.facts(kit, op, read)
	return v.err
}

// views draw the van from all four sides and from above, with the labels that
// are there.
func (v *van) views() []template.HTML {
	var all []template.HTML
	for _, view := range figure.Views() {
		var points []figure.Point
		var codes []string
		for _, p := range v.guide.Pages {
			if on, ok := figure.ViewOf(v.side(p.Fitted.Place.Side)); ok && on == view && p.Code != "" {
				points = append(points, v.point(p))
				codes = append(codes, p.Code+" "+p.Title)
			}
		}
		text := v.w.must(v.viewName(view), "name", v.guide.Van.Name)
		if len(codes) > 0 {
			text += " " + v.w.must("view_labels", "list", strings.Join(codes, ", "))
		}
		all = append(all, template.HTML(figure.Elevation(v.body(), view, points, text)))
	}
	return all
}

// viewName is what a view is called: left and right are nearside or offside,
// which depends on the side on which one steers.
func (v *van) viewName(view figure.View) string {
	left := view == figure.FromLeft
	switch view {
	case figure.FromFront:
		return "view_front"
	case figure.FromRear:
		return "view_rear"
	case figure.FromAbove:
		return "view_roof"
	}
	if left == v.guide.LeftHandDrive() {
		return "view_offside"
	}
	return "view_nearside"
}

// staffRoutine renders a routine for staff, with the facts to say where it has
// them said.
func (v *van) staffRoutine(op *spec.Operator, routine *guide.Routine) {
	view := v.routineView(routine, v.r.staffFrame(v.w, op, routine.Words.Title+" · "+v.guide.Van.Name, v.guide.Van.Code+"/"+routine.Path))
	view.Van = &vanView{Code: v.guide.Van.Code, Name: v.guide.Van.Name, SpecDate: v.guide.SpecDate()}
	view.Paper = v.w.paperOfStaff(v.guide.Van.Code+"/"+routine.Path, v.guide.Van.Code+" "+v.guide.Van.Name)
	view.Scripts = []string{v.up(routine.Path) + "../" + v.r.script("routine")}
	for i, s := range routine.Steps {
		if routine.Facts && s.Page != nil {
			for _, said := range v.guide.Facts(s.Page.Fitted) {
				view.Steps[i].Say = append(view.Steps[i].Say, said.Name+": "+said.Text)
			}
		}
	}
	v.page(routine.Path, "staff-routine", view)
}

// mainWords are those of the fleet's main language.
func (r *Renderer) mainWords(op *spec.Operator) (*Words, error) {
	lang := op.Languages[0]
	if w := r.words[lang]; w != nil {
		return w, nil
	}
	return nil, fmt.Errorf("the interface has no words for language %q: add layouts/words.%s.toml", lang, lang)
}

// staffFrame is the frame of a page at a path below the staff tree.
func (r *Renderer) staffFrame(w *Words, op *spec.Operator, title, path string) Frame {
	f := r.frame(w, op, op.Languages[0], title+" · "+op.Name)
	f.Style, f.Early = staffToken, ""
	f.Paper = w.paperOfStaff(path, title)
	return f
}

func (r *Renderer) staffVan(w *Words, op *spec.Operator, van spec.Read) staffVanView {
	v, lang := van.Van, op.Languages[0]
	values := op.Library.Values[lang]
	view := staffVanView{Frame: r.staffFrame(w, op, v.Code+" "+v.Name, v.Code+"/"), Heading: v.Name, Guide: "../../hirers/" + v.Code + "/index.html"}
	view.Code = v.Code
	if van.Staff != nil {
		for _, e := range van.Staff.Entries {
			view.Entries = append(view.Entries, staffEntry{Name: entryName(w, op.Library, lang, e), Text: entryText(e, values)})
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
	for i, l := range van.Listings {
		mark := colour
		if i > 0 { // a build sheet, which other vans show too
			mark = r.colourOnce
		}
		view.Listings = append(view.Listings, listing{File: l.File, HTML: mark(l.Data)})
	}
	return view
}

func entryName(w *Words, lib *components.Library, lang string, e spec.StaffEntry) string {
	if e.Own {
		return e.Key
	}
	for _, d := range lib.Duties {
		if d.Staff == e.Key && d.Years > 0 {
			return w.must("staff_made", "what", d.Words[lang].Title)
		}
		if d.Staff == e.Key {
			return d.Words[lang].Title
		}
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
	var b bytes.Buffer
	format := chromahtml.New(chromahtml.WithClasses(true), chromahtml.ClassPrefix("t-"), chromahtml.WithPreWrapper(plainPre{}))
	if err := format.Format(&b, styles.Fallback, chroma.Literator(tokensOf(string(source))...)); err != nil {
		return template.HTML("<pre>" + template.HTMLEscapeString(string(source)) + "</pre>")
	}
	return template.HTML(b.String())
}

// colourOnce marks up what several pages show.
func (r *Renderer) colourOnce(source []byte) template.HTML {
	done, _ := r.coloured.of(string(source), func() (template.HTML, error) { return colour(source), nil })
	return done
}

// colouredMost is how many listings are remembered: a fleet has few build sheets.
const colouredMost = 1000

// plainPre puts a listing into a pre element that can be scrolled by keyboard.
type plainPre struct{}

func (plainPre) Start(code bool, _ string) string {
	return `<pre class="listing" tabindex="0" dir="ltr">`
}

func (plainPre) End(bool) string { return "</pre>" }
