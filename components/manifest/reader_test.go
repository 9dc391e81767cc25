package manifest

import (
	"testing"

	"doorpocket/components/problem"

	"github.com/google/go-cmp/cmp"
)

// reading parses a text, which must be well formed, and reads it.
func reading(t *testing.T, text string, read func(*Reader)) []string {
	t.Helper()
	table, found := Parse("file.toml", []byte(text))
	if table == nil || found.HasErrors() {
		t.Fatalf("%q: %v", text, briefs(found))
	}
	r := NewReader(table, &found)
	read(r)
	r.Done()
	return briefs(found)
}

// briefs writes a list of problems.
func briefs(list problem.List) (lines []string) {
	for _, p := range list {
		lines = append(lines, brief(p))
	}
	return lines
}

func TestReaderProblems(t *testing.T) {
	tests := []struct {
		name, text string
		read       func(*Reader)
		want       []string
	}{
		{"text for a number", "count = \"3\"", func(r *Reader) { r.Int("count", 1, 9) },
			[]string{`1:9+3 wrong-type: Wrong type for "count". Written here: a text, "3". Expected: a whole number without quotes. For example: count = 3`}},
		{"number for a text", "length = 6.36", func(r *Reader) { r.Text("length") },
			[]string{`1:10+4 wrong-type: Wrong type for "length". Written here: a number, 6.36. Expected: a text in quotes. For example: length = "6.36"`}},
		{"number for a text that needs a unit", "length = 6.36", func(r *Reader) { r.Text("length", Example(`"6.36 m"`)) },
			[]string{`1:10+4 wrong-type: Wrong type for "length". Written here: a number, 6.36. Expected: a text in quotes. For example: length = "6.36 m"`}},
		{"fraction for a whole number", "count = 2.0", func(r *Reader) { r.Int("count", 1, 9) },
			[]string{`1:9+3 wrong-type: Wrong type for "count". Written here: a number, 2.0. Expected: a whole number without quotes. For example: count = 1`}},
		{"list for a text", "a = [1,\n2]", func(r *Reader) { r.Text("a") },
			[]string{`1:5+6 wrong-type: Wrong type for "a". Written here: a list. Expected: a text in quotes. For example: a = "..."`}},
		{"table for a text", "[a]", func(r *Reader) { r.Text("a") },
			[]string{`1:1+3 wrong-type: Wrong type for "a". Written here: a table. Expected: a text in quotes. For example: a = "..."`}},
		{"word for yes", "winter = \"yes\"", func(r *Reader) { r.Bool("winter") },
			[]string{`1:10+5 wrong-type: Wrong type for "winter". Written here: a text, "yes". Expected: true or false, without quotes. For example: winter = true`}},
		{"yes for a text", "winter = true", func(r *Reader) { r.Text("winter") },
			[]string{`1:10+4 wrong-type: Wrong type for "winter". Written here: true. Expected: a text in quotes. For example: winter = "true"`}},
		{"quoted date", "d = \"2026-10-05\"", func(r *Reader) { r.Date("d") },
			[]string{`1:5+12 wrong-type: Wrong type for "d". Written here: a text, "2026-10-05". Expected: a date as year-month-day, without quotes. For example: d = 2026-10-05`}},
		{"date with a time", "d = 2026-10-05T23:30:00Z", func(r *Reader) { r.Date("d") },
			[]string{`1:5+20 wrong-type: Wrong type for "d". Written here: a date with a time, 2026-10-05T23:30:00Z. Expected: a date as year-month-day, without quotes. For example: d = 2026-10-05`}},
		{"time alone", "d = 23:30:00", func(r *Reader) { r.Date("d") },
			[]string{`1:5+8 wrong-type: Wrong type for "d". Written here: a time, 23:30:00. Expected: a date as year-month-day, without quotes. For example: d = 2026-10-02`}},
		{"date for a text", "d = 2026-10-05", func(r *Reader) { r.Text("d") },
			[]string{`1:5+10 wrong-type: Wrong type for "d". Written here: a date, 2026-10-05. Expected: a text in quotes. For example: d = "2026-10-05"`}},
		{"out of range", "a = 0\nb = 12\nc = 0.5\nd = -1\ne = 3.5", func(r *Reader) {
			r.Int("a", 1, 9)
			r.Int("b", 1, 9)
			r.Float("c", Between(1, 2))
			r.Int("d", 0, maxInt)
			r.Float("e", Between(negativeInf, 3))
		}, []string{
			`1:5+1 out-of-range: Number out of range for "a". Written here: 0. Write a number from 1 to 9.`,
			`2:5+2 out-of-range: Number out of range for "b". Written here: 12. Write a number from 1 to 9.`,
			`3:5+3 out-of-range: Number out of range for "c". Written here: 0.5. Write a number from 1 to 2.`,
			`4:5+2 out-of-range: Number out of range for "d". Written here: -1. Write a number of 0 or more.`,
			`5:5+3 out-of-range: Number out of range for "e". Written here: 3.5. Write a number of 3 or less.`,
		}},
		{"texts", "a = [\"x\", 2, true]\nb = \"one\"\nc = []\nd = \"one\"\ne = 3", func(r *Reader) {
			r.Texts("a")
			r.Texts("b")
			r.Texts("c", Required)
			r.Texts("d", OrSingle)
			r.Texts("e", OrSingle)
		}, []string{
			`1:11+1 wrong-type: Wrong type in the list "a". Written here: a whole number, 2. Expected: a text in quotes. For example: a = ["..."]`,
			`1:14+4 wrong-type: Wrong type in the list "a". Written here: true. Expected: a text in quotes. For example: a = ["..."]`,
			`2:5+5 wrong-type: Wrong type for "b". Written here: a text, "one". Expected: a list of texts. For example: b = ["one"]`,
			`3:5+2 empty-value: Empty value for "c". Something has to be written here. For example: c = ["..."]`,
			`5:5+1 wrong-type: Wrong type for "e". Written here: a whole number, 3. Expected: a text or a list of texts. For example: e = ["..."]`,
		}},
		{"blank text", "name = \" \"\nnote = \"\"", func(r *Reader) { r.Text("name", Required); r.Text("note") },
			[]string{`1:8+3 empty-value: Empty value for "name". Something has to be written here. For example: name = "..."`}},
		{"choice", "a = \"rigth\"\nb = \"up\"\nc = \"left\"", func(r *Reader) {
			r.Choice("a", []string{"left", "right"})
			r.Choice("b", []string{"left", "right"})
			r.Choice("c", []string{"left", "right"})
		}, []string{
			`1:5+7 unknown-choice: Unknown choice "rigth" for "a". Did you mean "right"? Use one of: left, right.`,
			`2:5+4 unknown-choice: Unknown choice "up" for "b". Use one of: left, right.`,
		}},
		{"missing", "[body]\nat = {}\n[[caution]]\n[[caution]]", func(r *Reader) {
			r.Text("name", Required, Example(`"Rowan"`))
			r.Table("staff", Required)
			body := r.Table("body")
			body.Text("length", Required)
			body.Table("axles", Required)
			body.Tables("seat", Required)
			body.Table("at").Text("side", Required)
			r.Tables("caution")[1].Choice("signal", []string{"danger"}, Required)
		}, []string{
			`1:1+0 missing-key: Missing key "name". This key has to be written at the top of the file, above the first [table]. Add for example: name = "Rowan"`,
			`1:1+0 missing-key: Missing key "staff". This key has to be written in this file. Add for example: [staff]`,
			`1:1+6 missing-key: Missing key "length". This key has to be written under [body]. Add for example: length = "..."`,
			`1:1+6 missing-key: Missing key "axles". This key has to be written in this file. Add for example: [body.axles]`,
			`1:1+6 missing-key: Missing key "seat". This key has to be written in this file. Add for example: [[body.seat]]`,
			`2:1+2 missing-key: Missing key "side". This key has to be written between these braces. Add for example: side = "..."`,
			`4:1+11 missing-key: Missing key "signal". This key has to be written under [[caution]]. Add for example: signal = "danger"`,
		}},
		{"tables that are none", "a = 1\nb = [1, {}]\n[c]\nd = 2\n[c.e]", func(r *Reader) {
			r.Table("a")
			r.Tables("b")
			for range r.Each("c") {
			}
		}, []string{
			`1:5+1 wrong-type: Wrong type for "a". Written here: a whole number, 1. Expected: a table. For example: a = { ... }`,
			`2:6+1 wrong-type: Wrong type for "b". Written here: a whole number, 1. Expected: a list of tables. For example: b = [{ ... }]`,
			`4:5+1 wrong-type: Wrong type for "d". Written here: a whole number, 2. Expected: a table. For example: d = { ... }`,
		}},
		{"unknown", "nmae = 1\nname = 2\nwheel = 3\n[boddy]\nx = 1\n[body]\n\"läng\" = 1", func(r *Reader) {
			r.Raw("name")
			r.Text("code")
			r.Table("body").Text("length")
		}, []string{
			`1:1+4 unknown-key: Unknown key "nmae". This name is not known here. "name" is, and it is already written. Remove this one, or correct it.`,
			`3:1+5 unknown-key: Unknown key "wheel". This name is not known here. Use one of: name, code, body.`,
			`4:2+5 unknown-key: Unknown table "boddy". This name is not known here. "body" is, and it is already written. Remove this one, or correct it.`,
			`7:1+6 unknown-key: Unknown key "läng". This name is not known here. Use one of: length.`,
		}},
		{"nothing unknown below a raw entry", "net = { a = 1, b = [{ c = 2 }] }\n[more.x]\ny = 1", func(r *Reader) {
			r.Raw("net")
			r.Raw("more")
		}, nil},
		{"nothing about absent tables", "", func(r *Reader) {
			none := r.Table("body")
			none.Text("length", Required)
			none.Problem("length", "c", "s", "d")
			for range none.Each("x") {
			}
			for range none.EachTable() {
			}
			none.Tables("y", Required)
			none.Done()
		}, nil},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if diff := cmp.Diff(test.want, reading(t, test.text, test.read)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

const maxInt = int(^uint(0) >> 1)
