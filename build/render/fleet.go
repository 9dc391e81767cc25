package render

import (
	"bytes"
	"fmt"

	"doorpocket/build/spec"
)

// Fleet renders the list of vans and the page for addresses that lead nowhere.
func (r *Renderer) Fleet(op *spec.Operator, vans []spec.Summary) ([]Shared, error) {
	lang := op.Languages[0]
	w := r.words[lang]
	if w == nil {
		return nil, fmt.Errorf("the interface has no words for language %q: add layouts/words.%s.toml", lang, lang)
	}
	view := fleetView{Frame: r.frame(w, op, lang, op.Name)}
	for _, v := range vans {
		view.Vans = append(view.Vans, link{Href: v.Code + "/index.html", Code: v.Code, Title: v.Name})
	}
	var err error
	if view.CallBox, err = w.part("call-box", view.Frame); err != nil {
		return nil, err
	}
	view.Mark, err = mark(op, "", nil)
	if err != nil {
		return nil, err
	}
	start, err := r.execute(w, "fleet", view)
	if err != nil {
		return nil, err
	}
	// A host shows the page for lost addresses at any depth: its links start
	// from the root of the guides.
	for i := range view.Vans {
		view.Vans[i].Href = op.Address.Root() + view.Vans[i].Href
	}
	view.Mark = markView{}
	view.Scripts = []string{op.Address.Root() + r.script("lost")}
	lost, err := r.execute(w, "lost", view)
	if err != nil {
		return nil, err
	}
	return []Shared{{Path: "index.html", Data: start}, {Path: "404.html", Data: lost}}, nil
}

func (r *Renderer) execute(w *Words, name string, view any) ([]byte, error) {
	var b bytes.Buffer
	if err := w.pages.ExecuteTemplate(&b, name, view); err != nil {
		return nil, fmt.Errorf("page %s: %w", name, err)
	}
	return r.finish(nil, b.Bytes()), nil
}
