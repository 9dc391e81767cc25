package prose_test

import (
	"fmt"
	"strings"
	"testing"

	"doorpocket/components/problem"
	"doorpocket/components/prose"
)

var parser = prose.New()

// van is a van that has what its maps hold. Links and embeds are named
// "scheme:target", values "name" or "name unit".
type van struct {
	values, links, embeds map[string]string
}

func (v van) Value(name, unit string) (string, bool) {
	text, ok := v.values[strings.TrimSpace(name+" "+unit)]
	return text, ok
}

func (v van) Link(scheme, target string) (string, bool) {
	href, ok := v.links[scheme+":"+target]
	return href, ok
}

func (v van) Embed(scheme, target, alt string) (string, bool) {
	markup, ok := v.embeds[scheme+":"+target]
	return strings.ReplaceAll(markup, "ALT", alt), ok
}

// page compiles a page that must be free of problems.
func page(t *testing.T, source string) *prose.Page {
	t.Helper()
	p, found := parser.Page("page.md", []byte(source))
	for _, f := range found {
		t.Errorf("%s: %s", f.Span, f.Summary)
	}
	return p
}

// told lists problems as "line:column+length code".
func told(found problem.List) []string {
	var all []string
	for _, p := range found {
		all = append(all, fmt.Sprintf("%d:%d %s", p.Start.Line, p.Start.Column, p.Code))
	}
	return all
}
