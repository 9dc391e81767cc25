package manifest

import (
	"strconv"
	"strings"
)

// longestQuote is how many runes of something written are repeated in a message.
const longestQuote = 40

// quote returns a name or value between quotation marks for use in a message,
// cut if it is long.
func quote(text string) string { return `"` + cut(text) + `"` }

// cut shortens a text for use in a message and keeps it on one line.
func cut(text string) string {
	text = strings.Join(strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' }), " ")
	if runes := []rune(text); len(runes) > longestQuote {
		return string(runes[:longestQuote]) + "..."
	}
	return text
}

// bareOrQuoted returns a name as it is written in a file.
func bareOrQuoted(name string) string {
	for i := range len(name) {
		if !bareKey(name[i]) {
			return strconv.Quote(name)
		}
	}
	if name == "" {
		return `""`
	}
	return name
}
