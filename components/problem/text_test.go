package problem

import (
	"strings"
	"testing"
)

// at makes an error on a line of its own, for the tests of printing.
func at(line string, column, length int) Problem {
	return New(Error, Span{"vans/rowan.toml", Pos{7, column}, length}, "a-code", "Unknown key", "Correct it.").WithLine(line)
}

func TestText(t *testing.T) {
	long := strings.Repeat("0123456789", 30)
	tests := []struct {
		name    string
		problem Problem
		style   Style
		want    string
	}{
		{"plain", at(`nmae = "Rowan"`, 1, 4), Style{}, `
vans/rowan.toml:7:1: error: Unknown key
   7 | nmae = "Rowan"
     | ^^^^
  Correct it.
`},
		{"tabs are expanded", at("\ta\tnmae = 1", 4, 4), Style{}, `
vans/rowan.toml:7:4: error: Unknown key
   7 |     a   nmae = 1
     |         ^^^^
  Correct it.
`},
		{"wide and combining characters", at("注意 e\u0301 nmae", 7, 4), Style{}, `
vans/rowan.toml:7:7: error: Unknown key
   7 | 注意 ` + "e\u0301" + ` nmae
     |        ^^^^
  Correct it.
`},
		{"control characters are shown", at("a\x1b[31m\x00\u202eb\x7f", 8, 1), Style{}, `
vans/rowan.toml:7:8: error: Unknown key
   7 | a␛[31m␀` + "\uFFFD" + `b␡
     |        ^
  Correct it.
`},
		{"bytes that are no characters", at("a\xff\xfeb = 1", 4, 1), Style{}, `
vans/rowan.toml:7:4: error: Unknown key
   7 | a` + "\uFFFD\uFFFD" + `b = 1
     |    ^
  Correct it.
`},
		{"behind the end", at("name =", 7, 0), Style{}, `
vans/rowan.toml:7:7: error: Unknown key
   7 | name =
     |       ^
  Correct it.
`},
		{"far behind the end", at("name =", 70, 5), Style{}, `
vans/rowan.toml:7:70: error: Unknown key
   7 | name =
     |       ^
  Correct it.
`},
		{"over the end of the line", at("text = [", 8, 30), Style{}, `
vans/rowan.toml:7:8: error: Unknown key
   7 | text = [
     |        ^
  Correct it.
`},
		{"long line, near the start", at(long, 2, 3), Style{Width: 50}, `
vans/rowan.toml:7:2: error: Unknown key
   7 | 0123456789012345678901234567890123456...
     |  ^^^
  Correct it.
`},
		{"long line, in the middle", at(long, 101, 5), Style{Width: 50}, `
vans/rowan.toml:7:101: error: Unknown key
   7 | ...0123456789012345678901234567890123456...
     |                        ^^^^^
  Correct it.
`},
		{"long line, to its end and beyond", at(long, 299, 2), Style{Width: 50}, `
vans/rowan.toml:7:299: error: Unknown key
   7 | ...8901234567890123456789
     |                        ^^
  Correct it.
`},
		{"long span in a long line", at(long, 5, 200), Style{Width: 50}, `
vans/rowan.toml:7:5: error: Unknown key
   7 | 0123456789012345678901234567890123456...
     |     ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  Correct it.
`},
		{"no column", at("name = 1", 0, 0), Style{}, `
vans/rowan.toml:7: error: Unknown key
   7 | name = 1
  Correct it.
`},
		{"no line", New(Error, Span{File: "fleet.toml"}, "a-code", "Missing file", "Add it."), Style{}, `
fleet.toml: error: Missing file
  Add it.
`},
		{"no file", New(Warning, Span{}, "a-code", "Nothing to do", ""), Style{}, `
warning: Nothing to do
`},
		{"notes, code and wrapping", New(Warning, Span{"a.toml", Pos{2, 3}, 1}, "a-code", "Late check",
			"The check of the gas was due some time ago and has not been done. Have it done.").
			WithNote(Span{"b.toml", Pos{1, 1}, 4}, "first written here").WithNote(Span{}, "see the staff sheet"),
			Style{Width: 40, Codes: true}, `
a.toml:2:3: warning: Late check (a-code)
  The check of the gas was due some time
  ago and has not been done. Have it
  done.
  first written here: b.toml:1:1
  see the staff sheet
`},
		{"nothing in a message can drive a terminal", New(Error, Span{File: "a\x1b]0;x\x07.toml"}, "a-code", "Unknown key \"a\nb\"", "Remove \"\x1b[2J\"."), Style{}, `
a␛]0;x␇.toml: error: Unknown key "a␊b"
  Remove "␛[2J".
`},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got, want := test.problem.Text(test.style), test.want[1:]; got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
		})
	}
}

func TestTextColour(t *testing.T) {
	got := at("a = 1", 1, 1).Text(Style{Colour: true})
	want := "vans/rowan.toml:7:1: \x1b[31merror:\x1b[0m Unknown key\n   7 | a = 1\n     | \x1b[31m^\x1b[0m\n  Correct it.\n"
	if got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestWrite(t *testing.T) {
	var b strings.Builder
	list := List{New(Error, Span{File: "a"}, "x", "One", ""), New(Warning, Span{File: "b"}, "x", "Two", "")}
	if err := Write(&b, list, Style{}); err != nil {
		t.Fatal(err)
	}
	if want := "a: error: One\n\nb: warning: Two\n"; b.String() != want {
		t.Errorf("got %q, want %q", b.String(), want)
	}
}

// FuzzText proves that any line can be printed: within the width, and with
// nothing that a terminal would obey.
func FuzzText(f *testing.F) {
	f.Add("a\tb = \x1b\u202e注意", 3, 2, 60)
	f.Add("", 0, 0, 0)
	f.Add(strings.Repeat("e\u0301\t", 100), 150, 9, 41)
	f.Fuzz(func(t *testing.T, line string, column, length, width int) {
		line = strings.NewReplacer("\n", "", "\r", "").Replace(line)
		width = max(0, min(width, 500))
		text := at(line, column, length).Text(Style{Width: width})
		for i, row := range strings.Split(text, "\n") {
			if strings.IndexFunc(row, unsafeRune) >= 0 {
				t.Errorf("unsafe: %q", row)
			}
			if limit := (Style{Width: width}).width(); i > 0 && total(layOut(row)) > limit {
				t.Errorf("wider than %d: %q", limit, row)
			}
		}
	})
}
