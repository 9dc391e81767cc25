package roster

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"

	"doorpocket/components/problem"
)

// unzippedMost is how large the parts of a workbook may become.
const unzippedMost = 256 << 20

// readXLSX reads one sheet of a workbook (ISO/IEC 29500).
func readXLSX(name string, data []byte, sheet string) (t *Table, found problem.List) {
	defer func() {
		// The library that reads workbooks trusts some of what broken ones say.
		if recover() != nil {
			t, found = refuse(name, "broken-workbook", "The workbook is broken", errors.New("open it in a spreadsheet program and save it again"))
		}
	}()
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{RawCellValue: true, UnzipSizeLimit: unzippedMost, UnzipXMLSizeLimit: unzippedMost})
	if err != nil {
		return refuse(name, "broken-workbook", "The workbook cannot be read", fmt.Errorf("%w: open it in a spreadsheet program and save it again", err))
	}
	defer f.Close() // it was only read
	sheets := f.GetSheetList()
	if sheet == "" && len(sheets) > 0 {
		sheet = sheets[0]
	}
	if !slices.Contains(sheets, sheet) {
		return refuse(name, "unknown-sheet", fmt.Sprintf("No sheet %q", sheet), fmt.Errorf("the workbook has %s", strings.Join(sheets, ", ")))
	}
	t = &Table{File: name, Sheets: slices.DeleteFunc(sheets, func(s string) bool { return s == sheet })}
	rows, err := f.Rows(sheet)
	if err != nil {
		return refuse(name, "broken-workbook", "The sheet cannot be read", err)
	}
	defer rows.Close() // it was only read
	x := workbook{file: f, sheet: sheet, shown: map[int]shown{}}
	if props, err := f.GetWorkbookProps(); err == nil && props.Date1904 != nil {
		x.from1904 = *props.Date1904
	}
	for rows.Next() {
		texts, err := rows.Columns()
		if err != nil {
			return refuse(name, "broken-workbook", "The sheet cannot be read", err)
		}
		if len(texts) > mostColumns || len(t.Rows) >= mostRows {
			return refuse(name, "file-too-large", "The sheet is too large", errors.New("it may have 16,384 columns and 1,048,576 rows"))
		}
		row := make([]Cell, len(texts))
		for i, text := range texts {
			row[i] = x.cell(text, i, len(t.Rows))
		}
		t.Rows = append(t.Rows, row)
	}
	return t, nil
}

// workbook knows how its cells are shown.
type workbook struct {
	file     *excelize.File
	sheet    string
	shown    map[int]shown // by style
	from1904 bool
}

// shown is what a number format tells: that the number is a day, or how many
// decimals it has.
type shown struct {
	day      bool
	decimals int // -1 for as many as there are
}

func (x *workbook) cell(text string, column, row int) Cell {
	text = readable(text)
	n, err := strconv.ParseFloat(text, 64)
	if text == "" || err != nil {
		return Cell{Text: unguarded(text)}
	}
	name, err := excelize.CoordinatesToCellName(column+1, row+1)
	if err != nil {
		return Cell{Text: text}
	}
	switch kind, err := x.file.GetCellType(x.sheet, name); {
	case err != nil, kind == excelize.CellTypeSharedString, kind == excelize.CellTypeInlineString:
		return Cell{Text: unguarded(text)}
	case kind == excelize.CellTypeBool:
		return Cell{Text: map[bool]string{true: "yes", false: "no"}[n != 0]}
	}
	how := x.how(name)
	if how.day {
		if at, err := excelize.ExcelDateToTime(n, x.from1904); err == nil {
			return Cell{Text: at.Format(time.DateOnly), Kind: Day}
		}
	}
	if how.decimals > 0 {
		if padded := strconv.FormatFloat(n, 'f', how.decimals, 64); same(padded, n) {
			return Cell{Text: padded, Kind: Number}
		}
	}
	return Cell{Text: plain(n), Kind: Number}
}

// plain is a number in digits. A sheet keeps 5.55 as 5.5499999999999998: fifteen
// digits are what it shows.
func plain(n float64) string {
	short, err := strconv.ParseFloat(strconv.FormatFloat(n, 'g', 15, 64), 64)
	if err != nil {
		short = n
	}
	return strconv.FormatFloat(short, 'f', -1, 64)
}

// quotedOrTimed is what of a number format is no day: words, and hours.
var quotedOrTimed = regexp.MustCompile(`"[^"]*"|\\.|\[[^\]]*\]`)

// same reports whether a text is a number to fifteen digits.
func same(text string, n float64) bool {
	v, err := strconv.ParseFloat(text, 64)
	return err == nil && plain(v) == plain(n)
}

// fixed is a number format with so many decimals.
var fixed = regexp.MustCompile(`^[#,]*0\.(0+)$`)

// how tells how a cell is shown.
func (x *workbook) how(cell string) shown {
	id, err := x.file.GetCellStyle(x.sheet, cell)
	if err != nil {
		return shown{decimals: -1}
	}
	if known, ok := x.shown[id]; ok {
		return known
	}
	how := shown{decimals: -1}
	if style, err := x.file.GetStyle(id); err == nil {
		// ISO/IEC 29500-1, 18.8.30: 14 to 17 and 22 are days, so are 27 to 36 and
		// 50 to 58 in some languages; 2 and 4 have two decimals.
		n := style.NumFmt
		how.day = n >= 14 && n <= 17 || n == 22 || n >= 27 && n <= 36 || n >= 50 && n <= 58
		if n == 2 || n == 4 {
			how.decimals = 2
		}
		if style.CustomNumFmt != nil {
			format := strings.ToLower(quotedOrTimed.ReplaceAllString(*style.CustomNumFmt, ""))
			how.day = strings.ContainsAny(format, "yd")
			if m := fixed.FindStringSubmatch(format); m != nil {
				how.decimals = len(m[1])
			}
		}
	}
	x.shown[id] = how
	return how
}
