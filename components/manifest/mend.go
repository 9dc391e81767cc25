package manifest

import (
	"bytes"
	"cmp"
	"slices"
)

// mend explains what is wrong where the library gave up, and changes the text
// so that the rest can be read. It reports whether it is worth reading again.
func (p *parser) mend(s *scanner, f *fault) bool {
	before := bytes.Clone(p.text)
	i := s.blame(f.offset)
	if i < 0 {
		return p.giveUp(f)
	}
	st := s.statements[i]
	again := false
	if st.stuck.want == nothing {
		again = p.mendMeaning(s, st, f)
	} else {
		again = p.mendStuck(s, i)
	}
	return again && !bytes.Equal(before, p.text)
}

// blame returns the index of the statement that a fault belongs to, or -1. The
// first statement in which the scanner got stuck comes first: a text that is
// not closed shows its effect far below.
func (s *scanner) blame(offset int) int {
	last := -1
	for i, st := range s.statements {
		if st.start > offset {
			break
		}
		if last = i; st.stuck.want != nothing {
			break
		}
	}
	return last
}

// mendStuck deals with a statement that is not well formed.
func (p *parser) mendStuck(s *scanner, i int) bool {
	st := s.statements[i]
	switch st.stuck.want {
	case aName, anEquals:
		return p.mendKey(s, i)
	case aBracket:
		return p.mendHeader(s, i)
	case aLineEnd:
		if st.value == nil {
			return p.mendHeader(s, i)
		}
		return p.mendTail(s, st)
	case aValue:
		return p.mendNoValue(s, st)
	case aQuote:
		return p.mendOpenText(st)
	}
	return p.mendOpenList(s, st)
}

// mendMeaning deals with a well-formed value that means nothing, such as a
// number that is too large or a word without quotes.
func (p *parser) mendMeaning(s *scanner, st statement, f *fault) bool {
	leaf := s.leafAt(st, f.offset)
	if leaf == nil {
		return p.giveUp(f)
	}
	written := string(p.text[leaf.start:leaf.end])
	code, summary, detail := explainLeaf(written, leaf != st.value)
	from, to := leaf.start, leaf.end
	if at, length := badEscape(written); length > 0 {
		from, to = from+at, from+at+length
	}
	p.report(from, to, code, summary, detail)
	p.stub(leaf.start, leaf.end)
	return true
}

// giveUp reports a fault that nothing better is known about.
func (p *parser) giveUp(f *fault) bool {
	p.report(f.offset, f.offset+f.length, "syntax", "Line that is not understood",
		"Here the file is not written as TOML asks ("+cut(f.message)+"). Compare it with a line that works, or remove it.")
	return false
}

// leafAt returns the last value without parts that starts in a statement and
// not behind an offset; a fault may lie just behind the value it is about.
func (s *scanner) leafAt(st statement, offset int) *node {
	if st.value == nil {
		return nil
	}
	i, exact := slices.BinarySearchFunc(s.leaves, offset, func(n *node, at int) int { return cmp.Compare(n.start, at) })
	if !exact {
		i--
	}
	if i < 0 || s.leaves[i].start < st.value.start {
		return nil
	}
	return s.leaves[i]
}

// stub puts a nought in the place of a value and remembers that it was broken.
func (p *parser) stub(start, end int) {
	if p.text[start] == '0' && end == start+1 {
		return
	}
	p.blank(start, end)
	p.text[start] = '0'
	p.broken[start] = end
}

// lineEnd returns the offset of the end of the line that holds an offset.
func (p *parser) lineEnd(offset int) int {
	end := p.source.lineEnd(p.source.lineAt(offset))
	if end > offset && p.text[end-1] == '\r' {
		end--
	}
	return end
}

// sameLine reports whether two offsets are on one line.
func (p *parser) sameLine(a, b int) bool { return p.source.lineAt(a) == p.source.lineAt(b) }

// restOfLine returns what stands from an offset to the end of its line.
func (p *parser) restOfLine(offset int) string { return string(p.text[offset:p.lineEnd(offset)]) }
