package roster_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"doorpocket/build/roster"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// imports reads a table and gives what it becomes.
func imports(t *testing.T, data []byte, more func(*roster.Wish)) (*roster.Imported, problem.List) {
	t.Helper()
	table, found := roster.Read("fleet.csv", bytes.NewReader(data), "")
	if table == nil {
		return &roster.Imported{}, found
	}
	lib, _ := library()
	wish := roster.Wish{Library: lib, Lang: "en", Day: onDay, There: roster.There{Codes: map[string]string{}}}
	if more != nil {
		more(&wish)
	}
	return roster.Import(table, wish)
}

// lines are the lines of a spec that say something.
func lines(s roster.Spec) []string {
	return strings.FieldsFunc(string(s.Text), func(r rune) bool { return r == '\n' })
}

const plain = "Our fleet 2026\n\n" +
	"Reg,Van,Overall length (mm),Height in m,Sleeps,Rear tyres,Gas check,Cleaned by\n" +
	"AB 1,Rowan,6360,2.81,3,5.5 bar,14/03/2027,Kim\n" +
	"AB 2,Hazel,5990,2.7,2,80 psi,2 April 2027,\n"

// A fleet list as people keep it: a title above, headings of their own, units in the
// headings or in the cells, days in their forms. Everything guessed is told.
func TestPlainList(t *testing.T) {
	made, found := imports(t, []byte(plain), nil)
	if len(found) > 0 {
		t.Fatal(found)
	}
	want := []string{`code = "RO"`, `name = "Rowan"`, `spec_date = 2026-11-02`, `[body]`, `length = "6360 mm"`, `height = "2.81 m"`, `berths = 3`,
		`[fitted.tyres]`, `system = "vehicle/tyres"`, `rear = "5.5 bar"`, `[staff]`, `registration = "AB 1"`, `gas_check_due = 2027-03-14`}
	if diff := cmp.Diff(want, lines(made.Specs[0])); diff != "" {
		t.Error(diff)
	}
	if s := made.Specs[1]; s.File != "vans/hazel.toml" || !slices.Contains(lines(s), `rear = "80 psi"`) || !slices.Contains(lines(s), "gas_check_due = 2027-04-02") {
		t.Errorf("%s: %s", s.File, s.Text)
	}
	for _, want := range []string{
		`column A, "Reg" is taken for staff.registration`, `column B, "Van" is taken for name`, `column C, "Overall length (mm)" is taken for body.length`,
		`column F, "Rear tyres" is taken for tyres.rear`, "Rowan gets the code RO", "spec_date is 2026-11-02 where the table has none",
	} {
		if !slices.Contains(made.Guessed, want) {
			t.Errorf("not told: %s\n%s", want, strings.Join(made.Guessed, "\n"))
		}
	}
	if len(made.Unused) != 1 || !strings.HasPrefix(made.Unused[0], `column H, "Cleaned by"`) {
		t.Error(made.Unused)
	}
	made, _ = imports(t, []byte(plain), func(w *roster.Wish) { w.Rest = true })
	if !slices.Contains(lines(made.Specs[0]), `cleaned_by = "Kim"`) || len(made.Unused) > 0 {
		t.Errorf("%s %q", made.Specs[0].Text, made.Unused)
	}
}

// The same list as programs and countries save it.
func TestWaysToSave(t *testing.T) {
	want, found := imports(t, []byte("code,name,length (m),payload (kg),note of gas-locker\nRW,Rowan – „é“,6.36,1590,\n"), nil)
	if len(found) > 0 {
		t.Fatal(found)
	}
	semicolons := "code;name;length (m);payload (kg)\r\nRW;\"Rowan – „é“\";6,36;1.590\r\n"
	old, err := charmap.Windows1252.NewEncoder().String(semicolons)
	if err != nil {
		t.Fatal(err)
	}
	wide, err := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewEncoder().String(strings.ReplaceAll(semicolons, ";", "\t"))
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"semicolons and decimal commas": semicolons,
		"with a mark":                   "\ufeff" + semicolons,
		"Windows-1252":                  old,
		"UTF-16 with tabs":              wide,
		"what stands between is said":   "sep=|\n" + strings.ReplaceAll(semicolons, ";", "|"),
		"thousands in quotes":           "code,name,length (m),payload (kg)\nRW,Rowan – „é“,6.36,\"1,590\"\n",
		"unit in the cell":              "code,name,length,payload\nRW,Rowan – „é“,\"6,36 m\",1590 kg\n",
	} {
		made, found := imports(t, []byte(text), nil)
		if len(found) > 0 || len(made.Specs) != 1 {
			t.Errorf("%s: %v %v", name, found, made)
			continue
		}
		if diff := cmp.Diff(string(want.Specs[0].Text), string(made.Specs[0].Text)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// A workbook as a person fills it in: days and yes or no as such, numbers that look
// longer than they are, a second sheet.
func TestWorkbook(t *testing.T) {
	f := excelize.NewFile()
	set := func(cell string, value any) {
		if err := f.SetCellValue("Sheet1", cell, value); err != nil {
			t.Fatal(err)
		}
	}
	for i, head := range []string{"code", "name", "length (m)", "gas safety due", "tyres.sensors", "front tyres (bar)", "keys"} {
		set(fmt.Sprintf("%c1", 'A'+i), head)
	}
	set("A2", "RW")
	set("B2", "Rowan")
	set("C2", 5.5499999999999998)
	set("D2", time.Date(2027, 3, 14, 0, 0, 0, 0, time.UTC))
	set("E2", true)
	set("F2", 5)
	set("G2", "007")
	if _, err := f.NewSheet("Old"); err != nil {
		t.Fatal(err)
	}
	var data bytes.Buffer
	if _, err := f.WriteTo(&data); err != nil {
		t.Fatal(err)
	}
	made, found := imports(t, data.Bytes(), nil)
	if len(found) > 0 {
		t.Fatal(found)
	}
	for _, want := range []string{`length = "5.55 m"`, `gas_check_due = 2027-03-14`, `sensors = true`, `front = "5 bar"`, `key_safe = "007"`} {
		if !slices.Contains(lines(made.Specs[0]), want) {
			t.Errorf("no %s in\n%s", want, made.Specs[0].Text)
		}
	}
	table, _ := roster.Read("x", bytes.NewReader(data.Bytes()), "")
	if !slices.Equal(table.Sheets, []string{"Old"}) {
		t.Error(table.Sheets)
	}
	if _, found := roster.Read("x", bytes.NewReader(data.Bytes()), "New"); len(found) != 1 || !strings.Contains(found[0].Summary+found[0].Detail, "Sheet1, Old") {
		t.Error(found)
	}
}

// What is wrong with a cell is told with file, row and column, and what was
// expected; nothing is made of the row.
func TestWrongCells(t *testing.T) {
	for name, test := range map[string]struct{ table, want string }{
		"no unit":            {"code,payload\nRW,500\n", `fleet.csv:2:2: error: payload (cell B2): 500 has no unit`},
		"another unit":       {"code,length\nRW,6 kg\n", `fleet.csv:2:2: error: length (cell B2): `},
		"out of range":       {"code,length (m)\nRW,66\n", `fleet.csv:2:2: error: length (m) (cell B2): length 66 m is out of range`},
		"no option":          {"code,fuel\nRW,wood\n", `fleet.csv:2:2: error: fuel (cell B2): "wood" is no option of fuel`},
		"no number":          {"code,berths\nRW,four\n", `fleet.csv:2:2: error: berths (cell B2): `},
		"no day":             {"code,gas check\nRW,soon\n", `fleet.csv:2:2: error: gas check (cell B2): "soon" is no day`},
		"no such day":        {"code,gas check\nRW,31/02/2027\n", `fleet.csv:2:2: error: gas check (cell B2): "31/02/2027" is no day`},
		"bad code":           {"code,name\nrowan 1,Rowan\n", `fleet.csv:2:1: error: code (cell A2): "rowan 1" is no van code`},
		"code twice":         {"code,name\nRW,Rowan\n\nRW,Hazel\n", `fleet.csv:4:1: error: code (cell A4): A second van with the code RW`},
		"no code":            {"code,name\n,Rowan\n", `fleet.csv:2:1: error: code (cell A2): The van has no code`},
		"column twice":       {"code,length (m),body.length\nRW,6,6 m\n", `fleet.csv:1:3: error: A second column for body.length: "body.length"`},
		"unknown system":     {"code,x.system\nRW,gas/locker\n", `fleet.csv:2:2: error: x.system (cell B2): Unknown system "gas/locker"`},
		"no system":          {"code,x.system,x.net\nRW,,6 kg\n", `fleet.csv:2:3: error: x.net (cell C2): What is x?`},
		"unknown fact":       {"code,x.system,x.nett\nRW,gas/cylinder-locker,6 kg\n", `fleet.csv:2:3: error: x.nett (cell C2): gas/cylinder-locker has no fact "nett"`},
		"unknown side":       {"code,tyres.at.side\nRW,left\n", `fleet.csv:2:2: error: tyres.at.side (cell B2): Unknown side "left"`},
		"bad label":          {"code,tyres.label\nRW,V\n", `fleet.csv:2:2: error: tyres.label (cell B2): "V" is no label code`},
		"no headings":        {"1,2\n3,4\n", `fleet.csv: error: No row of headings`},
		"no vans":            {"code,name\n", `fleet.csv:1:1: error: No vans below the headings`},
		"neither":            {"length (m)\n6\n", `fleet.csv:1:1: error: Neither codes nor names of vans`},
		"quotes":             {"code,name\nRW,\"Ro\"wan\n", `fleet.csv:2:`},
		"empty":              {"", `fleet.csv: error: No row of headings`},
		"an old workbook":    {"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", `fleet.csv: error: The workbook is of an old kind`},
		"a broken workbook":  {"PK\x03\x04xxxx", `fleet.csv: error: The workbook cannot be read`},
		"another kind":       {"%PDF-1.7", `fleet.csv: error: This is no table`},
		"after empty lines":  {"code,length (m)\n\n\nRW,\"6\n6\"\nHZ,66\n", `fleet.csv:4:2: error: `},
		"numbers both ways":  {"code,x.system,x.net (kg)\nRW,gas/cylinder-locker,\"1,5,0\"\n", `fleet.csv:2:3: error: `},
		"a list":             {"code,name\nRW,Rowan\nHZ", ``},
		"a day that is none": {"code,spec date\nRW,2027-13-01\n", `fleet.csv:2:2: error: spec date (cell B2): "2027-13-01" is no day`},
	} {
		made, found := imports(t, []byte(test.table), nil)
		told := ""
		for _, p := range found {
			told += p.String() + "\n"
		}
		if !strings.Contains(told, test.want) || (test.want == "") != (told == "") {
			t.Errorf("%s: %q, want %q", name, told, test.want)
		}
		if test.want != "" && strings.Count(test.table, "\n") == 2 && len(made.Specs) > 0 && !strings.Contains(name, "column") {
			t.Errorf("%s: a spec is made of it: %s", name, made.Specs[0].Text)
		}
	}
}

// What could mean several things is told, and what is meant is taken from all of the
// column.
func TestGuesses(t *testing.T) {
	tests := map[string]struct{ table, line, told string }{
		"the only unit that fits":    {"code,length\nRW,6360\nHZ,5990\n", `length = "6360 mm"`, `column B, "length": numbers without a unit are taken for mm, the only one that fits`},
		"days of a column":           {"code,gas check\nRW,03/04/2027\nHZ,04/13/2027\n", "gas_check_due = 2027-03-04", ""},
		"days that could be either":  {"code,gas check\nRW,03/04/2027\n", "gas_check_due = 2027-04-03", `column B, "gas check": days are read as day, month, year`},
		"days with points":           {"code,gas check\nRW,3.4.2027\n", "gas_check_due = 2027-04-03", ""},
		"thousands, by the range":    {"code,payload (kg)\nRW,\"1,020\"\n", `payload = "1020 kg"`, ""},
		"a code in small letters":    {"code,name\nrw,Rowan\n", `code = "RW"`, `code "rw" is written RW`},
		"the words of an option":     {"code,steering\nRW,On the right\n", "", ""},
		"an option in capitals":      {"code,fuel\nRW,DIESEL\n", `fuel = "diesel"`, ""},
		"a name that is code":        {"code,length (m)\nRW,6\n", `name = "RW"`, "RW is called by its code"},
		"two names alike":            {"name\nRowan\nRowan\n", `code = "RO"`, "Rowan gets the code RW"},
		"a name without letters":     {"name\nÉtoile 7\n", `code = "ET"`, "Étoile 7 gets the code ET"},
		"one of several could be it": {"code,where they are\nRW,5\n", `code = "RW"`, `column B, "where they are": it could be`},
	}
	for name, test := range tests {
		made, found := imports(t, []byte(test.table), nil)
		if name == "the words of an option" {
			continue // it depends on the words of the library
		}
		if found.HasErrors() || len(made.Specs) == 0 {
			t.Errorf("%s: %v", name, found)
			continue
		}
		told := strings.Join(append(made.Guessed, made.Unused...), "\n")
		if !slices.Contains(lines(made.Specs[0]), test.line) || !strings.Contains(told, test.told) {
			t.Errorf("%s: no %s or %q in\n%s\n%s", name, test.line, test.told, made.Specs[0].Text, told)
		}
	}
}

// What is there already stays: codes, also of vans that have left, and files.
func TestNothingIsOverwritten(t *testing.T) {
	made, found := imports(t, []byte("code,name\nRW,Rowan\nHZ,Hazel\nLT,Hazel\nWR,Wren\n"), func(w *roster.Wish) {
		w.There = roster.There{Codes: map[string]string{"RW": "vans/first.toml", "WR": "labels.toml"}, Files: []string{"vans/hazel.toml"}}
	})
	if len(found) > 0 {
		t.Fatal(found)
	}
	var files []string
	for _, s := range made.Specs {
		files = append(files, s.File)
	}
	if want := []string{"vans/hz.toml", "vans/lt.toml"}; !slices.Equal(files, want) {
		t.Errorf("%q", files)
	}
	if want := []string{"RW is in vans/first.toml already: it is left as it is", "WR is in labels.toml already: it is left as it is"}; !slices.Equal(made.Left, want) {
		t.Errorf("%q", made.Left)
	}
}

// No cell of a table that was written is taken for a formula.
func TestNoFormulas(t *testing.T) {
	texts := []string{"=1+1", "+44 1632 960178", "-1", "@SUM(A1)", "\tx", "'=1", "=HYPERLINK(\"x\")"}
	table := &roster.Table{Rows: [][]roster.Cell{{{Text: "code"}}}}
	for _, text := range texts {
		table.Rows = append(table.Rows, []roster.Cell{{Text: text}})
	}
	table.Rows = append(table.Rows, []roster.Cell{{Text: "-18", Kind: roster.Number}})
	var data bytes.Buffer
	if err := table.Write(&data, "csv"); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(data.String(), "\ufeff"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1 : len(rows)-1] {
		if row[0][0] != '\'' {
			t.Errorf("%q", row[0])
		}
	}
	if rows[len(rows)-1][0] != "-18" {
		t.Error("a number is no formula")
	}
	data.Reset()
	if err := table.Write(&data, "xlsx"); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(&data)
	if err != nil {
		t.Fatal(err)
	}
	for i := range texts {
		cell := fmt.Sprintf("A%d", i+2)
		kind, err := f.GetCellType("Fleet", cell)
		formula, err2 := f.GetCellFormula("Fleet", cell)
		if err != nil || err2 != nil || kind != excelize.CellTypeInlineString && kind != excelize.CellTypeSharedString || formula != "" {
			t.Errorf("%s is %v, %q", cell, kind, formula)
		}
	}
}

// Whatever a file holds, it is read or refused; what is made of it is TOML, and its
// values are those of the spec's form.
func FuzzImport(f *testing.F) {
	f.Add([]byte(plain))
	f.Add([]byte("code;length (m);x.system;x.net;x.at.side\nRW;6,36;gas/cylinder-locker;6 kg;rear\n"))
	f.Add([]byte("\xff\xfec\x00o\x00d\x00e\x00\n\x00R\x00W\x00"))
	f.Add([]byte("sep=|\ncode|name\n\"R\nW\"|'=x\n"))
	f.Add([]byte("name,without\n\x89,;s\a\n"))
	f.Add([]byte("name,staff.own.a b,without,order,gas check\n\u00c9,\\\"\x07,a; b,x,1/2/2027\n"))
	var book bytes.Buffer
	table := &roster.Table{Rows: [][]roster.Cell{{{Text: "code"}, {Text: "gas check"}}, {{Text: "RW"}, {Text: "2027-03-14", Kind: roster.Day}}}}
	if err := table.Write(&book, "xlsx"); err != nil {
		f.Fatal(err)
	}
	f.Add(book.Bytes())
	lib, _ := library()
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 1<<16 {
			return
		}
		table, found := roster.Read("fleet", bytes.NewReader(data), "")
		if table == nil {
			if !found.HasErrors() {
				t.Fatal("refused without a word")
			}
			return
		}
		made, _ := roster.Import(table, roster.Wish{Library: lib, Lang: "en", Day: onDay, Rest: true})
		files := map[string]bool{}
		for _, s := range made.Specs {
			if _, found := manifest.Parse(s.File, s.Text); found.HasErrors() {
				t.Errorf("%v\n%s", found, s.Text)
			}
			if files[s.File] {
				t.Errorf("%s twice", s.File)
			}
			files[s.File] = true
		}
	})
}
