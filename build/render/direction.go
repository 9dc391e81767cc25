package render

import (
	"slices"

	"golang.org/x/text/language"
)

// rightToLeft reports whether a language is written from right to left.
func rightToLeft(lang string) bool {
	script, _ := language.Make(lang).Script()
	return slices.Contains([]string{"Arab", "Hebr", "Syrc", "Thaa", "Nkoo", "Adlm", "Rohg", "Mand", "Samr"}, script.String())
}

// Apart keeps the order of a name, a number, a code or an address that stands in
// text from right to left: it is isolated, as Unicode's annex 9 and its
// MessageFormat have it. Other text needs no such signs.
func (w *Words) Apart(text string) string {
	const isolate, end = "\u2068", "\u2069"
	if !w.RightToLeft || text == "" {
		return text
	}
	return isolate + text + end
}

// Value is a fact or a constant as the text at hand needs it.
func (f filler) Value(name, unit string) (string, bool) {
	text, ok := f.Filler.Value(name, unit)
	return f.van.w.Apart(text), ok
}
