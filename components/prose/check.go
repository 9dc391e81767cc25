package prose

import (
	"bytes"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"

	"doorpocket/components/problem"
)

// check walks the tree and reports what a page may not hold.
func (c *compiler) check(root ast.Node) {
	_ = ast.Walk(root, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			c.checkNode(n)
		}
		return ast.WalkContinue, nil
	})
}

func (c *compiler) checkNode(n ast.Node) {
	switch n := n.(type) {
	case *ast.RawHTML, *ast.HTMLBlock:
		c.report(n, "raw-html", "Raw HTML in a page",
			"Pages are Markdown. Write the words without tags; put a backslash before a < that is meant as a sign.")
	case *ast.Heading:
		c.checkHeading(n)
	case *ast.Link:
		c.checkLink(n, string(n.Destination))
	case *ast.AutoLink:
		c.report(n, "bare-address", "A bare address",
			"Give an address words: [the ferry's rules](https://...).")
	case *ast.Image:
		c.checkImage(n)
	case *ast.FencedCodeBlock, *ast.CodeBlock:
		c.report(n, "code-block", "A block of code in a page",
			"An indented paragraph becomes code. Begin it at the margin.")
	case *placeholder:
		if n.broken {
			c.reportAt(n.offset, "bad-placeholder", "A placeholder that is not understood",
				"Write {$capacity}, or {$front :unit unit=psi} to show it in another unit.")
		} else if within(n, ast.KindImage) {
			c.reportAt(n.offset, "misplaced-placeholder", "A placeholder in the words of an image",
				"They stand for themselves. Write them without values.")
		}
	case *ast.Text:
		c.checkText(n)
	}
}

// checkText finds what was meant for more than it is where it stands.
func (c *compiler) checkText(n *ast.Text) {
	text := n.Segment.Value(c.source)
	if i := bytes.Index(text, []byte("{when")); i >= 0 {
		c.reportAt(n.Segment.Start+i, "misplaced-condition", "A condition that is not understood",
			`Only a heading of a section can have one, at its end: ## Title {when="cylinders > 1"}`)
	}
	if i := bytes.Index(text, []byte("{$")); i >= 0 && within(n, ast.KindCodeSpan) {
		c.reportAt(n.Segment.Start+i, "misplaced-placeholder", "A placeholder between backticks",
			"What stands between backticks is printed as it is. Write it without them.")
	}
}

// within reports whether a node stands in one of a kind.
func within(n ast.Node, kind ast.NodeKind) bool {
	for p := n.Parent(); p != nil; p = p.Parent() {
		if p.Kind() == kind {
			return true
		}
	}
	return false
}

func (c *compiler) checkHeading(n *ast.Heading) {
	section := n.Level == 2 && n.Parent().Kind() == ast.KindDocument
	if n.Level == 1 {
		c.report(n, "first-level-heading", "A first-level heading in a page",
			"The title comes from lines.LANG.toml. Begin sections with ##.")
	}
	if !section && len(n.Attributes()) > 0 {
		c.report(n, "misplaced-condition", "A condition on a heading that begins no section",
			`Only a heading with ## at the margin can have one: ## Title {when="cylinders > 1"}`)
	}
}

func (c *compiler) checkLink(n ast.Node, destination string) {
	scheme, target := address(destination)
	switch {
	case strings.Contains(destination, "{$"):
		c.report(n, "misplaced-placeholder", "A placeholder in an address", "An address is the same for every van. Write it without values.")
	case slices.Contains(linkSchemes, scheme):
		if target == "" {
			c.report(n, "empty-address", "An address without a target", "Write for example [gas taps](system:gas/isolation-taps).")
		}
	case !slices.Contains(openSchemes, scheme):
		c.report(n, "bad-address", "Address "+strconv.Quote(destination)+" is not allowed",
			"Link to "+strings.Join(linkSchemes, ":, ")+":, or to https:, tel:, mailto: or sms:.")
	}
}

func (c *compiler) checkImage(n *ast.Image) {
	if c.at != nil {
		c.report(n, "image-in-text", "A table, figure or picture in a line", "A line holds words only: put it into the page.")
		return
	}
	scheme, target := address(string(n.Destination))
	if !slices.Contains(embedSchemes, scheme) || target == "" {
		c.report(n, "bad-image", "Image address "+strconv.Quote(string(n.Destination))+" is not allowed",
			"An image names a table:, a figure: or a picture: of this van; nothing is fetched from elsewhere.")
		return
	}
	if p := n.Parent(); p.Kind() != ast.KindParagraph || loneEmbed(p) == nil {
		c.report(n, "image-in-text", "A table, figure or picture inside a paragraph",
			"Put it on a line of its own with an empty line before and after.")
	}
}

func (c *compiler) report(n ast.Node, code, summary, detail string) {
	c.reportAt(n.Pos(), code, summary, detail)
}

// maxReported is how many problems of one text are told; more help nobody.
const maxReported = 50

func (c *compiler) reportAt(offset int, code, summary, detail string) {
	if len(c.problems) >= maxReported {
		return
	}
	span := c.span(offset)
	c.problems = append(c.problems, problem.Problem{
		Severity: problem.Error, Code: code, Span: span, Summary: summary, Detail: detail,
		SourceLine: c.line(span.Start.Line),
	})
}

// span turns a byte offset into a place: columns are counted in characters.
func (c *compiler) span(offset int) problem.Span {
	if c.at != nil {
		return *c.at
	}
	offset = min(max(offset, 0), len(c.source)) // the tabs of nested lists are counted as columns
	before := c.source[:offset]
	start := bytes.LastIndexByte(before, '\n') + 1
	return problem.Span{File: c.file, Start: problem.Pos{
		Line:   bytes.Count(before, []byte{'\n'}) + 1,
		Column: utf8.RuneCount(before[start:]) + 1,
	}, Length: 1}
}

func (c *compiler) line(n int) string {
	if c.at != nil || n < 1 {
		return ""
	}
	lines := bytes.SplitN(c.source, []byte{'\n'}, n+1)
	if n > len(lines) {
		return ""
	}
	return strings.TrimRight(string(lines[n-1]), "\r")
}
