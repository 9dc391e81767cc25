package reading

import (
	"regexp"
	"strings"
	"unicode"
)

// Syllables estimates how many syllables an English word has when it is read
// aloud, at least one for any word.
//
// It counts groups of vowel letters, takes away those that are silent (the e of
// "hose", "closed", "safely") and adds those that two vowel letters hide (the
// two of "radio", "area", "quiet"). Words for which that fails and that these
// guides use stand in a list. Parts joined by a hyphen are counted one by one,
// a number as it is spoken, an abbreviation by its letters.
func Syllables(word string) int {
	n := 0
	for _, part := range strings.FieldsFunc(word, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\'' && r != '’' && r != '.' && r != ',' }) {
		n += syllablesOf(part)
	}
	return max(n, 1)
}

func syllablesOf(part string) int {
	if strings.IndexFunc(part, unicode.IsDigit) >= 0 {
		return spokenNumber(part)
	}
	word := strings.Map(func(r rune) rune {
		if !unicode.IsLetter(r) {
			return -1
		}
		return r
	}, part)
	lower := strings.ToLower(word)
	if n, ok := known(lower); ok {
		return n
	}
	if spelled(word) {
		return len(word) + 2*strings.Count(lower, "w") // double-u
	}
	n := len(vowels.FindAllString(lower, -1))
	for _, p := range silent {
		n -= len(p.FindAllString(lower, -1))
	}
	for _, p := range hidden {
		n += len(p.FindAllString(lower, -1))
	}
	return max(n, 1)
}

// spelled reports whether an abbreviation is read letter by letter: one without
// vowels, or two or three capitals.
func spelled(word string) bool {
	if !vowels.MatchString(strings.ToLower(word)) {
		return true
	}
	return len(word) > 1 && len(word) <= 3 && strings.ToUpper(word) == word
}

// known looks a word up in the list, by itself and without an ending that adds
// no syllable.
func known(word string) (int, bool) {
	for _, ending := range []string{"", "s", "d"} {
		stem, ok := strings.CutSuffix(word, ending)
		if n, found := exceptions[stem]; ok && found {
			return n, true
		}
	}
	return 0, false
}

var vowels = regexp.MustCompile(`[aeiouy]+`)

var silent = compile(
	`[^aeiouy]e$`,                    // hose; the words in -le are added again below
	`[^aeiouytd]ed$`,                 // closed, not lifted
	`[^aeiouysxzcg]es$`,              // hoses has its e, pipes not
	`[^aeiouys][^h]hes$`,             // bathes
	`[^aeiouy]e(?:ly|less|ful|ment)`, // safely, careful
)

var hidden = compile(
	`[^aeiouy]les?$`, // table
	`[^aeiouylr]led$`, // handled
	`i[aou][^aeiouy]`, // radio, material
)

func compile(patterns ...string) []*regexp.Regexp {
	var all []*regexp.Regexp
	for _, p := range patterns {
		all = append(all, regexp.MustCompile(p))
	}
	return all
}

// spokenNumber is how many syllables a numeral has, digit by digit beyond a
// thousand.
func spokenNumber(part string) int {
	return len(part)
}

var exceptions = map[string]int{}
