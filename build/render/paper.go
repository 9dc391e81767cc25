package render

import (
	"fmt"
	"html/template"
	"strings"
	"unicode"
)

// Counters of CSS, between the strings of a content.
const (
	sheetCounter  = `" counter(page) "`
	sheetsCounter = `" counter(pages) "`
)

// paper is the foot of every sheet of a page that is printed: where the page
// is, what it belongs to, which revision, which sheet of how many. The browser
// keeps the margin for it, so that it stands over no text.
func (w *Words) paper(where, whose string) template.CSS {
	revision := w.must("revision", "revision", revisionToken)
	sheets := strings.NewReplacer("{$sheet}", sheetCounter, "{$sheets}", sheetsCounter).Replace(cssText(w.must("paper_sheet")))
	return template.CSS(`@page{@bottom-left{content:"` + cssText(where) + `\a ` + cssText(whose+" · "+revision) +
		`"}@bottom-right{content:"` + sheets + `"}}`)
}

// paperOfStaff is the foot of every sheet of a page at a path below the staff
// tree, which has no address.
func (w *Words) paperOfStaff(path, whose string) template.CSS {
	return w.paper(w.must("staff_only")+" · staff/"+path, whose)
}

// paperOfSheet counts the pages of a sheet for staff, which says all else itself.
func (w *Words) paperOfSheet() template.CSS {
	count := strings.NewReplacer("{$page}", sheetCounter, "{$pages}", sheetsCounter).Replace(cssText(w.must("sheet_page")))
	return template.CSS(`@page clip{@bottom-right{content:"` + count + `"}}`)
}

// cssText is a text between the quotation marks of a style sheet.
func cssText(text string) string {
	var b strings.Builder
	for _, r := range text {
		if r == ' ' || r == '{' || r == '}' || r == '$' || r > unicode.MaxASCII || strings.ContainsRune("-./:,", r) || unicode.IsLetter(r) || unicode.IsDigit(r) {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, `\%x `, r)
		}
	}
	return b.String()
}
