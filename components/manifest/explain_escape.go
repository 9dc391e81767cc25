package manifest

import (
	"regexp"
	"strings"
)

// Escapes that TOML knows, from the backslash on. The last one joins lines.
var (
	goodEscape = regexp.MustCompile(`^\\([btnfre"\\]|x[0-9A-Fa-f]{2}|u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|[ \t]*\r?\n)`)
	longEscape = regexp.MustCompile(`^\\[xuU][0-9A-Fa-f]*`)
)

// badEscape returns the place and length in bytes of the first backslash of a
// text in quotes that begins nothing TOML knows; the length is 0 if there is
// none.
func badEscape(written string) (at, length int) {
	if !strings.HasPrefix(written, `"`) {
		return 0, 0
	}
	for at = strings.IndexByte(written, '\\'); at >= 0; {
		good := len(goodEscape.FindString(written[at:]))
		if good == 0 || impossibleRune(written[at:at+good]) {
			return at, max(len(longEscape.FindString(written[at:])), 2)
		}
		next := strings.IndexByte(written[at+good:], '\\')
		if next < 0 {
			break
		}
		at += good + next
	}
	return 0, 0
}

// impossibleRune reports whether an escape names a number that is no character.
func impossibleRune(escape string) bool {
	_, ok := unquote([]byte(`"` + escape + `"`))
	return !ok && !strings.ContainsAny(escape, "\r\n")
}
