package prose

import (
	"bytes"
	"strconv"
	"strings"
	"unicode"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"doorpocket/components/problem"
)

// Parser compiles prose. Make one with New and keep it: it has no state
// between texts and may be used from several goroutines.
type Parser struct{ engine goldmark.Markdown }

// New makes a Parser.
func New() *Parser {
	return &Parser{engine: goldmark.New(
		goldmark.WithExtensions(extension.Table),
		goldmark.WithParserOptions(
			parser.WithAttribute(),
			parser.WithInlineParsers(util.Prioritized(placeholderParser{}, 150)),
		),
		goldmark.WithRendererOptions(
			renderer.WithNodeRenderers(util.Prioritized(markRenderer{}, 100)),
		),
	)}
}

// Page compiles a whole page. The page is complete as far as it could be
// understood; what could not be is told in the list.
func (p *Parser) Page(name string, source []byte) (*Page, problem.List) {
	root := p.engine.Parser().Parse(text.NewReader(source))
	c := compiler{parser: p, file: name, source: source, ids: map[string]int{}}
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
	source := []byte(line)
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

// compiler is the work on one source.
type compiler struct {
	parser   *Parser
	file     string
	source   []byte
	at       *problem.Span // of a line: where it stands
	ids      map[string]int
	problems problem.List
}

func (c *compiler) render(nodes []ast.Node) Doc {
	var b bytes.Buffer
	for _, n := range nodes {
		if err := c.parser.engine.Renderer().Render(&b, c.source, n); err != nil {
			c.report(n, "not-rendered", "Text that cannot be rendered", err.Error())
		}
	}
	list := pieces(b.String())
	for i := range list {
		list[i].At = c.nameSpan(list[i])
	}
	return Doc{Pieces: list}
}

// nameSpan finds where the name of a hole stands in the source, so that a
// later stage can point at it.
func (c *compiler) nameSpan(p Piece) problem.Span {
	if p.Name == "" {
		return problem.Span{}
	}
	if c.at != nil {
		return *c.at
	}
	needle := "{$" + p.Name
	if p.Scheme != "" {
		needle = p.Scheme + ":" + p.Name
	}
	if i := bytes.Index(c.source, []byte(needle)); i >= 0 {
		span := c.span(i)
		span.Length = len([]rune(needle))
		return span
	}
	return problem.Span{File: c.file}
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
	}
	s.ID = c.id(words(h, c.source))
	return s
}

// id makes an address for a heading that is unique in its page.
func (c *compiler) id(title string) string {
	slug := strings.Join(strings.FieldsFunc(strings.ToLower(title), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	}), "-")
	if slug == "" {
		slug = "section"
	}
	c.ids[slug]++
	if n := c.ids[slug]; n > 1 {
		slug += "-" + strconv.Itoa(n)
	}
	return slug
}

func children(n ast.Node) []ast.Node {
	var list []ast.Node
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		list = append(list, c)
	}
	return list
}
