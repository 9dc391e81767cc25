package roster

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"

	"doorpocket/components/problem"
)

// mostBytes is how large a file may be. A fleet of 2,000 vans with every fact has
// less.
const mostBytes = 64 << 20

// Read reads a table from a file of any of the Forms; which it is, its first bytes
// tell. sheet names the sheet of a workbook, "" for the first. The table is nil
// where the problems hold an error.
func Read(name string, r io.Reader, sheet string) (*Table, problem.List) {
	data, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	switch {
	case err != nil:
		return refuse(name, "unreadable-file", "File cannot be read", err)
	case len(data) > mostBytes:
		return refuse(name, "file-too-large", "File is too large", fmt.Errorf("it may have 64 MiB"))
	case bytes.HasPrefix(data, []byte("PK\x03\x04")):
		return readXLSX(name, data, sheet)
	case bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0")):
		return refuse(name, "old-workbook", "The workbook is of an old kind, or has a password", errors.New("open it in a spreadsheet program and save it as .xlsx without a password, or as .csv"))
	case bytes.HasPrefix(data, []byte("%PDF")), bytes.HasPrefix(data, []byte("{\\rtf")):
		return refuse(name, "no-table", "This is no table", errors.New("save it as .xlsx or .csv"))
	}
	return readCSV(name, data)
}

func refuse(name, code, summary string, err error) (*Table, problem.List) {
	var found problem.List
	text := err.Error()
	found.Errorf(problem.Span{File: name}, code, summary, "%s", strings.ToUpper(text[:1])+text[1:]+".")
	return nil, found
}

// empty reports whether a row holds nothing.
func empty(row []Cell) bool {
	for _, c := range row {
		if c.Text != "" {
			return false
		}
	}
	return true
}
