package reading

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Sentences parts plain text into sentences. An empty line ends one; a list
// item (-, *, •, 1. or 2) at the start of a line) and a heading (# at the start
// of a line) begin one, a heading ends with its line. Any other line break is
// white space. Marks of items and headings are not part of the sentence.
//
// Within a line a sentence ends with . ! ? or … and what closes after it, before
// white space and a word that does not begin with a small letter. The point of
// an abbreviation or of a number such as 2.5 or 1. does not end one.
func Sentences(text string) []string {
	var all []string
	for _, block := range blocks(text) {
		all = append(all, split(block)...)
	}
	return all
}

var (
	itemMark    = regexp.MustCompile(`^\s*(?:[-*+•]|\d{1,3}[.)])\s+`)
	headingMark = regexp.MustCompile(`^\s*#{1,6}\s+`)
)

// blocks parts a text into paragraphs, items and headings, each on one line.
func blocks(text string) []string {
	var all []string
	var open []string
	end := func() {
		if words := strings.Fields(strings.Join(open, " ")); len(words) > 0 {
			all = append(all, strings.Join(words, " "))
		}
		open = nil
	}
	for line := range strings.SplitSeq(text, "\n") {
		heading, item := headingMark.FindString(line), itemMark.FindString(line)
		if strings.TrimSpace(line) == "" || heading != "" || item != "" {
			end()
		}
		open = append(open, line[len(heading)+len(item):])
		if heading != "" {
			end()
		}
	}
	end()
	return all
}

// split parts one block at the ends of its sentences.
func split(block string) []string {
	var all []string
	start := 0
	for i, r := range block {
		if i < start || !strings.ContainsRune(".!?…", r) {
			continue
		}
		end := i + utf8.RuneLen(r)
		end += len(block[end:]) - len(strings.TrimLeft(block[end:], ".!?…\"'”’)]»*_"))
		if endsAt(block[start:end], block[end:]) {
			all = append(all, strings.TrimSpace(block[start:end]))
			start = end
		}
	}
	if rest := strings.TrimSpace(block[start:]); rest != "" {
		all = append(all, rest)
	}
	return all
}

// endsAt reports whether a sentence ends between what was read and the rest.
func endsAt(read, rest string) bool {
	next, _ := utf8.DecodeRuneInString(strings.TrimLeft(rest, " \"'“‘([«*_"))
	switch {
	case rest == "":
		return true
	case rest[0] != ' ', unicode.IsLower(next):
		return false
	case !strings.HasSuffix(read, "."):
		return true
	}
	words := strings.Fields(read)
	last := strings.ToLower(strings.TrimLeft(words[len(words)-1], "\"'“‘([«"))
	return !never[last] && !(beforeNumber[last] && unicode.IsDigit(next)) && !initial(words)
}

// initial reports whether the last word is the single letter of a name, as in
// "J. Smith": it stands first or after a capital. "Lever in P." is none.
func initial(words []string) bool {
	n := len(words)
	r, size := utf8.DecodeRuneInString(words[n-1])
	if len(words[n-1]) != size+1 || !unicode.IsUpper(r) {
		return false
	}
	if n == 1 {
		return true
	}
	before, _ := utf8.DecodeRuneInString(words[n-2])
	return unicode.IsUpper(before)
}

// never are abbreviations that go on: something must follow them.
var never = set("e.g.", "i.e.", "cf.", "vs.", "mr.", "mrs.", "ms.", "dr.", "st.", "prof.")

// beforeNumber are abbreviations before a number, and words otherwise.
var beforeNumber = set("no.", "nos.", "fig.", "p.", "pp.", "max.", "min.", "approx.", "ca.", "art.", "sec.", "ch.", "vol.", "tel.")

func set(words ...string) map[string]bool {
	all := make(map[string]bool, len(words))
	for _, w := range words {
		all[w] = true
	}
	return all
}
