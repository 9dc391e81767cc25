package spec

import (
	"fmt"
	"slices"
	"strings"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// unstate reads without = ["level"] of a fitted system: what its build sheet
// states and this van does not have. A fact with a default falls back to it.
func (l *loader) unstate(r *manifest.Reader, f *Fitted) {
	names, _ := r.Texts("without", manifest.Example(`["level"]`))
	if len(names) == 0 {
		return
	}
	e, _ := r.Raw("without")
	items, _ := e.Value.([]manifest.Entry)
	for i, name := range names {
		at := items[i].ValueSpan
		switch {
		case r.Has(name):
			r.ProblemAt(at, "stated-and-not", fmt.Sprintf("%s is stated and taken away", name), "Remove the name here, or the line that states it.")
		case !f.forget(name):
			l.notStated(r, at, f, name)
		}
	}
}

// forget takes away what is stated under a name and reports whether anything
// was.
func (f *Fitted) forget(name string) bool {
	if _, stated := f.Values[name]; stated {
		delete(f.Values, name)
		return true
	}
	if !slices.Contains(f.stated(), name) {
		return false
	}
	switch name {
	case "label":
		f.Label = ""
	case "title":
		f.Title = ""
	case "note":
		f.Note = ""
	case "at":
		f.Place = Place{}
	case "pictures":
		f.Pictures = nil
	}
	return true
}

// stated lists what can be taken away, facts in the order of the system's file.
func (f *Fitted) stated() []string {
	var names []string
	for _, d := range f.System.Facts {
		if _, ok := f.Values[d.Name]; ok {
			names = append(names, d.Name)
		}
	}
	for name, there := range map[string]bool{
		"at": f.Place.Side != "", "label": f.Label != "", "note": f.Note != "", "pictures": len(f.Pictures) > 0, "title": f.Title != "",
	} {
		if there {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

func (l *loader) notStated(r *manifest.Reader, at problem.Span, f *Fitted, name string) {
	stated := f.stated()
	detail := "Only what the build sheet states can be taken away: it states " + strings.Join(stated, ", ") + "."
	if len(stated) == 0 {
		detail = "Only what a build sheet states can be taken away, and none states anything here."
	}
	if near := problem.Nearest(name, stated); near != "" {
		detail = fmt.Sprintf("Did you mean %q?", near)
	}
	r.ProblemAt(at, "unknown-name", fmt.Sprintf("Nothing is stated under the name %q", name), detail)
}
