package label

import (
	"bytes"

	"doorpocket/components/manifest"
)

// pieceLines is how many labels are read at a time. Reading takes many times the
// memory of what is kept, and a large fleet has a hundred thousand.
const pieceLines = 1000

// inPieces reads a register piece by piece, as long as there is nothing to say of
// it; nil where there is, or where it is not in the form in which the program keeps
// it: the labels last, a line each.
func inPieces(name string, data []byte, lines int) *Register {
	head, labels, ok := labelLines(data)
	if !ok {
		return nil
	}
	p := &registerParser{register: (*Register)(nil).clone()}
	p.register.File, p.register.written = name, data
	if !p.piece(name, head) {
		return nil
	}
	p.above = bytes.Count(head, newline) // and a header of its own above each piece, as there is one above all
	for len(labels) > 0 {
		end := endOfLines(labels, lines)
		if !p.piece(name, append([]byte("[label]\n"), labels[:end]...)) {
			return nil
		}
		p.above += bytes.Count(labels[:end], newline)
		labels = labels[end:]
	}
	p.compare()
	if len(p.found) > 0 || len(p.register.byRef) < len(p.register.Entries) { // some are there twice
		return nil
	}
	return p.register
}

var newline = []byte("\n")

// labelLines cuts a register below the header of its labels, ok where every line
// from there on is one of them: another header would end them.
func labelLines(data []byte) (head, labels []byte, ok bool) {
	at := 0
	for line := range bytes.Lines(data) {
		at += len(line)
		switch text := bytes.TrimSpace(line); {
		case ok && bytes.HasPrefix(text, []byte("[")):
			return nil, nil, false
		case !ok && string(text) == "[label]":
			head, labels, ok = data[:at-len(line)], data[at:], true
		}
	}
	return head, labels, ok
}

// endOfLines is where so many lines of a text end.
func endOfLines(text []byte, lines int) int {
	at := 0
	for ; lines > 0; lines-- {
		i := bytes.IndexByte(text[at:], '\n')
		if i < 0 {
			return len(text)
		}
		at += i + 1
	}
	return at
}

// piece reads what stands in one piece, and reports whether there was nothing to
// say of it.
func (p *registerParser) piece(name string, text []byte) bool {
	table, found := manifest.ParseKept(name, text)
	if table == nil || len(found) > 0 {
		return false
	}
	p.read(manifest.NewReader(table, &p.found))
	return len(p.found) == 0
}
