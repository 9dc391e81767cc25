package roster

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"
)

// Forms are the forms in which a table can be written.
var Forms = []string{"csv", "xlsx"}

// Write writes the table in one of the Forms.
func (t *Table) Write(w io.Writer, form string) error {
	if form == "xlsx" {
		return t.writeXLSX(w)
	}
	return t.writeCSV(w)
}

// writeCSV writes RFC 4180 in UTF-8, with the mark by which spreadsheets know that
// it is.
func (t *Table) writeCSV(w io.Writer) error {
	if _, err := io.WriteString(w, "\ufeff"); err != nil {
		return err
	}
	c := csv.NewWriter(w)
	c.UseCRLF = true
	for _, row := range t.Rows {
		record := make([]string, len(row))
		for i, cell := range row {
			record[i] = cell.Text
			if cell.Kind != Number {
				record[i] = guarded(cell.Text)
			}
		}
		if err := c.Write(record); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

// The most that a sheet can hold (ISO/IEC 29500, and the programs that read it).
const (
	mostColumns = 16384
	mostRows    = 1048576
	mostText    = 32767 // characters of a cell
)

// writeXLSX writes a workbook with one sheet. Words are typed as such, so that no
// program takes them for a formula; the first row and column stay in sight.
func (t *Table) writeXLSX(w io.Writer) error {
	if len(t.Rows) > mostRows || len(t.Rows) > 0 && len(t.Rows[0]) > mostColumns {
		return fmt.Errorf("%d rows and %d columns are more than a sheet can hold: choose columns with --facts, or write csv", len(t.Rows), len(t.Rows[0]))
	}
	f := excelize.NewFile()
	defer f.Close() // nothing is left to lose once it is written
	const sheet = "Fleet"
	if err := f.SetSheetName("Sheet1", sheet); err != nil {
		return err
	}
	// A workbook notes when and by whom it was made; the same fleet makes the same
	// bytes on any day.
	if err := f.SetDocProps(&excelize.DocProperties{Created: "2000-01-01T00:00:00Z", Modified: "2000-01-01T00:00:00Z", Creator: "doorpocket"}); err != nil {
		return err
	}
	head, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}})
	if err != nil {
		return err
	}
	look := looks{file: f, styles: map[string]int{}}
	s, err := f.NewStreamWriter(sheet)
	if err != nil {
		return err
	}
	if err := s.SetPanes(&excelize.Panes{Freeze: true, XSplit: 1, YSplit: 1, TopLeftCell: "B2", ActivePane: "bottomRight"}); err != nil {
		return err
	}
	for r, row := range t.Rows {
		values := make([]any, len(row))
		for i, cell := range row {
			switch {
			case r == 0:
				values[i] = excelize.Cell{StyleID: head, Value: cell.Text}
			case cell.Text == "":
			default:
				if values[i], err = look.value(cell); err != nil {
					return err
				}
			}
		}
		if err := s.SetRow("A"+strconv.Itoa(r+1), values); err != nil {
			return err
		}
	}
	if err := s.Flush(); err != nil {
		return err
	}
	_, err = f.WriteTo(w)
	return err
}

// looks are how numbers are shown, each a style of the workbook.
type looks struct {
	file   *excelize.File
	styles map[string]int
}

func (l looks) style(format string) (int, error) {
	if id, known := l.styles[format]; known {
		return id, nil
	}
	id, err := l.file.NewStyle(&excelize.Style{CustomNumFmt: &format})
	l.styles[format] = id
	return id, err
}

// value is a cell as the workbook holds it. A number shows as many decimals as were
// written.
func (l looks) value(c Cell) (any, error) {
	switch c.Kind {
	case Number:
		n, err := strconv.ParseFloat(c.Text, 64)
		_, decimals, found := strings.Cut(c.Text, ".")
		if err != nil || !found {
			return n, err
		}
		id, err := l.style("0." + strings.Repeat("0", len(decimals)))
		return excelize.Cell{StyleID: id, Value: n}, err
	case Day:
		at, err := time.Parse(time.DateOnly, c.Text)
		if err != nil || at.Year() < 1901 { // a sheet cannot hold it as a day
			return c.Text, nil
		}
		id, err := l.style("yyyy-mm-dd")
		return excelize.Cell{StyleID: id, Value: at}, err
	}
	if n := len([]rune(c.Text)); n > mostText {
		return nil, fmt.Errorf("a text of %d characters is more than a cell can hold: write csv", n)
	}
	if unguarded(c.Text) != c.Text { // its apostrophe would be taken off
		return guarded(c.Text), nil
	}
	return c.Text, nil
}
