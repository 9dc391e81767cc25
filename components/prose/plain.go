package prose

import (
	"html"
	"strings"
)

// plain is HTML of our own making without its tags; the end of a block
// becomes a space, so that words do not run together.
func plain(markup string) string {
	var b strings.Builder
	for {
		open := strings.IndexByte(markup, '<')
		if open < 0 {
			b.WriteString(markup)
			break
		}
		b.WriteString(markup[:open])
		end := strings.IndexByte(markup[open:], '>')
		if end < 0 {
			break
		}
		if tag := markup[open : open+end+1]; !inlineTag(tag) {
			b.WriteByte(' ')
		}
		markup = markup[open+end+1:]
	}
	return html.UnescapeString(strings.ReplaceAll(b.String(), "\n", " "))
}

func inlineTag(tag string) bool {
	name := strings.TrimPrefix(strings.TrimPrefix(tag, "<"), "/")
	for _, inline := range []string{"strong>", "em>", "code>", "a ", "a>"} {
		if strings.HasPrefix(name, inline) {
			return true
		}
	}
	return false
}

// squeeze turns every run of white space into one space.
func squeeze(s string) string { return strings.Join(strings.Fields(s), " ") }
