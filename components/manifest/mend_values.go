package manifest

import (
	"strings"

	"doorpocket/components/problem"
)

// mendNoValue deals with "key =" and with a comma too many.
func (p *parser) mendNoValue(s *scanner, st statement) bool {
	at := st.stuck.at
	if at < len(p.text) && p.text[at] == ',' {
		return p.extraComma(at)
	}
	p.report(at, at, "missing-value", "Missing value",
		`Nothing is written behind "=". Write the value, or remove the key.`)
	if st.stuck.deep {
		return p.loseValue(st)
	}
	p.lost = true
	p.blank(st.start, p.lineEnd(at))
	return true
}

// extraComma deals with a comma that parts nothing.
func (p *parser) extraComma(at int) bool {
	p.report(at, at+1, "extra-comma", "Comma with nothing in front of it",
		"In front of a comma there must be a value. Remove this comma.")
	p.blank(at, at+1)
	return true
}

// mendOpenText deals with a text whose closing quotation mark is missing.
func (p *parser) mendOpenText(st statement) bool {
	n := st.stuck.in
	written := string(p.text[n.start:n.end])
	if long := written[:min(3, len(written))]; long == `"""` || long == "'''" {
		p.report(n.start, n.start+3, "unclosed-text", "Text that is not closed",
			"This text starts with "+long+" and never ends. Write "+long+" behind its last word.")
		return false
	}
	code, summary, detail := explainOpenText(written)
	p.report(n.start, n.end, code, summary, detail)
	end := n.end
	if n != st.value {
		// The closing brackets on the line belong to the list around the text.
		end = n.start + max(1, len(strings.TrimRight(written, "]}, \t")))
	}
	p.stub(n.start, end)
	return true
}

// explainOpenText says what to write at the end of a text.
func explainOpenText(written string) (code, summary, detail string) {
	quote := written[:1]
	if i := strings.IndexFunc(written, isCurly); i >= 0 && quote == `"` {
		return "curly-quotes", "Curly quotation mark at the end of a text",
			`A text ends with a straight quotation mark ("), as it starts. Write " in the place of the curly one.`
	}
	if quote == "'" {
		return "unclosed-text", "Text that is not closed",
			"This text starts with ' and does not end on its line. Write ' behind it; a text with an apostrophe in it stands between two \"."
	}
	return "unclosed-text", "Text that is not closed",
		`This text starts with " and does not end on its line. Write " behind its last word.`
}

// mendTail deals with something behind a value that does not belong there.
func (p *parser) mendTail(s *scanner, st statement) bool {
	at := st.stuck.at
	end := p.lineEnd(at)
	code, summary, detail := explainTail(string(p.text[st.value.start:st.value.end]), p.restOfLine(at))
	p.report(at, end, code, summary, detail)
	p.stub(st.value.start, end)
	return true
}

// explainTail says what to do about the rest of a line behind a value.
func explainTail(value, rest string) (code, summary, detail string) {
	inside := strings.Trim(value, `"'`)
	rest = strings.TrimSpace(rest)
	isText := value[0] == '"' || value[0] == '\''
	switch {
	case value[0] == '\'' && strings.Contains(rest, "'"):
		return "quotes-in-text", "Quotation mark inside a text",
			`The text ends at its second mark. Put a text with an apostrophe in it between two ", for example: "the driver's door"`
	case value == `""` && strings.HasPrefix(rest, `"`), isText && strings.Contains(rest, value[:1]):
		return "quotes-in-text", "Quotation marks inside a text",
			`The text ends at its second quotation mark. Write the inner ones as \", for example: "The \"big\" tap"`
	case isText && !strings.Contains(value, "\n"):
		return "text-after-value", "Something behind the closing quotation mark",
			"All of a text stands between its quotation marks. Write " + quote(inside+" "+rest) + ", or remove what follows."
	}
	return "text-after-value", "Something behind a value",
		`Only a comment may follow a value on its line. Remove it, or put "#" in front.`
}

// mendOpenList deals with a list or braces in which a comma or the end is
// missing.
func (p *parser) mendOpenList(s *scanner, st statement) bool {
	n, at := st.stuck.in, st.stuck.at
	if p.beginsStatement(n, at) {
		p.reportOpen(n, at)
		if at == len(p.text) {
			return false
		}
		p.stub(st.value.start, p.source.lines[p.source.lineAt(at)-1])
		return true
	}
	return p.mendComma(s, st)
}

// reportOpen reports a bracket that is never closed, and where that was noticed.
func (p *parser) reportOpen(n *node, at int) {
	code, summary, detail := "unclosed-list", "List that is not closed", `This list starts with "[" and does not end. Write "]" behind its last value.`
	if n.shape == table {
		code, summary, detail = "unclosed-table", "Braces that are not closed", `This table starts with "{" and does not end. Write "}" behind its last value.`
	}
	span := p.source.Span(n.start, n.start+1)
	p.found.Add(problem.New(problem.Error, span, code, summary, detail).
		WithLine(p.source.quoted(span.Start.Line)).WithNote(p.source.Span(at, at), "noticed here"))
}

// beginsStatement reports whether an offset inside an open list looks like the
// start of the next statement: a new line with a key or header, or the end.
func (p *parser) beginsStatement(n *node, at int) bool {
	if at >= len(p.text) {
		return true
	}
	if p.sameLine(n.start, at) || strings.TrimSpace(string(p.text[p.source.lines[p.source.lineAt(at)-1]:at])) != "" {
		return false
	}
	probe := &scanner{text: p.text, at: at}
	if p.text[at] == '[' {
		probe.accept("[[")
		probe.accept("[")
		_, ok := probe.key()
		return ok && probe.accept("]")
	}
	_, ok := probe.key()
	if !ok || !probe.accept("=") {
		return false
	}
	// Braces may go over several lines, but then nothing follows the first one.
	return n.shape == list || strings.TrimSpace(p.restOfLine(n.start+1)) != ""
}

// mendComma deals with a missing comma, or with words behind a value in a list.
func (p *parser) mendComma(s *scanner, st statement) bool {
	at := st.stuck.at
	next := st.stuck.in.shape == list && strings.IndexByte(`"'[{0123456789+-`, p.text[at]) >= 0
	if st.stuck.in.shape == table {
		probe := &scanner{text: p.text, at: at}
		_, ok := probe.key()
		next = ok && probe.accept("=")
	}
	if next && p.text[at-1] != ',' {
		p.report(at, at+1, "missing-comma", "Missing comma", "Values in a list or in braces are parted by commas. Write a comma in front of this one.")
		if end := lastEnd(st.stuck.in); strings.IndexByte(" \t\r\n", p.text[end]) >= 0 {
			p.text[end] = ','
			return true
		}
		return p.loseValue(st)
	}
	p.report(at, at+1, "text-after-value", "Something behind a value in a list or in braces",
		"A comma or the closing bracket was expected here. Check that each text in front of this place has both of its quotation marks.")
	return p.loseValue(st)
}

// lastEnd returns the offset behind the last value of a list or braces.
func lastEnd(n *node) int {
	for n.shape == table {
		last := n.members[len(n.members)-1].value
		if last.origin != dotted {
			return last.end
		}
		n = last
	}
	return n.items[len(n.items)-1].end
}

// loseValue stubs a whole value if it stands on one line.
func (p *parser) loseValue(st statement) bool {
	if !p.sameLine(st.value.start, st.stuck.at) {
		return false
	}
	p.stub(st.value.start, p.lineEnd(st.stuck.at))
	return true
}
