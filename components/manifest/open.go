package manifest

import (
	"bytes"
	"fmt"
	"unicode"
	"unicode/utf8"

	"doorpocket/components/problem"
)

// open checks that the data is plain UTF-8 text of a reasonable size.
func open(name string, data []byte, most int, found *problem.List) (*Source, bool) {
	whole := problem.Span{File: name}
	if len(data) > most {
		found.Errorf(whole, "file-too-large", "File that is too large",
			"The file has %d bytes; at most %d are read. Check that it is the right file, or split it.", len(data), most)
		return nil, false
	}
	if encoding := wideEncoding(data); encoding != "" {
		whole.Start = problem.Pos{Line: 1, Column: 1}
		found.Errorf(whole, "not-utf-8", "File that is not UTF-8 text",
			"The file seems to be written in %s. Save it again with the encoding UTF-8.", encoding)
		return nil, false
	}
	text, marked := cutMarks(data)
	source := NewSource(name, text)
	if marked {
		found.Add(problem.New(problem.Warning, source.Span(0, 0), "byte-order-mark", "Byte order mark at the start of the file",
			"Some editors put this invisible mark in front of UTF-8 text. It is ignored; save the file without it (UTF-8 without BOM).").
			WithLine(source.quoted(1)))
	}
	return source, checkBytes(source, len(data)-len(text), found)
}

// utf8Mark is the byte order mark in UTF-8.
var utf8Mark = []byte("\uFEFF")

// cutMarks removes byte order marks from the start.
func cutMarks(data []byte) (text []byte, marked bool) {
	for bytes.HasPrefix(data, utf8Mark) {
		data, marked = data[len(utf8Mark):], true
	}
	return data, marked
}

// wideEncoding names the encoding of a file whose first characters take more
// than one byte each, or returns "".
func wideEncoding(data []byte) string {
	starts := func(mark string) bool { return bytes.HasPrefix(data, []byte(mark)) }
	switch {
	case starts("\xff\xfe\x00\x00"), starts("\x00\x00\xfe\xff"):
		return "UTF-32"
	case starts("\xff\xfe"), starts("\xfe\xff"):
		return "UTF-16"
	case len(data) >= 4 && data[0] != 0 && data[1] == 0 && data[2] != 0 && data[3] == 0:
		return "UTF-16"
	case len(data) >= 4 && data[0] == 0 && data[1] != 0 && data[2] == 0 && data[3] != 0:
		return "UTF-16"
	}
	return ""
}

// checkBytes reports bytes that no text file has. Offsets in messages count
// from the start of the file, so the marks that were cut are added.
func checkBytes(s *Source, cut int, found *problem.List) bool {
	ok := true
	for i := 0; i < len(s.Data); {
		r, size := utf8.DecodeRune(s.Data[i:])
		if code, summary, detail := badRune(s.Data[i:], r, size, i+cut); code != "" {
			span := spanOfByte(s, i)
			found.Add(problem.New(problem.Error, span, code, summary, detail).WithLine(s.quoted(span.Start.Line)))
			if ok = false; len(*found) >= maxReported {
				break
			}
		}
		i += size
	}
	return ok
}

// spanOfByte marks one character. It counts a byte that is not UTF-8 as one,
// which Source.Span need not know about.
func spanOfByte(s *Source, offset int) problem.Span {
	line := s.lineAt(offset)
	column := utf8.RuneCount(s.Data[s.lines[line-1]:offset]) + 1
	return problem.Span{File: s.Name, Start: problem.Pos{Line: line, Column: column}, Length: 1}
}

// badRune describes what is wrong with the first rune of a text, if anything.
func badRune(text []byte, r rune, size, offset int) (code, summary, detail string) {
	switch {
	case r == utf8.RuneError && size == 1:
		return "not-utf-8", "Text that is not UTF-8", fmt.Sprintf(
			"Byte %d of the file (hexadecimal %02x) is not UTF-8. Save the file again with the encoding UTF-8.", offset+1, text[0])
	case r == 0:
		return "control-character", "NUL byte", fmt.Sprintf(
			"Byte %d of the file is zero, which no text has. The file is damaged or is not a text file; restore it from a copy.", offset+1)
	case r == '\r' && (len(text) < 2 || text[1] != '\n'):
		return "control-character", "Line ending that is not understood",
			"A line ends with a carriage return alone. Save the file with the line endings of Unix or Windows."
	case r < ' ' && r != '\t' && r != '\n' && r != '\r', r == 0x7f:
		return "control-character", fmt.Sprintf("Control character U+%04X", r),
			"A character that cannot be seen stands here. Delete it, or type the text again."
	case unprintable(r):
		return "unprintable", fmt.Sprintf("Character U+%04X", r),
			"Unicode keeps this character free for the inner use of programs. Delete it."
	}
	return "", "", ""
}

// unprintable reports whether a character is none that a text has: a control
// character other than tab and line ending, or one that Unicode keeps free for
// the inner use of programs such as this.
func unprintable(r rune) bool {
	return r < ' ' && r != '\t' && r != '\n' && r != '\r' || r == 0x7f || unicode.Is(unicode.Noncharacter_Code_Point, r)
}
