package problem

import (
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// safe returns a text that cannot drive a terminal: control characters and
// characters that reorder or hide text become visible signs. Line feeds go
// too, because everything that is printed is one line of its own.
func safe(text string) string {
	if strings.IndexFunc(text, unsafeRune) < 0 {
		return strings.ToValidUTF8(text, "\uFFFD")
	}
	return strings.Map(visible, text)
}

// unsafeRune reports whether visible would change the rune.
func unsafeRune(r rune) bool { return visible(r) != r }

// visible returns the rune itself if it may be printed as it is, else a sign
// that stands for it and takes one column.
func visible(r rune) rune {
	switch {
	case r < ' ':
		return '\u2400' + r // the control pictures: U+2400 stands for NUL
	case r == 0x7f:
		return '\u2421'
	case unicode.Is(unicode.Cf, r), unicode.Is(unicode.Cc, r), unicode.Is(unicode.Zl, r), unicode.Is(unicode.Zp, r):
		return '\uFFFD' // direction marks, C1 controls, odd line ends
	}
	return r
}

// columns returns how many columns of a terminal a visible rune takes.
func columns(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}
