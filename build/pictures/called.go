package pictures

import (
	"cmp"
	"path"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// Called is a file's name taken apart: "gas-locker 2 both cylinders.jpg" is
// called after the first thing whose name it begins with, and says what it shows
// in the rest.
type Called struct {
	stem string // without the ending, as composed letters
	even string // the same in small letters, with a hyphen for whatever parts words
}

// endings are those of files that are taken for photographs, in small letters.
var endings = []string{".jpg", ".jpeg", ".png", ".webp", ".heic", ".heif"}

// IsPhotograph reports whether a file's name ends as photographs' names do.
func IsPhotograph(name string) bool {
	return slices.Contains(endings, strings.ToLower(path.Ext(name)))
}

// NameOf takes the name of a file apart, with or without a folder before it.
func NameOf(file string) Called {
	file = path.Base(file)
	stem := norm.NFC.String(strings.TrimSuffix(file, path.Ext(file)))
	return Called{stem: stem, even: evened(stem)}
}

// evened writes a name so that only its letters and digits count. It is as many
// characters long as the name.
func evened(stem string) string {
	return strings.Map(func(r rune) rune {
		if parts(r) {
			return '-'
		}
		return unicode.ToLower(r)
	}, stem)
}

// parts reports whether a character parts the words of a file's name.
func parts(r rune) bool { return r == '-' || r == '_' || r == '.' || unicode.IsSpace(r) }

// After gives the longest of the names that a file's name begins with, "" for
// none. The name ends there, or something that parts words or a digit follows:
// gas-locker.jpg is not called after gas-lock.
func (c Called) After(names []string) string {
	longest := ""
	for _, name := range names {
		rest, begins := strings.CutPrefix(c.even, name)
		if !begins || len(name) <= len(longest) {
			continue
		}
		if r, _ := utf8.DecodeRuneInString(rest); rest == "" || r == '-' || unicode.IsDigit(r) {
			longest = name
		}
	}
	return longest
}

// Beginnings are the first word of a file's name, the first two, and so on, the
// longest first.
func (c Called) Beginnings() []string {
	words := strings.FieldsFunc(c.even, func(r rune) bool { return r == '-' })
	var all []string
	for n := len(words); n > 0; n-- {
		all = append(all, strings.Join(words[:n], "-"))
	}
	return all
}

// Words are what a file's name says after the name that it is called after, as
// the beginning of a sentence; "" where it says nothing that a person would say.
func (c Called) Words(name string) string {
	stem := []rune(c.stem)
	rest := string(stem[min(utf8.RuneCountInString(name), len(stem)):])
	words := strings.FieldsFunc(rest, func(r rune) bool { return r != '.' && parts(r) })
	for i := range words {
		words[i] = strings.Trim(words[i], ".")
	}
	words = slices.DeleteFunc(words, func(w string) bool { return w == "" || copyMark.MatchString(w) })
	for len(words) > 0 && (onlyDigits(words[0]) || madeUp(words[0])) {
		words = words[1:]
	}
	if !slices.ContainsFunc(words, said) {
		return ""
	}
	text := []rune(strings.Join(words, " "))
	text[0] = unicode.ToUpper(text[0])
	return string(text)
}

// copyMark is what computers put after the name of a second copy.
var copyMark = regexp.MustCompile(`^\(\d+\)$`)

// counted is a name that cameras and phones count on: IMG1234, P1010023, 20261002.
var counted = regexp.MustCompile(`^\pL{0,6}\d{3,}$`)

// apparatus are the words that cameras, phones and computers put into names.
var apparatus = strings.Fields("img image photo photograph picture pic pict dsc dscn dscf dcim pxl mvimg scan screenshot copy edited jpg jpeg png webp heic heif")

// madeUp reports whether a machine wrote this part of a name.
func madeUp(word string) bool {
	return counted.MatchString(word) || slices.Contains(apparatus, strings.ToLower(word))
}

func onlyDigits(word string) bool {
	return !strings.ContainsFunc(word, func(r rune) bool { return !unicode.IsDigit(r) })
}

// said reports whether a part of a name is a word: two letters at least, and no
// machine wrote it.
func said(word string) bool {
	letters := 0
	for _, r := range word {
		if unicode.IsLetter(r) {
			letters++
		}
	}
	return letters >= 2 && !madeUp(word)
}

// Compare puts files in the order in which people count: 2 before 10.
func (c Called) Compare(o Called) int {
	a, b := c.even, o.even
	for a != "" && b != "" {
		numberA, restA := number(a)
		numberB, restB := number(b)
		if numberA != "" && numberB != "" {
			// Without noughts before it the longer number is the larger one.
			if n := cmp.Or(cmp.Compare(len(numberA), len(numberB)), cmp.Compare(numberA, numberB)); n != 0 {
				return n
			}
			a, b = restA, restB
			continue
		}
		x, lenA := utf8.DecodeRuneInString(a)
		y, lenB := utf8.DecodeRuneInString(b)
		if x != y {
			return cmp.Compare(x, y)
		}
		a, b = a[lenA:], b[lenB:]
	}
	return cmp.Or(cmp.Compare(len(a), len(b)), cmp.Compare(c.stem, o.stem))
}

// number gives the number that a text begins with, without noughts before it,
// and what follows; "" for none.
func number(text string) (digits, rest string) {
	end := strings.IndexFunc(text, func(r rune) bool { return r < '0' || r > '9' })
	if end < 0 {
		end = len(text)
	}
	if end == 0 {
		return "", text
	}
	digits = strings.TrimLeft(text[:end], "0")
	if digits == "" {
		digits = "0"
	}
	return digits, text[end:]
}
