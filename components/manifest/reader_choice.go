package manifest

import (
	"slices"
	"strings"

	"doorpocket/components/problem"
)

// Choice returns a text that has to be one of the given words.
func (r *Reader) Choice(key string, words []string, options ...Option) (string, bool) {
	usual := `"..."`
	if len(words) > 0 {
		usual = `"` + words[0] + `"`
	}
	word, ok := r.Text(key, append([]Option{Example(usual)}, options...)...)
	if !ok || slices.Contains(words, word) {
		return word, ok
	}
	detail := "Use one of: " + strings.Join(words, ", ") + "."
	if near := problem.Nearest(word, words); near != "" {
		detail = "Did you mean " + quote(near) + "? " + detail
	}
	r.Problem(key, "unknown-choice", "Unknown choice "+quote(word)+" for "+quote(key), detail)
	return "", false
}
