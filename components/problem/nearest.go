package problem

import (
	"strings"
	"unicode/utf8"

	"github.com/agnivade/levenshtein"
)

// longestName is the length in runes beyond which no suggestion is sought: no
// name of ours is near it, and the search takes time by its square.
const longestName = 100

// Nearest returns the valid name that the word was probably meant to be, or ""
// if none is near. A name that differs only in case is always nearest. Else it
// is the one with the smallest edit distance, at most 2 or a third of the
// word's length. Of equally near names the first one wins.
func Nearest(word string, valid []string) string {
	length := utf8.RuneCountInString(word)
	if length == 0 || length > longestName {
		return ""
	}
	for _, name := range valid {
		if name != "" && strings.EqualFold(name, word) {
			return name
		}
	}
	best, bestDistance := "", max(2, length/3)+1
	lower := strings.ToLower(word)
	for _, name := range valid {
		if d, ok := distance(lower, name, bestDistance-1); ok {
			best, bestDistance = name, d
		}
	}
	return best
}

// distance returns the edit distance between a lower-case word and a name if it
// is at most limit. Words that would have to change in every letter are never
// near, else "up" would be offered for "at".
func distance(lower, name string, limit int) (int, bool) {
	a, b := utf8.RuneCountInString(lower), utf8.RuneCountInString(name)
	if a-b > limit || b-a > limit {
		return 0, false
	}
	d := levenshtein.ComputeDistance(lower, strings.ToLower(name))
	return d, d <= limit && d < min(a, b)
}
