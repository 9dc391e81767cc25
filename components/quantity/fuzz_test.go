package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"

	"golang.org/x/text/language"
)

// FuzzParse holds that Parse never panics, that its errors point into the
// text, and that what it accepts comes back from String and from Format.
func FuzzParse(f *testing.F) {
	for _, text := range []string{
		"5.5 bar", "5.5bar", "1 000 kg", "-5 °C", "9 ft 2.5 in", "5h40min", "0.85", "50 %", "3 1", "10 gal (UK)", "2.5 mm²",
		"", "5.5", "2,5 kg", "1,000,5", "nan", "-inf K", "1e1000 bar", ".5", "5.", "5 bar cold", "\xff\xfe", "\u22120 K", "9 ft -2 in",
		"123456789012345 t", "0.00000000000001 mm2", "999999999999 ft 11.9 in", "-459.67 °F", "5 \u212a",
	} {
		for _, d := range Dimensions() {
			f.Add(text, uint8(d))
		}
	}
	english := NewFormatter(language.English)
	f.Fuzz(func(t *testing.T, text string, dimension uint8) {
		dim := Dimension(dimension)
		q, err := Parse(text, dim)
		if err != nil {
			checkProblem(t, text, q, err)
			return
		}
		if !q.Valid() || q.Dimension() != dim || math.IsNaN(q.base) || math.IsInf(q.base, 0) {
			t.Fatalf("Parse(%q) = %+v", text, q)
		}
		if back, err := Parse(q.String(), dim); err != nil || back != q {
			t.Fatalf("%q is written as %q, which is %+v, %v", text, q, back, err)
		}
		for _, u := range Units(dim) {
			checkFormat(t, english, q, u)
		}
	})
}

// checkProblem says whether an error is one that a message can be made of.
func checkProblem(t *testing.T, text string, q Quantity, err error) {
	t.Helper()
	var problem *ParseError
	if !errors.As(err, &problem) {
		t.Fatalf("Parse(%q): %T", text, err)
	}
	if q.Valid() || problem.Offset < 0 || problem.Offset > len(text) || problem.Message == "" || problem.Error() == "" {
		t.Fatalf("Parse(%q) = %v, %+v", text, q, problem)
	}
}

// checkFormat reads back what was formatted in one unit.
func checkFormat(t *testing.T, f *Formatter, q Quantity, u Unit) {
	t.Helper()
	v := mustIn(t, q, u)
	shown := f.Format(q, In(u))
	for _, r := range []Rounding{Nearest, Up, Down} {
		f.Format(q, Style{Unit: u, Rounding: r, Decimals: 3})
	}
	f.FormatRange(q, q, In(u))
	if math.Abs(v) > 1e9 || u.Symbol() == "" && v > 1 {
		return // more digits than Parse takes, or a bare number it refuses
	}
	back, err := Parse(strings.ReplaceAll(shown, ",", ""), q.Dimension())
	if err != nil {
		if u.Dimension() == Temperature && q.base < 1 {
			return // the last digit of absolute zero went below it
		}
		t.Fatalf("%s in %s is shown as %q: %v", q, u, shown, err)
	}
	if u == q.Unit() {
		if order, err := Compare(q, back); order != 0 || err != nil {
			t.Fatalf("%s is shown as %q", q, shown)
		}
		return
	}
	step := math.Pow10(-sensibleDecimals(v, u))
	if u.Composite() {
		step = 1
	}
	if got := mustIn(t, back, u); math.Abs(got-v) > step/2*(1+1e-6)+1e-9*math.Abs(v) {
		t.Fatalf("%s is %v %s and is shown as %q", q, v, u, shown)
	}
}
