package render

import (
	"doorpocket/build/guide"
	"doorpocket/build/spec"
)

// Voice puts what changed into the words of one language.
type Voice struct {
	r *Renderer
	w *Words
}

// Voice gives the voice of a language.
func (r *Renderer) Voice(lang string) (Voice, error) {
	w, err := r.Words(lang)
	return Voice{r, w}, err
}

// Say gives the words for a key of ours with names and values in turn.
func (v Voice) Say(key string, pairs ...any) string { return v.w.must(key, pairs...) }

// Where says in words where something is, "" where the spec does not.
func (v Voice) Where(g *guide.Guide, p spec.Place) string {
	return v.r.van(v.w, g).place(p)
}
