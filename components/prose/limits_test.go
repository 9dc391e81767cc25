package prose_test

import (
	"strings"
	"testing"

	"doorpocket/components/problem"
)

// A text of a length that nobody reads is refused before any work is done on
// it; one that is as long as it may be is not.
func TestLongTexts(t *testing.T) {
	word := "word "
	page, found := parser.Page("page.md", []byte(strings.Repeat(word, 65536/len(word))))
	if len(found) > 0 || page.Intro.Empty() {
		t.Errorf("a page as long as it may be: %v", found)
	}
	page, found = parser.Page("page.md", []byte(strings.Repeat("[a](", 1<<20)))
	if len(found) != 1 || found[0].String() != "page.md:1:1: error: A page that is too long" || found[0].Detail == "" || !page.Intro.Empty() {
		t.Errorf("a page of four megabytes: %.300v", found)
	}
	at := problem.Span{File: "lines.toml", Start: problem.Pos{Line: 3, Column: 4}, Length: 5}
	if _, found := parser.Line(strings.Repeat("x", 4096), at); len(found) > 0 {
		t.Errorf("a line as long as it may be: %v", found)
	}
	doc, found := parser.Line(strings.Repeat("{$a} ", 1000), at)
	if len(found) != 1 || found[0].String() != "lines.toml:3:4: error: A line that is too long" || !doc.Empty() {
		t.Errorf("a line of five thousand bytes: %.300v", found)
	}
}
