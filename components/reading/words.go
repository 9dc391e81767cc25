package reading

import (
	"strings"
	"unicode"
)

// Words are the words of a sentence: what stands between white space, dashes and
// slashes and has a letter or a digit. "left-hand" and "don't" are one word.
func Words(sentence string) []string {
	fields := strings.FieldsFunc(sentence, func(r rune) bool {
		return unicode.IsSpace(r) || r == '/' || r == '–' || r == '—' || r == '…'
	})
	var all []string
	for _, f := range fields {
		if w := strings.TrimFunc(f, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }); w != "" {
			all = append(all, w)
		}
	}
	return all
}
