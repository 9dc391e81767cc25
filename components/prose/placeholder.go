package prose

import (
	"regexp"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

var kindPlaceholder = ast.NewNodeKind("Placeholder")

// placeholder is {$name} or {$name :unit unit=psi} in the tree.
type placeholder struct {
	ast.BaseInline
	name, unit string
	broken     bool // began like a placeholder but is none
	offset     int
}

func (p *placeholder) Kind() ast.NodeKind { return kindPlaceholder }

func (p *placeholder) Dump(source []byte, level int) {
	ast.DumpHelper(p, source, level, map[string]string{"name": p.name, "unit": p.unit}, nil)
}

// The placeholder form of Unicode MessageFormat 2, of which we take the
// variable and the :unit function.
var placeholderForm = regexp.MustCompile(`^\{\$([a-z][a-z0-9_.]*)(?:\s+:unit\s+unit=([^\s{}]+))?\s*\}`)

// What begins like this is a placeholder or a mistake; { $name } is one.
var placeholderStart = regexp.MustCompile(`^\{\s*\$`)

type placeholderParser struct{}

func (placeholderParser) Trigger() []byte { return []byte{'{'} }

func (placeholderParser) Parse(_ ast.Node, block text.Reader, _ parser.Context) ast.Node {
	line, segment := block.PeekLine()
	start := placeholderStart.Find(line)
	if start == nil {
		return nil
	}
	m := placeholderForm.FindSubmatch(line)
	if m == nil {
		block.Advance(len(start))
		return &placeholder{broken: true, offset: segment.Start}
	}
	block.Advance(len(m[0]))
	return &placeholder{name: string(m[1]), unit: string(m[2]), offset: segment.Start}
}
