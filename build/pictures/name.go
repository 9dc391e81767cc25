package pictures

import (
	"path"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// maxBase keeps names of files within what every host takes.
const maxBase = 40

// base is a file's name without folder and ending, in small letters, digits and
// hyphens: it becomes part of an address.
func base(name string) string {
	var b strings.Builder
	name = path.Base(name)
	stem := strings.TrimSuffix(name, path.Ext(name))
	for _, r := range norm.NFKD.String(strings.ToLower(stem)) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case unicode.Is(unicode.Mn, r): // an accent that stood on a letter
		default:
			if !strings.HasSuffix(b.String(), "-") {
				b.WriteByte('-')
			}
		}
		if b.Len() >= maxBase {
			break
		}
	}
	if text := strings.Trim(b.String(), "-"); text != "" {
		return text
	}
	return "picture"
}
