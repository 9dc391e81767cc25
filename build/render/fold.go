package render

import (
	"fmt"
	"html/template"
	"strings"
	"text/template/parse"
)

// inWords gives the page templates with the words of one language in place:
// wherever a template says words that are the same on every page, which it
// mostly does, the text stands instead. It asks for words that there are.
func inWords(pages *template.Template, w *Words) (*template.Template, error) {
	pages, err := pages.Clone()
	if err != nil {
		return nil, fmt.Errorf("page templates: %w", err)
	}
	f := folding{words: w}
	for _, t := range pages.Templates() {
		if t.Tree != nil {
			f.list(t.Tree.Root)
		}
	}
	return pages, f.err
}

// folding replaces calls for words by the words, and remembers the first for
// which there are none.
type folding struct {
	words *Words
	err   error
}

func (f *folding) list(l *parse.ListNode) {
	if l == nil {
		return
	}
	for i, n := range l.Nodes {
		switch n := n.(type) {
		case *parse.ActionNode:
			if text, ok := f.said(n.Pipe); ok {
				l.Nodes[i] = &parse.TextNode{NodeType: parse.NodeText, Pos: n.Pos, Text: []byte(text)}
			}
		case *parse.IfNode:
			f.branch(n.BranchNode)
		case *parse.WithNode:
			f.branch(n.BranchNode)
		case *parse.RangeNode:
			f.branch(n.BranchNode)
		}
	}
}

func (f *folding) branch(b parse.BranchNode) {
	f.list(b.List)
	f.list(b.ElseList)
}

// said are the words, escaped for texts and quoted attributes, that a pipeline
// such as .W.Say "key" or $.W.Say "key" "count" "#" gives, ok where it is one.
func (f *folding) said(pipe *parse.PipeNode) (text string, ok bool) {
	if len(pipe.Decl) > 0 || len(pipe.Cmds) != 1 {
		return "", false
	}
	args := pipe.Cmds[0].Args
	if call := args[0].String(); call != ".W.Say" && call != "$.W.Say" || len(args) < 2 {
		return "", false
	}
	var said []any
	for _, arg := range args[1:] {
		s, fixed := arg.(*parse.StringNode)
		if !fixed {
			return "", false
		}
		said = append(said, s.Text)
	}
	text, err := f.words.Say(said[0].(string), said[1:]...)
	if err != nil && f.err == nil {
		f.err = fmt.Errorf("page templates: %w", err)
	}
	return escaped(text), true
}

// escaped is a text as html/template writes it in texts and quoted attributes.
func escaped(text string) string {
	return strings.ReplaceAll(template.HTMLEscapeString(text), "+", "&#43;")
}
