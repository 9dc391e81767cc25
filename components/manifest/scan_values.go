package manifest

import "bytes"

// value reads one value at the given depth. A broken value still returns a
// node, as far as it goes.
func (s *scanner) value(depth int) (*node, bool) {
	n := &node{depth: depth, start: s.at, end: s.at}
	if depth > maxDepth {
		s.over("too-deep", s.at, s.at+1)
	}
	if s.limit != nil {
		return n, false
	}
	if s.at == len(s.text) {
		return n, s.fail(aValue, n)
	}
	var ok bool
	switch b := s.text[s.at]; b {
	case '[':
		ok = s.bracketed(n, s.list)
	case '{':
		ok = s.bracketed(n, s.inline)
	case '"', '\'':
		ok = s.anyText(n, b)
	default:
		ok = s.bare(n)
	}
	n.end = s.at
	return n, ok
}

// anyText reads a text in quotes of any kind.
func (s *scanner) anyText(n *node, quote byte) bool {
	s.leaves = append(s.leaves, n)
	closed := false
	if bytes.HasPrefix(s.text[s.at:], []byte{quote, quote, quote}) {
		closed = s.longText(quote)
	} else {
		closed = s.quoted(quote)
	}
	return closed || s.fail(aQuote, n)
}

// quoted reads a text in single quotation marks, which ends on its line.
func (s *scanner) quoted(quote byte) bool {
	for s.at++; s.at < len(s.text) && s.newline() == 0; s.at++ {
		switch b := s.text[s.at]; {
		case b == quote:
			s.at++
			return true
		case b == '\\' && quote == '"' && s.at+1 < len(s.text) && s.text[s.at+1] != '\n' && s.text[s.at+1] != '\r':
			s.at++
		}
	}
	return false
}

// longText reads a text in triple quotation marks. One or two of the marks may
// stand in it anywhere, also just before the three that end it.
func (s *scanner) longText(quote byte) bool {
	run := 0
	for s.at += 3; s.at < len(s.text); s.at++ {
		b := s.text[s.at]
		if b == quote {
			run++
			continue
		}
		if run >= 3 {
			return true
		}
		run = 0
		if b == '\\' && quote == '"' {
			s.at++
		}
	}
	s.at = len(s.text) // an escape at the very end steps over it
	return run >= 3
}

// bare reads a value without quotes: a number, date, yes or no, or the words
// of somebody who forgot the quotes. It ends where a well-formed one must.
func (s *scanner) bare(n *node) bool {
	s.leaves = append(s.leaves, n)
	ends := []byte("#")
	if s.nesting > 0 {
		ends = []byte("#,]}")
	}
	for s.at < len(s.text) && s.newline() == 0 && bytes.IndexByte(ends, s.text[s.at]) < 0 {
		s.at++
	}
	for s.at > n.start && (s.text[s.at-1] == ' ' || s.text[s.at-1] == '\t') {
		s.at--
	}
	return s.at > n.start || s.fail(aValue, n)
}

// bracketed reads a list or a table in braces.
func (s *scanner) bracketed(n *node, read func(*node) bool) bool {
	s.at++
	s.nesting++
	ok := read(n)
	s.nesting--
	return ok
}

// list reads the values of a list, behind the bracket.
func (s *scanner) list(n *node) bool {
	n.shape = list
	for {
		if s.skipBlank(); s.accept("]") {
			return true
		}
		if s.at == len(s.text) {
			return s.fail(aComma, n)
		}
		item, ok := s.value(n.depth + 1)
		if !ok {
			return false
		}
		n.items = append(n.items, item)
		if s.skipBlank(); !s.accept(",") && !s.ahead(']') {
			return s.fail(aComma, n)
		}
	}
}

// inline reads the keys of a table in braces, behind the brace.
func (s *scanner) inline(n *node) bool {
	n.shape, n.index = table, map[string]*member{}
	for from := s.at; ; {
		if s.skipBlank(); s.accept("}") {
			return true
		}
		if s.at == len(s.text) {
			return s.fail(aComma, n)
		}
		if _, ok := s.pair(n, from); !ok {
			return false
		}
		s.skipBlank()
		from = s.at
		if !s.accept(",") && !s.ahead('}') {
			return s.fail(aComma, n)
		}
	}
}

// ahead reports whether the byte stands here.
func (s *scanner) ahead(b byte) bool { return s.at < len(s.text) && s.text[s.at] == b }
