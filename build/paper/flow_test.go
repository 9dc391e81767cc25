package paper_test

import (
	"fmt"
	"strings"
	"testing"

	"doorpocket/build/paper"
)

var ten = paper.Type{Size: 10}

// leaf is a small page of about ten lines.
var leaf = paper.Layout{Page: paper.Size{Width: 80, Height: 10*ten.Leading() + 20}, Left: 10, Right: 10, Top: 10, Bottom: 10}

// flowed sets blocks and gives the text of each page.
func flowed(t *testing.T, l paper.Layout, compose func(paper.Place) []paper.Block) []string {
	t.Helper()
	d, err := stock(t).Flow(paper.About{Title: "Flow", Lang: "en"}, l, compose)
	if err != nil {
		t.Fatal(err)
	}
	file := write(t, d)
	pages := strings.Split(run(t, "pdftotext", "-raw", file, "-"), "\f")
	return pages[:len(pages)-1]
}

func line(text string) paper.Block { return paper.Para{Type: ten, Spans: paper.Plain(text)} }

func lines(from, to int) []paper.Block {
	var all []paper.Block
	for n := from; n <= to; n++ {
		all = append(all, line(fmt.Sprintf("line %d", n)))
	}
	return all
}

// The contents name pages that come later; the page numbers are right, also
// where the contents themselves take room.
func TestPageNumbersSettle(t *testing.T) {
	l := leaf
	l.Foot = func(d *paper.Doc, page, pages int) {
		d.Text(10, l.Page.Height-3, paper.Type{Size: 6}, fmt.Sprintf("%d of %d", page, pages))
	}
	pages := flowed(t, l, func(at paper.Place) []paper.Block {
		all := []paper.Block{line(fmt.Sprintf("end is on %d", at("end")))}
		for range at("end") { // the more pages, the more lines
			all = append(all, line("contents"))
		}
		all = append(all, lines(1, 26)...)
		return append(all, paper.Mark{ID: "end", Title: "End"}, line("The end"))
	})
	last := len(pages)
	if !strings.Contains(pages[0], fmt.Sprintf("end is on %d\n", last)) || !strings.Contains(pages[last-1], "The end") {
		t.Errorf("%d pages: %q", last, pages)
	}
	for n, text := range pages {
		if !strings.Contains(text, fmt.Sprintf("%d of %d", n+1, last)) {
			t.Errorf("page %d: %q", n+1, text)
		}
	}
}

// What belongs together is on one page; a heading is never the last thing on
// one.
func TestKeptTogether(t *testing.T) {
	pages := flowed(t, leaf, func(paper.Place) []paper.Block {
		all := lines(1, 8)
		all = append(all, paper.Together(lines(9, 12)))
		all = append(all, lines(13, 17)...)
		return append(all, paper.WithNext{Block: line("heading")}, line("below"))
	})
	if len(pages) != 3 || strings.Contains(pages[0], "line 9") || !strings.Contains(pages[1], "line 9\n") ||
		!strings.Contains(pages[2], "heading\nbelow") {
		t.Errorf("pages %q", pages)
	}
}

// Of a long table every page has the heads; what is too high for any page is
// torn rather than lost.
func TestTableOverPages(t *testing.T) {
	table := paper.Table{Type: ten, Heads: []string{"What", "How much"}, Numeric: []bool{false, true}}
	for n := range 30 {
		table.Rows = append(table.Rows, []string{fmt.Sprintf("row %d", n), fmt.Sprint(n * n)})
	}
	pages := flowed(t, leaf, func(paper.Place) []paper.Block { return []paper.Block{paper.Together{table}} })
	text := strings.Join(pages, "")
	for n := range 30 {
		if !strings.Contains(text, fmt.Sprintf("row %d %d\n", n, n*n)) {
			t.Errorf("row %d is lost", n)
		}
	}
	for n, page := range pages {
		if !strings.HasPrefix(page, "What How much\n") {
			t.Errorf("page %d begins without heads: %q", n+1, page)
		}
	}
}

// A box holds its words and its signs, and boxes, lists and ticks stand in the
// order in which they were given.
func TestBlocks(t *testing.T) {
	long := "A caution that is longer than one line of this narrow column."
	l := leaf
	l.Page.Height = 200
	pages := flowed(t, l, func(paper.Place) []paper.Block {
		return []paper.Block{
			paper.Box{Title: "Danger", Type: ten, Pad: 2, Line: 0.3, Bar: paper.Grey, Signs: []string{"W021"}, Blocks: []paper.Block{line(long)}, After: 2},
			paper.Item{Type: ten, Mark: "1", Plate: true, Indent: 8, Blocks: []paper.Block{line("first")}},
			paper.Item{Type: ten, Tick: true, Indent: 8, Blocks: []paper.Block{line("ticked")}},
			paper.Indented{By: 5, Blocks: []paper.Block{line("indented")}},
			paper.Para{Type: ten, Spans: []paper.Span{{Text: "half "}, {Text: "bo", Bold: true}, {Text: "ld word"}}, Align: paper.Right},
			paper.Para{Type: ten, Spans: paper.Plain("one\ntwo"), Align: paper.Middle},
			paper.Rule{Pen: paper.Lined(paper.Black, 0.2), Above: 1, Under: 1},
			line(strings.Repeat("unbreakable", 12)),
		}
	})
	text := strings.Join(strings.Fields(strings.Join(pages, " ")), " ")
	at := 0
	for _, want := range []string{"Danger", long, "1", "first", "ticked", "indented", "half bold word", "one two", "unbreakableunb"} {
		i := strings.Index(text[at:], want)
		if i < 0 {
			t.Fatalf("%q is not in %q", want, text[at:])
		}
		at += i
	}
	if n := strings.Count(strings.ReplaceAll(text, " ", ""), "unbreakable"); n != 12 {
		t.Errorf("%d of 12 parts of a long word", n)
	}
}
