package manifest

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// mendKey deals with a key that is not followed by "=", or is no key.
func (p *parser) mendKey(s *scanner, i int) bool {
	st := s.statements[i]
	at := st.stuck.at
	if p.text[st.start] == '[' {
		return p.mendHeader(s, i)
	}
	if at < len(p.text) && p.text[at] == ':' && st.stuck.want == anEquals {
		p.report(at, at+1, "colon-for-equals", "Colon instead of an equals sign",
			`A key and its value are joined by "=". Write "=" in the place of ":".`)
		p.text[at] = '='
		return true
	}
	if at < len(p.text) && p.text[at] == ',' && st.stuck.deep && st.stuck.want == aName {
		return p.extraComma(at)
	}
	line := p.restOfLine(st.start)
	if comment := foreignComment(line); comment != "" {
		p.report(st.start, st.start+len(comment), "not-a-comment", "Comment that is not marked as one",
			`A comment starts with "#". Write "#" in the place of `+quote(comment)+".")
		p.blank(st.start, p.lineEnd(st.start))
		return true
	}
	return p.loseKey(st)
}

// loseKey reports a key that cannot be read. If the table lacks it then, the
// file is only read on for more mistakes of this sort.
func (p *parser) loseKey(st statement) bool {
	at := st.stuck.at
	from := st.start
	if st.stuck.deep {
		from = 1 + bytes.LastIndexAny(p.text[:at], "{,")
	}
	code, summary, detail := explainKey(p.restOfLine(from), p.restOfLine(at))
	_, size := utf8.DecodeRune(p.text[at:])
	p.report(at, min(at+size, p.lineEnd(at)), code, summary, detail)
	if st.stuck.deep {
		return p.loseValue(st)
	}
	p.lost = true
	p.blank(st.start, p.lineEnd(at))
	return true
}

// foreignComment returns the mark of a comment in another language.
func foreignComment(line string) string {
	for _, mark := range []string{"//", "/*", ";", "--", "<!--", "%"} {
		if strings.HasPrefix(line, mark) {
			return mark
		}
	}
	return ""
}

// explainKey says what is wrong with a line that should be "key = value", and
// where reading stopped in it.
func explainKey(line, rest string) (code, summary, detail string) {
	key, _, hasEquals := strings.Cut(line, "=")
	key = strings.TrimSpace(key)
	rest = strings.TrimSpace(rest)
	switch {
	case strings.HasPrefix(rest, "=") || strings.HasPrefix(rest, "."):
		return "missing-name", "Missing name in front of " + quote(rest[:1]),
			`A key has a name, and names joined by points have no gap. Write for example: name = "Rowan"`
	case startsCurly(rest):
		return "curly-quotes", "Curly quotation marks around a key",
			`Only straight quotation marks (") are understood, and most keys need none. Write the key without them.`
	case !hasEquals:
		return "missing-equals", `Key without "="`,
			`A key and its value have the form: key = value. Write an "=" behind the key, or put "#" in front to make the line a comment.`
	case strings.ContainsAny(key, "\"'\\"):
		return "bad-key", "Key that cannot be read",
			"The quotation marks or the backslash in this key are not understood. Write a key from letters a to z, digits, - and _."
	case strings.ContainsAny(key, " \t"):
		return "bad-key", "Key with a space in it",
			"A key is one word. Write for example: " + cut(strings.Join(strings.Fields(key), "_"))
	}
	return "bad-key", "Character that a key may not have",
		"A key is written with the letters a to z, digits, - and _. Put a key with other characters in quotes: " + quote(key) + " = ..."
}

// mendHeader deals with a header that is not well formed. The keys below it
// would land in the wrong table, so they go as well.
func (p *parser) mendHeader(s *scanner, i int) bool {
	st := s.statements[i]
	end := p.lineEnd(st.start)
	p.report(st.start, end, "bad-header", "Table header that cannot be read", explainHeader(p.restOfLine(st.start)))
	p.lost = true
	to := len(p.text)
	for _, next := range s.statements[i+1:] {
		if p.text[next.start] == '[' {
			to = next.start
			break
		}
	}
	p.blank(st.start, to)
	return true
}

// explainHeader says how the header should be written.
func explainHeader(line string) string {
	body, tail, closed := strings.Cut(strings.TrimLeft(line, "["), "]")
	body, tail = strings.TrimSpace(body), strings.TrimSpace(strings.TrimLeft(tail, "]"))
	double := strings.HasPrefix(line, "[[")
	inBrackets := func(name string) string {
		if double {
			name = "[" + name + "]"
		}
		return "[" + cut(name) + "]"
	}
	switch {
	case body == "":
		return "A table has a name. Write for example: [body]"
	case !closed:
		return `The closing bracket is missing. Write "]" at the end, for example: [body]`
	case tail != "" && !strings.HasPrefix(tail, "#"):
		return "Nothing may follow a header on its line. Write only: " + inBrackets(body)
	case double != strings.Contains(line, "]]"):
		return "There must be as many closing brackets as opening ones. Write: " + inBrackets(body)
	case strings.ContainsAny(body, "\"'\\"):
		return "The quotation marks in this name do not match. Write for example: [body]"
	case strings.HasPrefix(body, "."), strings.HasSuffix(body, "."), strings.Contains(body, ".."):
		return "In front of and behind each point there must be a name. Write for example: [fitted.panel]"
	case strings.ContainsAny(body, " \t"):
		return "A name is one word. Write for example: " + inBrackets(strings.Join(strings.Fields(body), "-"))
	}
	parts := strings.Split(body, ".")
	for i, part := range parts {
		parts[i] = bareOrQuoted(part)
	}
	return "A name is written with the letters a to z, digits, - and _; other characters need quotes. Write: " + inBrackets(strings.Join(parts, "."))
}
