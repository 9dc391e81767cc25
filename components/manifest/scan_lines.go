package manifest

// statement is one header or one key with its value.
type statement struct {
	start int
	value *node // nil for a header, or if it did not get so far
	stuck stuck // what is wrong with it, if anything
}

// wanted is what the scanner looked for when it got stuck.
type wanted uint8

const (
	nothing  wanted = iota // not stuck
	aName                  // a name of a key or header
	anEquals               // "=" behind a key
	aValue                 // a value, but there is nothing
	aQuote                 // the end of a text
	aComma                 // a comma or the end of a list or table in braces
	aBracket               // the end of a header
	aLineEnd               // the end of the line behind a header or value
)

// stuck is where the scanner could not go on in a statement, and why.
type stuck struct {
	want wanted
	at   int
	in   *node // for aQuote and aComma: what is not closed
	deep bool  // inside a list or braces
}

// scanner finds where keys and values stand. What a value means is left to the
// TOML library. The scanner accepts whatever the library accepts; of a broken
// line it makes as much as it can, so that the mistake can be explained.
type scanner struct {
	text       []byte
	at         int
	root       *node
	current    *node // the table that keys go into
	statements []statement
	conflicts  []conflict
	discarding bool // current belongs to a header that is in conflict
	keys       int
	mostKeys   int
	nesting    int     // brackets and braces open around here
	leaves     []*node // every value that holds no others, in order
	stuck      stuck
	limit      *limitHit
}

// limitHit says which limit of ours a file goes over, and where.
type limitHit struct {
	code       string
	start, end int
}

// scan reads a whole text.
func scan(text []byte, mostKeys int) *scanner {
	s := &scanner{text: text, mostKeys: mostKeys, root: newTable(header, 0, 0, 0)}
	s.current = s.root
	for s.skipBlank(); s.at < len(s.text) && s.limit == nil; s.skipBlank() {
		s.statement()
	}
	s.endDiscard(len(s.text))
	return s
}

// statement reads one statement and the end of its line.
func (s *scanner) statement() {
	st := statement{start: s.at}
	s.stuck = stuck{}
	if s.text[s.at] == '[' {
		s.endDiscard(s.at)
		s.header()
	} else {
		st.value, _ = s.pair(s.current, s.at)
	}
	s.skipSpace()
	if s.at < len(s.text) && s.text[s.at] != '#' && s.newline() == 0 {
		s.fail(aLineEnd, nil)
	}
	st.stuck = s.stuck
	s.statements = append(s.statements, st)
	s.skipLine()
}

// fail notes where a statement goes wrong; only the first time counts.
func (s *scanner) fail(want wanted, in *node) bool {
	if s.stuck.want == nothing {
		s.stuck = stuck{want, s.at, in, s.nesting > 0}
	}
	return false
}

// header reads [name] or [[name]] and makes the table current.
func (s *scanner) header() {
	start, closing, open := s.at, "]", (*node).open
	s.at++
	if s.accept("[") {
		closing, open = "]]", (*node).openItem
	}
	parts, ok := s.key()
	if !ok {
		return
	}
	if !s.accept(closing) {
		s.fail(aBracket, nil)
		return
	}
	if !s.within(s.root, parts) {
		return
	}
	opened, taken := open(s.root, parts, start, s.at)
	if taken != nil {
		// Its keys go into a table that nobody sees, until the next header.
		s.conflict(parts, taken, true, start, s.at)
		s.discarding = true
		opened = newTable(header, len(parts), start, s.at)
	}
	s.current = opened
}

// pair reads "key = value" into a table. A comma or the like that has to go
// too if the key is left out starts at from.
func (s *scanner) pair(into *node, from int) (*node, bool) {
	parts, ok := s.key()
	if !ok {
		return nil, false
	}
	if !s.accept("=") {
		return nil, s.fail(anEquals, nil)
	}
	if !s.within(into, parts) {
		return nil, false
	}
	s.skipSpace()
	value, ok := s.value(into.depth + len(parts))
	if ok {
		if taken := into.set(parts, value); taken != nil {
			s.conflict(parts, taken, false, from, s.at)
		}
	}
	return value, ok
}

// conflict notes that a key is taken. Inside a table that is left out anyway
// there is nothing to say.
func (s *scanner) conflict(parts []keyPart, taken *member, header bool, from, to int) {
	if s.discarding {
		return
	}
	at, through := parts[len(parts)-1], false
	for _, part := range parts[:len(parts)-1] {
		if part.name == taken.name {
			at, through = part, true
			break
		}
	}
	s.conflicts = append(s.conflicts, conflict{at.name, at.start, at.end, taken, header, through, from, to})
}

// endDiscard ends the part of the file that a header in conflict governs.
func (s *scanner) endDiscard(at int) {
	if s.discarding {
		s.conflicts[len(s.conflicts)-1].to = at
		s.discarding = false
	}
}

// within reports whether a key stays inside our limits, and notes it if not.
func (s *scanner) within(into *node, parts []keyPart) bool {
	bytes := 0
	for _, part := range parts {
		bytes += len(part.name)
	}
	s.keys++
	first, last := parts[0], parts[len(parts)-1]
	switch {
	case into.depth+len(parts) > maxDepth:
		s.over("too-deep", first.start, last.end)
	case bytes > maxPath:
		s.over("key-too-long", first.start, last.end)
	case s.keys > s.mostKeys:
		s.over("too-many-keys", first.start, last.end)
	}
	return s.limit == nil
}

// over notes the first limit that is gone over; the scan ends there.
func (s *scanner) over(code string, start, end int) {
	if s.limit == nil {
		s.limit = &limitHit{code, start, end}
	}
}

// skipBlank moves over spaces, line ends and comments.
func (s *scanner) skipBlank() {
	for {
		s.skipSpace()
		switch n := s.newline(); {
		case n > 0:
			s.at += n
		case s.at < len(s.text) && s.text[s.at] == '#':
			s.skipLine()
		default:
			return
		}
	}
}

// skipSpace moves over spaces and tabs.
func (s *scanner) skipSpace() {
	for s.at < len(s.text) && (s.text[s.at] == ' ' || s.text[s.at] == '\t') {
		s.at++
	}
}

// skipLine moves to the end of the line, in front of its line ending.
func (s *scanner) skipLine() {
	for s.at < len(s.text) && s.newline() == 0 {
		s.at++
	}
}

// newline returns the length of the line ending here, 0 if there is none.
func (s *scanner) newline() int {
	rest := s.text[s.at:]
	switch {
	case len(rest) > 0 && rest[0] == '\n':
		return 1
	case len(rest) > 1 && rest[0] == '\r' && rest[1] == '\n':
		return 2
	}
	return 0
}

// accept moves over a text if it stands here.
func (s *scanner) accept(want string) bool {
	if len(s.text)-s.at < len(want) || string(s.text[s.at:s.at+len(want)]) != want {
		return false
	}
	s.at += len(want)
	return true
}
