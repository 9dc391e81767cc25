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

// part executes the template of a part of the van's pages.
func (v *van) part(name string, view any) template.HTML {
	made, err := v.w.part(name, view)
	v.fail(err)
	return made
}

// fail keeps an error, unless something failed before.
func (v *van) fail(err error) {
	if v.err == nil {
		v.err = err
	}
}

// fragment gives a part of pages that many pages have, of one van and of others.
// view is comparable, and all that the template shows: equal views are written
// once.
func (v *van) fragment(name string, view any) template.HTML {
	made, err := v.w.fragments.of(view, func() (template.HTML, error) { return v.w.part(name, view) })
	v.fail(err)
	return made
}

// fragmentsMost is how many fragments are remembered, some megabytes at most.
const fragmentsMost = 4000

// framed are the parts of a frame that are the same on all pages of one depth.
type framed struct {
	CallBox  template.HTML // whom to call
	Top, Bar template.HTML // of a page of a van: its head, and the bar to its start and to whom to call
}

// framed gives those of a van's page.
func (v *van) framed(f Frame) framed {
	made, ok := v.frames[f.Home]
	if !ok {
		made = framed{CallBox: v.part("call-box", f), Top: v.part("van-top", f), Bar: v.part("van-bar", f)}
		v.frames[f.Home] = made
	}
	return made
}
