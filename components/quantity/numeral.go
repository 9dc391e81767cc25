package quantity

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// tooManyDigits is the message for a number that a float64 would not hold.
var tooManyDigits = fmt.Sprintf("more than %d digits", digitsMost)

// numeral is a number as it was written.
type numeral struct {
	negative bool
	plain    string  // digits and point, without sign or spaces
	decimals int     // digits after the point
	parsed   float64 // without sign
}

// value gives the number.
func (n numeral) value() float64 {
	if n.negative {
		return -n.parsed
	}
	return n.parsed
}

// text gives the number as it should be written.
func (n numeral) text() string {
	if n.negative {
		return "-" + n.plain
	}
	return n.plain
}

// length gives the number of digits.
func (n numeral) length() int { return len(n.plain) - strings.Count(n.plain, ".") }

// number reads a number and leaves the parser behind it.
func (p *parser) number() (numeral, *ParseError) {
	var n numeral
	start := p.at
	n.negative = p.sign()
	whole := p.wholeDigits()
	if whole == "" {
		return n, p.notANumber(start)
	}
	fraction, problem := p.fraction(whole)
	if problem != nil {
		return n, problem
	}
	n.plain, n.decimals = whole, len(fraction)
	if fraction != "" {
		n.plain += "." + fraction
	}
	if problem := p.afterNumber(n, start); problem != nil {
		return n, problem
	}
	if n.length() > digitsMost {
		return n, p.fail(start, tooManyDigits, "")
	}
	n.parsed, _ = strconv.ParseFloat(n.plain, 64) // digits and a point cannot fail
	return n, nil
}

// sign reads a sign, of which the minus may be the hyphen or the true one.
func (p *parser) sign() (negative bool) {
	for _, s := range []string{"-", "\u2212", "+"} {
		if strings.HasPrefix(p.rest(), s) {
			p.at += len(s)
			return s != "+"
		}
	}
	return false
}

// digits reads a run of digits.
func (p *parser) digits() string {
	rest := p.rest()
	i := 0
	for i < len(rest) && isDigit(rest[i]) {
		i++
	}
	p.at += i
	return rest[:i]
}

// wholeDigits reads the digits before the point: one run, or groups of three
// set apart by one space each.
func (p *parser) wholeDigits() string {
	whole := p.digits()
	if whole == "" || len(whole) > 3 {
		return whole
	}
	for {
		space, size := utf8.DecodeRuneInString(p.rest())
		if !isSpace(space) || !isGroup(p.rest()[size:]) {
			return whole
		}
		p.at += size
		whole += p.digits()
	}
}

// isGroup reports whether text starts with exactly three digits.
func isGroup(text string) bool {
	if len(text) < 3 || !isDigit(text[0]) || !isDigit(text[1]) || !isDigit(text[2]) {
		return false
	}
	return len(text) == 3 || !isDigit(text[3])
}

// isDigit reports whether b is one of the digits 0 to 9.
func isDigit(b byte) bool { return b >= '0' && b <= '9' }

// fraction reads a point and the digits after it, if there is a point.
func (p *parser) fraction(whole string) (string, *ParseError) {
	if !strings.HasPrefix(p.rest(), ".") {
		return "", nil
	}
	point := p.at
	p.at++
	fraction := p.digits()
	if fraction == "" {
		return "", p.fail(point, "no digit after the decimal point", "write "+clip(whole)+" or "+clip(whole)+".0")
	}
	return fraction, nil
}

// afterNumber refuses what people put into numbers and specs do not.
func (p *parser) afterNumber(n numeral, start int) *ParseError {
	rest := p.rest()
	if rest == "" {
		return nil
	}
	next := ""
	if len(rest) > 1 {
		next = rest[1:]
	}
	switch digitNext := next != "" && isDigit(next[0]); {
	case rest[0] == ',' && digitNext:
		return p.comma(n)
	case rest[0] == '.':
		return p.fail(p.at, "a second decimal point", "write thousands without points")
	case (rest[0] == '\'' || rest[0] == '_') && digitNext:
		return p.fail(p.at, "a mark between digits", "write the number without it")
	case rest[0] == 'e' || rest[0] == 'E':
		if digitNext || strings.HasPrefix(next, "-") || strings.HasPrefix(next, "+") {
			return p.fail(start, "a number with an exponent", "write the number out")
		}
	}
	return nil
}

// comma explains a comma inside a number: it may have been meant as a decimal
// comma or, before three digits, as a separator of thousands.
func (p *parser) comma(n numeral) *ParseError {
	at := p.at
	tail := parser{text: p.text, at: at + 1, end: p.end}
	digits := tail.digits()
	after := tail.rest()
	if n.decimals > 0 || strings.HasPrefix(after, ",") || strings.HasPrefix(after, ".") {
		return p.fail(at, "a comma in the number", "write thousands without commas and decimals after a point")
	}
	unit := clip(after)
	if len(digits) == 3 {
		return p.fail(at, "a comma in the number: a thousand or a decimal?",
			fmt.Sprintf("write %s%s%s or %s.%s%s", clip(n.text()), digits, unit, clip(n.text()), digits, unit))
	}
	return p.fail(at, "a decimal comma", fmt.Sprintf("write %s.%s%s", clip(n.text()), clip(digits), unit))
}

// notANumber explains a text that does not start with a number.
func (p *parser) notANumber(start int) *ParseError {
	rest := p.rest()
	word := rest
	if i := strings.IndexFunc(rest, func(r rune) bool { return !unicode.IsLetter(r) }); i >= 0 {
		word = rest[:i]
	}
	switch strings.ToLower(word) {
	case "nan", "inf", "infinity":
		return p.fail(start, word+" is not a number that can be measured", "")
	}
	if strings.HasPrefix(rest, ".") && len(rest) > 1 && isDigit(rest[1]) {
		return p.fail(start, "no digit before the decimal point", "write 0"+clip(rest))
	}
	return p.fail(start, "expected a number, found "+excerpt(rest), "write a number and a unit, as in "+example(p.want))
}

// example gives a quantity as one would be written.
func example(want Dimension) string {
	usual := Units(want)
	if len(usual) == 0 {
		return "5 kg"
	}
	return "5 " + usual[0].Name()
}

// clip shortens a text that a hint repeats.
func clip(text string) string {
	if len(text) <= 30 {
		return strings.ToValidUTF8(text, "?")
	}
	return strings.ToValidUTF8(text[:30], "?") + "…"
}
