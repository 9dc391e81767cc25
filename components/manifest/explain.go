package manifest

import (
	"regexp"
	"strings"
	"unicode"
)

// Forms that people write for numbers and dates. They serve messages only.
var (
	decimalComma = regexp.MustCompile(`^([+-]?\d+),(\d+)\s*(.*)$`)
	dateLike     = regexp.MustCompile(`^\d{1,4}[-./]\d{1,2}[-./]\d{1,4}([Tt ].*)?$|^\d{4}-\d{1,2}$|^\d{4}-\d{2}-\d{2}.*$`)
	timeLike     = regexp.MustCompile(`^\d{1,2}:\d{1,2}`)
	wholeNumber  = regexp.MustCompile(`^[+-]?[\d_]+$`)
	anyNumber    = regexp.MustCompile(`^[+-]?[\d_]*\.?[\d_]*([eE][+-]?[\d_]*)?$`)
	withUnit     = regexp.MustCompile(`^[+-]?\d[\d.,_]*\s*[^\d\s].*$`)
	strayBracket = regexp.MustCompile(`^[^\[{]*[\]}]$`)
	missedComma  = regexp.MustCompile(`^\S+\s+[\w.-]+\s*=`)
	grouped      = regexp.MustCompile(`^[+-]?\d{1,3}([ .']\d{3})+$`)
)

// explainLeaf says in plain words why a value that holds no others cannot be
// read, and how to write it.
func explainLeaf(written string, nested bool) (code, summary, detail string) {
	if c := written[0]; c == '"' || c == '\'' {
		return explainEscape()
	}
	if nested && missedComma.MatchString(written) {
		return "missing-comma", "Missing comma",
			"Values in a list or in braces are parted by commas. Write a comma between the value and the next key."
	}
	if startsCurly(written) {
		return "curly-quotes", "Curly quotation marks",
			"Only straight quotation marks (\") are understood. Write " + quote(withoutCurly(written)) + "."
	}
	if word := yesOrNo(written); word != "" {
		return "wrong-word", "Word for yes or no that is not understood",
			"Yes and no are written true and false, in small letters and without quotes. Write: " + word
	}
	if m := decimalComma.FindStringSubmatch(written); m != nil && !nested {
		return explainComma(m)
	}
	if !nested && strayBracket.MatchString(written) {
		return "stray-bracket", "Closing bracket without an opening one",
			"No list or braces are open here. Remove the bracket, or write the opening one in front of the value."
	}
	if written[0] >= '0' && written[0] <= '9' || strings.IndexByte("+-.", written[0]) >= 0 {
		return explainNumber(written)
	}
	return missingQuotes(written)
}

// explainEscape says what is wrong inside a text in quotes.
func explainEscape() (code, summary, detail string) {
	return "bad-escape", "Backslash that is not understood",
		`In a text between two " a backslash begins a special character. Write \\ for a backslash, or put the text between two '.`
}

// explainComma deals with 2,5 and 2,5 kg.
func explainComma(m []string) (code, summary, detail string) {
	right := m[1] + "." + m[2]
	if m[3] != "" {
		right = quote(right + " " + m[3])
	}
	return "decimal-comma", "Number with a decimal comma",
		"Numbers are written with a point. Write: " + right
}

// explainNumber deals with what starts like a number or date.
func explainNumber(written string) (code, summary, detail string) {
	switch {
	case grouped.MatchString(written):
		return "bad-number", "Number in groups of digits",
			"The digits of a number stand together. Write: " + strings.NewReplacer(" ", "", ".", "", "'", "").Replace(written)
	case dateLike.MatchString(written):
		return "bad-date", "Date that cannot be read",
			"This is no day of the calendar, or not written as year-month-day. Write for example: 2026-10-02"
	case timeLike.MatchString(written):
		return "missing-quotes", "Missing quotation marks",
			"A time of day is a text here, and a text stands in quotes. Write: " + quote(written)
	case wholeNumber.MatchString(written) && leadingZero(written):
		return "bad-number", "Number that starts with 0",
			"A number does not start with 0. Leave the 0 out, or put a code or telephone number in quotes: " + quote(written)
	case wholeNumber.MatchString(written) && digits(written) > 18:
		return "number-too-large", "Number that is too large",
			"A whole number may have 18 digits. Write a smaller number, or put a code in quotes: " + quote(written)
	case anyNumber.MatchString(written) && (strings.ContainsAny(written, "eE") && digits(written) > 1 || digits(written) > 300):
		return "number-too-large", "Number that is too large",
			"This number is larger than can be worked with, or not complete. Write it in ordinary digits."
	case anyNumber.MatchString(written):
		return "bad-number", "Number that cannot be read",
			"A number has digits before and behind its point. Write for example: 0.5"
	case withUnit.MatchString(written):
		return "missing-quotes", "Missing quotation marks",
			"A value with a unit, or any text, stands in quotes. Write: " + quote(written)
	}
	return missingQuotes(written)
}

// missingQuotes deals with words that stand alone.
func missingQuotes(written string) (code, summary, detail string) {
	return "missing-quotes", "Missing quotation marks",
		"A text stands in quotes. Write: " + quote(strings.Trim(written, `"'`))
}

// leadingZero reports whether a whole number starts with a nought too many.
func leadingZero(written string) bool {
	written = strings.TrimLeft(written, "+-")
	return len(written) > 1 && written[0] == '0'
}

// digits counts the digits of a number.
func digits(written string) int {
	n := 0
	for _, r := range written {
		if unicode.IsDigit(r) {
			n++
		}
	}
	return n
}

// isCurly reports whether a rune is a quotation mark that TOML does not know.
func isCurly(r rune) bool { return strings.ContainsRune("“”„‟«»‹›‘’‚‛`´", r) }

// startsCurly reports whether a text starts with such a mark.
func startsCurly(text string) bool { return strings.IndexFunc(text, isCurly) == 0 }

// withoutCurly removes such marks from both ends of a text.
func withoutCurly(text string) string {
	return strings.TrimFunc(text, func(r rune) bool { return isCurly(r) || r == '"' })
}
