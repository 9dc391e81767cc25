package roster

import "strings"

// A spreadsheet takes a cell that begins with one of these for a formula and works
// it out, whoever wrote it (OWASP, CSV Injection). An apostrophe before it makes it
// words; spreadsheets and Import take it off again.
const formula = "=+-@\t\r"

const asWords = "'"

// harmless is a text that no spreadsheet takes for a formula.
func harmless(text string) string {
	if text != "" && strings.ContainsRune(formula, rune(text[0])) {
		return asWords + text
	}
	return text
}

// HarmlessAll lets no spreadsheet take a cell of a table for a formula, in place, but
// leaves numbers below zero: they are no words. One with a plus sign may be that of a telephone.
func HarmlessAll(rows [][]string) [][]string {
	for _, row := range rows {
		for i, cell := range row {
			if !belowZero(cell) {
				row[i] = harmless(cell)
			}
		}
	}
	return rows
}

func belowZero(text string) bool {
	digits, minus := strings.CutPrefix(text, "-")
	return minus && digits != "" && strings.Trim(digits, "0123456789.") == ""
}

// guarded is harmless for a text whose own apostrophe has to come back.
func guarded(text string) string {
	if strings.HasPrefix(text, asWords) {
		return asWords + text
	}
	return harmless(text)
}

// unguarded takes the apostrophe off again.
func unguarded(text string) string {
	rest, marked := strings.CutPrefix(text, asWords)
	if marked && rest != "" && strings.ContainsRune(formula+asWords, rune(rest[0])) {
		return rest
	}
	return text
}
