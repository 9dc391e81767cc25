package prose

import (
	"bytes"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"doorpocket/components/condition"
	"doorpocket/components/problem"
)

// Parser compiles prose. Make one with New and keep it: it has no state
// between texts and may be used from several goroutines.
type Parser struct{ engine goldmark.Markdown }

// New makes a Parser.
func New() *Parser {
	return &Parser{engine: goldmark.New(
		goldmark.WithExtensions(extension.NewTable(
			// The style of a cell would be refused by the policy of the pages.
			extension.WithTableCellAlignMethod(extension.TableCellAlignAttribute))),
		goldmark.WithParserOptions(
			parser.WithAttribute(),
			parser.WithInlineParsers(util.Prioritized(placeholderParser{}, 150)),
		),
		goldmark.WithRendererOptions(
			renderer.WithNodeRenderers(util.Prioritized(markRenderer{}, 100)),
		),
	)}
}

// Nobody reads more than this, and the time that some marks take grows with the
// square of the text: a page has a few thousand bytes, a line a few hundred.
const (
	maxPage = 64 << 10 // bytes
	maxLine = 4 << 10
)

// Page compiles a whole page. The page is complete as far as it could be
// understood; what could not be is told in the list.
func (p *Parser) Page(name string, source []byte) (*Page, problem.List) {
	if len(source) > maxPage {
		c := compiler{file: name, source: source}
		c.reportAt(0, "too-long", "A page that is too long", "A page may have 64 thousand bytes. Cut it into several.")
		return &Page{}, c.problems
	}
	source = withoutNUL(source)
	root := p.engine.Parser().Parse(text.NewReader(source))
	c := compiler{parser: p, file: name, source: source, ids: map[string]bool{}}
	c.check(root)
	page := &Page{}
	var blocks []ast.Node
	flush := func() {
		body := c.render(blocks)
		if n := len(page.Sections); n > 0 {
			page.Sections[n-1].Body = body
		} else {
			page.Intro = body
		}
		blocks = nil
	}
	for n := root.FirstChild(); n != nil; n = n.NextSibling() {
		if h, ok := n.(*ast.Heading); ok && h.Level == 2 {
			flush()
			page.Sections = append(page.Sections, c.section(h))
			continue
		}
		blocks = append(blocks, n)
	}
	flush()
	return page, c.problems
}

// Line compiles one line of words, such as a step. at is where the line
// stands in its own file: problems point there.
func (p *Parser) Line(line string, at problem.Span) (Doc, problem.List) {
	if len(line) > maxLine {
		c := compiler{at: &at}
		c.reportAt(0, "too-long", "A line that is too long", "A step, check, caution or title may have 4 thousand bytes. Shorten it.")
		return Doc{}, c.problems
	}
	source := withoutNUL([]byte(line))
	root := p.engine.Parser().Parse(text.NewReader(source))
	c := compiler{parser: p, file: at.File, source: source, at: &at}
	c.check(root)
	only := root.FirstChild()
	if only == nil || only.NextSibling() != nil || only.Kind() != ast.KindParagraph {
		c.report(root, "not-one-line", "More than a line of words",
			"Steps, checks, cautions and titles are one paragraph without lists, headings or tables.")
		return Doc{}, c.problems
	}
	return c.render(children(only)), c.problems
}

// withoutNUL does what CommonMark asks for, and keeps the edges of our marks to
// ourselves.
func withoutNUL(source []byte) []byte {
	return bytes.ReplaceAll(source, []byte(markEdge), []byte("\uFFFD"))
}

// compiler is the work on one source.
type compiler struct {
	parser   *Parser
	file     string
	source   []byte
	at       *problem.Span // of a line: where it stands
	ids      map[string]bool
	problems problem.List
}

func (c *compiler) render(nodes []ast.Node) Doc {
	var b bytes.Buffer
	for _, n := range nodes {
		if err := c.parser.engine.Renderer().Render(&b, c.source, n); err != nil {
			c.report(n, "not-rendered", "Text that cannot be rendered", err.Error())
		}
	}
	return Doc{Pieces: pieces(b.String(), c.nameSpan)}
}

// nameSpan finds where the name of a hole stands in the source at or after an
// offset, so that a later stage can point at it.
func (c *compiler) nameSpan(p Piece, offset int) problem.Span {
	if c.at != nil {
		return *c.at
	}
	needle := "{$" + p.Name
	if p.Scheme != "" {
		needle = p.Scheme + ":" + p.Name
	}
	offset = min(max(offset, 0), len(c.source))
	span := c.span(offset)
	if i := bytes.Index(c.source[offset:], []byte(needle)); i >= 0 {
		span = c.span(offset + i)
		span.Length = utf8.RuneCountInString(needle)
	}
	return span
}

func (c *compiler) section(h *ast.Heading) Section {
	s := Section{Title: c.render(children(h)), At: c.span(h.Pos())}
	for _, a := range h.Attributes() {
		value, ok := a.Value.([]byte)
		if string(a.Name) != "when" || !ok {
			c.report(h, "unknown-attribute", "Unknown heading attribute "+strconv.Quote(string(a.Name)),
				`A heading may carry only a condition: ## Title {when="cylinders > 1"}`)
			continue
		}
		s.When = string(value)
		s.Stands, _ = condition.Parse(s.When) // the library reports what is not understood
	}
	s.ID = c.id(words(h, c.source))
	return s
}

// id makes an address for a heading that is unique in its page.
func (c *compiler) id(title string) string {
	slug := strings.Join(strings.FieldsFunc(strings.ToLower(title), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	}), "-")
	if slug == "" || slug == "text" || strings.HasPrefix(slug, "x-") { // ids of the page round it
		slug = strings.TrimSuffix("section-"+slug, "-")
	}
	id := slug
	for n := 2; c.ids[id]; n++ {
		id = slug + "-" + strconv.Itoa(n)
	}
	c.ids[id] = true
	return id
}

func children(n ast.Node) []ast.Node {
	var list []ast.Node
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		list = append(list, c)
	}
	return list
}
