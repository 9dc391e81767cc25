package prose

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"
)

// linkSchemes are the addresses that the build resolves for one van.
var linkSchemes = []string{"system", "fitted", "routine", "symptom", "page"}

// embedSchemes are what an image may ask for.
var embedSchemes = []string{"table", "figure", "picture"}

// openSchemes may stand in a page as they are: they ask for nothing until
// somebody taps them.
var openSchemes = []string{"https", "tel", "mailto", "sms"}

// markRenderer writes the nodes that carry holes; goldmark's own renderer
// writes the rest.
type markRenderer struct{}

func (markRenderer) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(kindPlaceholder, renderPlaceholder)
	r.Register(ast.KindParagraph, renderParagraph)
	r.Register(ast.KindListItem, framed("item", "li"))
	r.Register(ast.KindBlockquote, framed("group", "blockquote"))
	r.Register(ast.KindList, renderList)
	r.Register(ast.KindHeading, renderHeading)
	r.Register(ast.KindLink, renderLink)
	r.Register(ast.KindAutoLink, renderNothing)
	r.Register(ast.KindImage, renderImage)
	r.Register(ast.KindRawHTML, renderNothing)
	r.Register(ast.KindHTMLBlock, renderNothing)
	r.Register(extast.KindTable, renderTable)
	r.Register(extast.KindTableRow, framed("item", "tr"))
}

func renderPlaceholder(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if p := n.(*placeholder); entering && !p.broken {
		_, _ = w.WriteString(mark("value", p.name, field(p.unit), strconv.Itoa(p.offset)))
	}
	return ast.WalkContinue, nil
}

// renderParagraph leaves the tags away around a lone embed, which is a block
// itself, and makes no frame inside a list item, which is one already.
func renderParagraph(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if loneEmbed(n) != nil {
		return ast.WalkContinue, nil
	}
	open, close := "<p>", "</p>"
	if !inItem(n) {
		open, close = mark("item")+open, close+mark("close")
	}
	writeEither(w, entering, open, close)
	return ast.WalkContinue, nil
}

// framed writes a tag that stands or falls as one.
func framed(frame, tag string) renderer.NodeRendererFunc {
	return func(w util.BufWriter, _ []byte, _ ast.Node, entering bool) (ast.WalkStatus, error) {
		writeEither(w, entering, mark(frame)+"<"+tag+">", "</"+tag+">"+mark("close"))
		return ast.WalkContinue, nil
	}
}

func renderList(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	tag, start := "ul", ""
	if list := n.(*ast.List); list.IsOrdered() {
		tag = "ol"
		if list.Start != 1 { // it goes on after a table or figure
			start = ` start="` + strconv.Itoa(list.Start) + `"`
		}
	}
	writeEither(w, entering, mark("group")+"<"+tag+start+">", "</"+tag+">"+mark("close"))
	return ast.WalkContinue, nil
}

// renderHeading writes third-level headings and below; second-level ones part
// the page and come here only from within a list or quotation.
func renderHeading(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	tag := "h" + string(rune('0'+n.(*ast.Heading).Level))
	open, close := "<"+tag+">", "</"+tag+">"
	if !inItem(n) {
		open, close = mark("item")+open, close+mark("close")
	}
	writeEither(w, entering, open, close)
	return ast.WalkContinue, nil
}

// inItem reports whether a block stands directly in a list item, which is a
// frame already.
func inItem(n ast.Node) bool {
	return n.Parent() != nil && n.Parent().Kind() == ast.KindListItem
}

// renderTable lets a wide table scroll by itself, by keyboard too.
func renderTable(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	end := "</table></div>"
	if n.ChildCount() > 1 { // goldmark opens the body after the header row
		end = "</tbody>" + end
	}
	writeEither(w, entering, mark("group")+`<div class="scroll" tabindex="0"><table>`, end+mark("close"))
	return ast.WalkContinue, nil
}

func renderLink(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	scheme, target := address(string(n.(*ast.Link).Destination))
	switch {
	case slices.Contains(linkSchemes, scheme):
		writeEither(w, entering, mark("link", scheme, field(target), strconv.Itoa(n.Pos())), mark("linkend"))
	case slices.Contains(openSchemes, scheme):
		href := string(util.EscapeHTML(util.URLEscape(n.(*ast.Link).Destination, true)))
		writeEither(w, entering, `<a href="`+href+`" rel="noreferrer">`, "</a>")
	}
	return ast.WalkContinue, nil
}

func renderImage(w util.BufWriter, source []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	scheme, target := address(string(n.(*ast.Image).Destination))
	if entering && slices.Contains(embedSchemes, scheme) {
		_, _ = w.WriteString(mark("embed", scheme, field(target), field(words(n, source)), strconv.Itoa(n.Pos())))
	}
	return ast.WalkSkipChildren, nil
}

func renderNothing(util.BufWriter, []byte, ast.Node, bool) (ast.WalkStatus, error) {
	return ast.WalkSkipChildren, nil
}

func writeEither(w util.BufWriter, entering bool, open, close string) {
	if entering {
		_, _ = w.WriteString(open)
		return
	}
	_, _ = w.WriteString(close)
}

// loneEmbed is the image that is all of a paragraph, or nil.
func loneEmbed(n ast.Node) *ast.Image {
	image, ok := n.FirstChild().(*ast.Image)
	if !ok || n.ChildCount() != 1 {
		return nil
	}
	return image
}

// address parts a destination into scheme and target. A destination without
// a scheme, or one that is no address at all, has scheme "".
func address(destination string) (scheme, target string) {
	u, err := url.Parse(destination)
	if err != nil || u.Scheme == "" {
		return "", destination
	}
	return u.Scheme, strings.TrimPrefix(destination[len(u.Scheme):], ":")
}

// words is the plain text under a node.
func words(n ast.Node, source []byte) string {
	var b strings.Builder
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if t, ok := c.(*ast.Text); ok {
			b.Write(meant(t, source))
		} else {
			b.WriteString(words(c, source))
		}
	}
	return squeeze(b.String())
}

// meant is the text of a node without its escapes and character references,
// with a space where its line ends.
func meant(t *ast.Text, source []byte) []byte {
	value := t.Segment.Value(source)
	if t.Parent().Kind() != ast.KindCodeSpan {
		value = util.UnescapePunctuations(util.ResolveEntityNames(util.ResolveNumericReferences(value)))
	}
	if t.SoftLineBreak() || t.HardLineBreak() {
		value = append(slices.Clone(value), ' ')
	}
	return value
}
