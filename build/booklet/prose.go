package booklet

import (
	"fmt"
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"doorpocket/build/guide"
	"doorpocket/build/paper"
	"doorpocket/components/prose"
)

// filler fills the library's words. What a page shows besides words becomes an
// element of our own, which the reader below turns into a block.
type filler struct{ guide.Filler }

// The elements and the scheme by which filler and reader know each other.
const (
	embedElement = "x-embed"
	pageScheme   = "page:"
)

// Link leads to the path of a page of the van.
func (f filler) Link(scheme, target string) (string, bool) {
	path, ok := f.Guide.Path(scheme, target)
	return pageScheme + html.EscapeString(path), ok
}

// Embed keeps the place of a table, figure or picture.
func (f filler) Embed(scheme, target, alt string) (string, bool) {
	if f.Page == nil {
		return "", false
	}
	return fmt.Sprintf(`<%s scheme="%s" target="%s" alt="%s"></%[1]s>`, embedElement,
		html.EscapeString(scheme), html.EscapeString(target), html.EscapeString(alt)), true
}

// blocks is a text of the library's as blocks.
func (c *composer) blocks(p *guide.Page, d prose.Doc) []paper.Block {
	r := reader{c: c, page: p}
	r.read(d.HTML(filler{guide.Filler{Guide: c.guide, Page: p}}))
	return r.out
}

// spans is a line of the library's as text with weights.
func (c *composer) spans(p *guide.Page, d prose.Doc) []paper.Span {
	r := reader{c: c, page: p}
	return r.inline(parsed(d.HTML(filler{guide.Filler{Guide: c.guide, Page: p}})), false)
}

func parsed(markup string) []*html.Node {
	nodes, err := html.ParseFragment(strings.NewReader(markup), &html.Node{Type: html.ElementNode, Data: "body", DataAtom: atom.Body})
	if err != nil {
		return nil // a reader of a string does not fail
	}
	return nodes
}

// reader turns the HTML of the library's words into blocks.
type reader struct {
	c    *composer
	page *guide.Page
	out  []paper.Block
	line []paper.Span // words that stand outside any paragraph
}

func (r *reader) read(markup string) {
	for _, n := range parsed(markup) {
		r.node(n)
	}
	r.flush()
}

// flush ends words that stand outside any paragraph.
func (r *reader) flush() {
	if strings.TrimSpace(textOf(r.line)) != "" {
		r.out = append(r.out, para(body, r.line))
	}
	r.line = nil
}

func textOf(spans []paper.Span) string {
	var b strings.Builder
	for _, s := range spans {
		b.WriteString(s.Text)
	}
	return b.String()
}

func (r *reader) node(n *html.Node) {
	if n.Type == html.TextNode {
		r.line = append(r.line, r.inline([]*html.Node{n}, false)...)
		return
	}
	switch {
	case n.Data == embedElement:
		r.flush()
		r.out = append(r.out, r.c.embed(r.page, attribute(n, "scheme"), attribute(n, "target"), attribute(n, "alt"))...)
	case n.DataAtom == atom.P && hasEmbed(n), n.DataAtom == atom.Div:
		r.children(n)
	case n.DataAtom == atom.P:
		r.flush()
		r.line = r.inline(childrenOf(n), false)
		r.flush()
	case n.DataAtom == atom.Ul, n.DataAtom == atom.Ol:
		r.flush()
		r.list(n)
	case n.DataAtom == atom.Table:
		r.flush()
		r.table(n)
	case n.DataAtom == atom.H2, n.DataAtom == atom.H3, n.DataAtom == atom.H4:
		r.flush()
		r.out = append(r.out, paper.WithNext{Block: para(strong, r.inline(childrenOf(n), true))})
	case n.DataAtom == atom.Blockquote:
		r.flush()
		inner := reader{c: r.c, page: r.page}
		inner.children(n)
		r.out = append(r.out, paper.Indented{By: 5, Blocks: inner.out})
	case n.DataAtom == atom.Hr:
		r.flush()
		r.out = append(r.out, paper.Rule{Pen: thin, Above: 1, Under: 1.5})
	default:
		r.line = append(r.line, r.inline([]*html.Node{n}, false)...)
	}
}

func (r *reader) children(n *html.Node) {
	for c := range n.ChildNodes() {
		r.node(c)
	}
	r.flush()
}

func childrenOf(n *html.Node) []*html.Node {
	var all []*html.Node
	for c := range n.ChildNodes() {
		all = append(all, c)
	}
	return all
}

func hasEmbed(n *html.Node) bool {
	for c := range n.Descendants() {
		if c.Data == embedElement {
			return true
		}
	}
	return false
}

func attribute(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

// list gives each item its mark.
func (r *reader) list(n *html.Node) {
	number := 0
	for li := range n.ChildNodes() {
		if li.DataAtom != atom.Li {
			continue
		}
		number++
		mark := "•"
		if n.DataAtom == atom.Ol {
			mark = fmt.Sprint(number)
		}
		inner := reader{c: r.c, page: r.page}
		inner.children(li)
		r.out = append(r.out, paper.Item{Type: body, Mark: mark, Plate: n.DataAtom == atom.Ol, Indent: 6.5, Blocks: inner.out})
	}
	r.out = append(r.out, paper.Space(1))
}

func (r *reader) table(n *html.Node) {
	t := paper.Table{Type: small, After: 2.5}
	for tr := range n.Descendants() {
		if tr.DataAtom != atom.Tr {
			continue
		}
		var row []string
		head := false
		for cell := range tr.ChildNodes() {
			switch cell.DataAtom {
			case atom.Th, atom.Td:
				head = head || cell.DataAtom == atom.Th
				row = append(row, strings.Join(strings.Fields(textOf(r.inline(childrenOf(cell), false))), " "))
			}
		}
		if head && t.Heads == nil {
			t.Heads = row
		} else {
			t.Rows = append(t.Rows, row)
		}
	}
	r.out = append(r.out, t)
}

// inline is words with their weight. A link to a page says on which it is.
func (r *reader) inline(nodes []*html.Node, bold bool) []paper.Span {
	var spans []paper.Span
	for _, n := range nodes {
		switch {
		case n.Type == html.TextNode:
			spans = append(spans, paper.Span{Text: strings.ReplaceAll(n.Data, "\n", " "), Bold: bold})
		case n.DataAtom == atom.Br:
			spans = append(spans, paper.Span{Text: "\n"})
		case n.DataAtom == atom.A:
			spans = append(spans, r.inline(childrenOf(n), bold)...)
			if ref := r.reference(attribute(n, "href"), n); ref != "" {
				spans = append(spans, paper.Span{Text: ref, Bold: bold})
			}
		case n.DataAtom == atom.Strong, n.DataAtom == atom.B, n.DataAtom == atom.Em:
			spans = append(spans, r.inline(childrenOf(n), true)...)
		case n.Type == html.ElementNode:
			spans = append(spans, r.inline(childrenOf(n), bold)...)
		}
	}
	return spans
}

// reference is what stands behind a link: the page, or the address itself.
func (r *reader) reference(href string, n *html.Node) string {
	if path, ok := strings.CutPrefix(href, pageScheme); ok {
		if r.page != nil && path == r.page.Path {
			return ""
		}
		return " (" + r.c.onPage(path) + ")"
	}
	if address, ok := strings.CutPrefix(href, "https://"); ok {
		return " (" + address + ")"
	}
	return ""
}
