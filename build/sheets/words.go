package sheets

import "doorpocket/build/render"

// words are the words of the interface that a sheet needs. What goes wrong
// first is kept.
type words struct {
	of  *render.Words
	err error
}

func (w *words) say(key string, pairs ...any) string {
	text, err := w.of.Say(key, pairs...)
	if w.err == nil {
		w.err = err
	}
	return text
}
