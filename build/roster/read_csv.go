package roster

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"regexp"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"doorpocket/components/problem"
)

// readCSV reads a file of text. Spreadsheets write UTF-8 with or without a mark,
// UTF-16 with one, or what Windows used before (code page 1252); and commas,
// semicolons or tabs between cells. They do not say which.
func readCSV(name string, data []byte) (*Table, problem.List) {
	text, err := decoded(data)
	if err != nil {
		return refuse(name, "bad-encoding", "The characters of the file are not understood", errors.New("save it as CSV UTF-8"))
	}
	if strings.ContainsRune(text, 0) {
		return refuse(name, "no-table", "This is no table", errors.New("save it as .xlsx or .csv"))
	}
	mark, rest := separator(text)
	r := csv.NewReader(strings.NewReader(rest))
	r.Comma, r.FieldsPerRecord = mark, -1
	t := &Table{File: name}
	next, began, read := 1, 1, int64(0) // lines, and how far in the text
	for {
		record, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return badCSV(t, err)
		}
		// An empty line is a row to a spreadsheet, and the reader leaves it out.
		line, _ := r.FieldPos(0)
		for ; next < line; next++ {
			t.Rows = append(t.Rows, nil)
		}
		next += strings.Count(rest[read:r.InputOffset()], "\n") - (line - began)
		read, began = r.InputOffset(), next
		row := make([]Cell, len(record))
		for i, field := range record {
			row[i] = Cell{Text: unguarded(readable(field))}
		}
		t.Rows = append(t.Rows, row)
	}
	t.Comma = !pointed.MatchString(rest) && (mark == ';' || mark != ',' && withComma.MatchString(rest))
	return t, nil
}

// pointed and withComma are a number that has a decimal point, or a decimal comma,
// for certain.
var (
	pointed   = regexp.MustCompile(`(?:^|[;|\s"])-?\d+\.(?:\d{1,2}|\d{4,})(?:$|[;|\s"])`)
	withComma = regexp.MustCompile(`(?:^|[;|\s"])-?\d+,(?:\d{1,2}|\d{4,})(?:$|[;|\s"])`)
)

// badCSV tells where a quotation mark stands wrongly.
func badCSV(t *Table, err error) (*Table, problem.List) {
	var parse *csv.ParseError
	var found problem.List
	at := problem.Span{File: t.File}
	if errors.As(err, &parse) {
		at.Start = problem.Pos{Line: parse.Line, Column: max(parse.Column, 1)}
	}
	found.Errorf(at, "bad-quotes", "A quotation mark stands wrongly", "A cell with quotation marks stands in quotation marks, and those in it are written twice. Save the table again in a spreadsheet program.")
	return nil, found
}

// decoded is the text of a file.
func decoded(data []byte) (string, error) {
	var from encoding.Encoding
	switch {
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		from = unicode.UTF16(unicode.LittleEndian, unicode.UseBOM)
	case utf8.Valid(data):
		return strings.TrimPrefix(string(data), "\ufeff"), nil
	default:
		from = charmap.Windows1252
	}
	text, err := from.NewDecoder().Bytes(data)
	return string(text), err
}

// separator tells what stands between cells, and what is left of the text without a
// first line that only says so.
func separator(text string) (rune, string) {
	first, rest, _ := strings.Cut(text, "\n")
	if said, ok := strings.CutPrefix(strings.TrimRight(first, "\r"), "sep="); ok {
		if mark, size := utf8.DecodeRuneInString(said); size == len(said) && strings.ContainsRune(separators, mark) {
			return mark, rest
		}
	}
	best, most := ',', 0
	for _, mark := range separators {
		if n := outside(text, mark); n > most {
			best, most = mark, n
		}
	}
	return best, text
}

// separators are what can stand between cells, the likeliest first.
const separators = ";\t,|"

// outside counts a mark in the first lines, outside of quotation marks.
func outside(text string, mark rune) int {
	const lines = 20
	n, line, quoted := 0, 0, false
	for _, r := range text {
		switch {
		case r == '"':
			quoted = !quoted
		case quoted:
		case r == '\n':
			if line++; line == lines {
				return n
			}
		case r == mark:
			n++
		}
	}
	return n
}
