package manifest

import "bytes"

// key reads the names of a key, with the spaces around the dots and behind it.
func (s *scanner) key() ([]keyPart, bool) {
	var parts []keyPart
	for {
		s.skipSpace()
		part, ok := s.name()
		if !ok {
			return nil, false
		}
		if parts = append(parts, part); len(parts) > maxDepth {
			s.over("too-deep", parts[0].start, part.end)
			return nil, false
		}
		s.skipSpace()
		if !s.accept(".") {
			return parts, true
		}
	}
}

// name reads one name, bare or in quotes.
func (s *scanner) name() (keyPart, bool) {
	start := s.at
	if s.at < len(s.text) && (s.text[s.at] == '"' || s.text[s.at] == '\'') {
		closed := s.quoted(s.text[s.at])
		if closed {
			if name, ok := unquote(s.text[start:s.at]); ok {
				return keyPart{name, start, s.at}, true
			}
		}
		s.at = start
		return keyPart{}, s.fail(aName, nil)
	}
	for s.at < len(s.text) && bareKey(s.text[s.at]) {
		s.at++
	}
	if s.at == start {
		return keyPart{}, s.fail(aName, nil)
	}
	return keyPart{string(s.text[start:s.at]), start, s.at}, true
}

// unquote returns the name that stands between quotes. Escapes are rare in
// names, so the library may do them.
func unquote(quoted []byte) (string, bool) {
	if quoted[0] == '\'' || bytes.IndexByte(quoted, '\\') < 0 {
		return string(quoted[1 : len(quoted)-1]), true
	}
	values, err := decode(append([]byte("name = "), quoted...))
	if err != nil {
		return "", false
	}
	name, ok := values["name"].(string)
	return name, ok
}

// bareKey reports whether a name may hold the byte without quotes.
func bareKey(b byte) bool {
	return b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' || b >= '0' && b <= '9' || b == '-' || b == '_'
}
