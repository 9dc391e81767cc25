package render

import (
	"html"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"doorpocket/build/compare"
)

var tag = regexp.MustCompile(`<[^>]*>`)

// shownLines are the lines of a difference as a reader sees them.
func shownLines(f compare.File) string {
	return html.UnescapeString(tag.ReplaceAllString(string(difference(f)), ""))
}

// Whatever stands in a file, every line of a difference is shown, with its sign
// and nothing else, and none of it can be markup.
func FuzzDifference(f *testing.F) {
	for _, seed := range []string{"", "a = 1", "a = \"\"\"\nb", "<b>&amp;</b>", "x\r", "'''", "[a.b]\n# c\n\n", "a = \"\u2028\""} {
		f.Add(seed, true)
		f.Add(seed, false)
	}
	f.Fuzz(func(t *testing.T, text string, markdown bool) {
		if !utf8.ValidString(text) {
			return // the fleet could not be read
		}
		file := compare.File{Name: "vans/a.toml"}
		if markdown {
			file.Name = "pages/a.md"
		}
		var h compare.Hunk
		var want strings.Builder
		for i, line := range strings.Split(text, "\n") {
			mark := "+- "[i%3]
			h.Lines = append(h.Lines, compare.Line{Mark: mark, Text: line})
			want.WriteString(string(mark) + " " + line + "\n")
		}
		file.Hunks = []compare.Hunk{h}
		if got := shownLines(file); got != want.String() {
			t.Errorf("%q\n%q", got, want.String())
		}
	})
}
