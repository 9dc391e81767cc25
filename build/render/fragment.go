package render

import (
	"fmt"
	"html/template"
	"strings"
)

// part executes the template of a part of pages.
func (w *Words) part(name string, view any) (template.HTML, error) {
	var b strings.Builder
	if err := w.pages.ExecuteTemplate(&b, name, view); err != nil {
		return "", fmt.Errorf("part %s of a page: %w", name, err)
	}
	return template.HTML(b.String()), nil
}

// fragment gives a part of pages that many pages have, of one van and of others.
// view is comparable, and all that the template shows: equal views are written
// once.
func (v *van) fragment(name string, view any) template.HTML {
	made, err := v.w.fragments.of(view, func() (template.HTML, error) { return v.w.part(name, view) })
	if err != nil && v.err == nil {
		v.err = err
	}
	return made
}

// fragmentsMost is how many fragments are remembered, some megabytes at most.
const fragmentsMost = 4000

// framed are parts of the frame of a page.
type framed struct{ callBox, top, bar template.HTML }

// framed gives a frame the parts that it shares with all pages of its depth.
func (v *van) framed(f *Frame) {
	made, ok := v.frames[f.Home]
	for _, part := range []struct {
		name string
		made *template.HTML
	}{{"call-box", &made.callBox}, {"van-top", &made.top}, {"van-bar", &made.bar}} {
		if !ok && v.err == nil {
			*part.made, v.err = v.w.part(part.name, *f)
		}
	}
	if !ok {
		if v.frames == nil {
			v.frames = map[string]framed{}
		}
		v.frames[f.Home] = made
	}
	f.CallBox, f.Top, f.Bar = made.callBox, made.top, made.bar
}
