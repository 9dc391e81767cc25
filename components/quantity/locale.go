package quantity

import (
	"strings"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
	"golang.org/x/text/number"
)

// locale holds how one language writes a number. It is read off once from
// what the locale library prints, because printing through that library is
// slow and its printers may not be shared between goroutines.
type locale struct {
	digits        [10]string
	decimal       string
	group         string
	minus         [2]string // before and after the number
	percent       [2]string // before and after the number
	first, others int       // digits in the group next to the mark, and in further groups
	least         int       // fewest whole digits that are grouped at all
}

// localeOf reads off the habits of a language.
func localeOf(tag language.Tag) locale {
	p := message.NewPrinter(tag)
	show := func(x float64, options ...number.Option) string {
		return p.Sprint(number.Decimal(x, options...))
	}
	var l locale
	for d := range l.digits {
		l.digits[d] = show(float64(d))
	}
	l.readSeparators(show(1234567.5, number.MinFractionDigits(1)))
	l.least = 5
	if _, _, whole := strings.Cut(show(1234), l.group); whole && l.group != "" {
		l.least = 4
	}
	l.minus = around(show(-5), l.digits[5])
	l.percent = around(noBreak(p.Sprint(number.Percent(0.05))), l.digits[5])
	return l
}

// readSeparators takes what stands between the digits of 1234567.5 as the
// decimal mark and the group separator, and counts the groups.
func (l *locale) readSeparators(text string) {
	const shown = "12345675"
	var gaps [len(shown)]string // what stands before each digit
	for i := range shown {
		before, after, _ := strings.Cut(text, l.digits[shown[i]-'0'])
		gaps[i], text = before, after
	}
	const mark = len(shown) - 1
	l.decimal = gaps[mark]
	end := mark
	for i := mark - 1; i > 0; i-- {
		if gaps[i] == "" {
			continue
		}
		if l.first == 0 {
			l.group, l.first = gaps[i], end-i
		} else if l.others == 0 {
			l.others = end - i
		}
		end = i
	}
	if l.others == 0 {
		l.others = l.first
	}
}

// around splits text into what stands before and after a digit.
func around(text, digit string) [2]string {
	before, after, _ := strings.Cut(text, digit)
	return [2]string{before, after}
}

// noBreak makes normal spaces no-break ones.
func noBreak(text string) string { return strings.ReplaceAll(text, " ", "\u00a0") }

// appendNumber writes a plain number such as "-1234.5" in the locale's way.
func (l *locale) appendNumber(dst, plain []byte) []byte {
	negative := plain[0] == '-'
	if negative {
		plain = plain[1:]
		dst = append(dst, l.minus[0]...)
	}
	whole := len(plain)
	for i, c := range plain {
		if c == '.' {
			whole = i
			break
		}
	}
	for i, c := range plain {
		if c == '.' {
			dst = append(dst, l.decimal...)
			continue
		}
		if i > 0 && i < whole && l.groupStarts(whole-i, whole) {
			dst = append(dst, l.group...)
		}
		dst = append(dst, l.digits[c-'0']...)
	}
	if negative {
		dst = append(dst, l.minus[1]...)
	}
	return dst
}

// groupStarts reports whether a group begins at the digit that has so many
// whole digits from it to the decimal mark, itself included.
func (l *locale) groupStarts(left, whole int) bool {
	if l.first == 0 || whole < l.least || left < l.first {
		return false
	}
	return (left-l.first)%l.others == 0
}
