package prose_test

import (
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"golang.org/x/net/html"

	"doorpocket/components/problem"
	"doorpocket/components/prose"
)

var seeds = []string{
	"", "Text {$net} and {$no}.\n", "# A\n\n## B {when=\"net > 2\"}\n\n- a\n  - {$no}\n1. b\n",
	"| a | b |\n|:--|--:|\n| {$net} | [x](system:gas/taps) |\n", "> - {$no}\n>\n> ![a](table:gas/duration)\n",
	"[a](&#106;avascript:alert(1)) [b](JAVASCRIPT:x) <javascript:x> ![c](data:x)\n", "<script>x</script>\n\n<b onclick=x>\n",
	"`\x00value\x00`\x01 \x00close\x00", "{$a :unit unit=\x00\x01x}", "[a](system:\x00close\x00)", "[a][r]\n\n[r]: javascript:x 'y'\n",
	"- - - {$no}\n\n    code\n\n```x y\ncode\n", "a\\\nb  \nc *d **e*** ~~f~~ &amp; &#0; &#x22; \\<\n", "{$a {$b} {$c :unit unit=}", "\xff\xfe ü\r\n\r\n## \xff\r",
	"![a [b](system:c) {$net}](table:gas/duration)", "***\n\n| {$no} |\n|-|\n| a |", "1) a\n\n\n   ### {$no}\n\n7) [x](tel:1)",
}

// FuzzPage proves that no page stops the compiler, and that none makes markup
// that could do harm, on a van that has everything and on one that has nothing.
func FuzzPage(f *testing.F) {
	for _, s := range seeds {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		p, found := parser.Page("page.md", source)
		checkPlaces(t, source, found)
		ids := map[string]bool{}
		for _, s := range p.Sections {
			if ids[s.ID] || s.ID == "" || strings.ContainsAny(s.ID, " \"<>&") {
				t.Errorf("section id %q", s.ID)
			}
			ids[s.ID] = true
		}
		for _, d := range p.Docs() {
			checkDoc(t, d)
		}
	})
}

// FuzzLine proves the same of single lines.
func FuzzLine(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	at := problem.Span{File: "lines.toml", Start: problem.Pos{Line: 3, Column: 4}, Length: 5}
	f.Fuzz(func(t *testing.T, line string) {
		doc, found := parser.Line(line, at)
		for _, p := range found {
			if p.Span != at {
				t.Errorf("%v is not where the line stands", p)
			}
		}
		checkDoc(t, doc)
	})
}

// checkPlaces looks whether every problem points into the page.
func checkPlaces(t *testing.T, source []byte, found problem.List) {
	t.Helper()
	lines := strings.Split(string(source), "\n")
	for _, p := range found {
		if n := p.Start.Line; n < 1 || n > len(lines) || p.Start.Column < 1 || p.Start.Column > utf8.RuneCountInString(lines[n-1])+1 {
			t.Errorf("%v is not in the page", p)
		}
	}
}

func checkDoc(t *testing.T, d prose.Doc) {
	t.Helper()
	checkMarks(t, d)
	for _, v := range []van{full, {}, everything(d)} {
		checkMarkup(t, d.HTML(v))
		d.Text(v)
	}
}

// everything has all that a text asks for.
func everything(d prose.Doc) van {
	v := van{values: map[string]string{}, links: map[string]string{}, embeds: map[string]string{}}
	for _, p := range d.Pieces {
		switch p.Kind {
		case prose.Value:
			v.values[strings.TrimSpace(p.Name+" "+p.Unit)] = "<script>"
		case prose.LinkOpen:
			v.links[p.Scheme+":"+p.Name] = "\"><script>"
		case prose.Embed:
			v.embeds[p.Scheme+":"+p.Name] = "<figure></figure>"
		}
	}
	return v
}

// checkMarks looks whether blocks and links close in the order in which they
// opened, and whether every piece is what its kind says.
func checkMarks(t *testing.T, d prose.Doc) {
	t.Helper()
	var open []prose.Kind
	for _, p := range d.Pieces {
		switch p.Kind {
		case prose.Open, prose.LinkOpen:
			open = append(open, p.Kind)
		case prose.Close, prose.LinkClose:
			opener := map[prose.Kind]prose.Kind{prose.Close: prose.Open, prose.LinkClose: prose.LinkOpen}[p.Kind]
			if len(open) == 0 || open[len(open)-1] != opener {
				t.Fatalf("unbalanced marks in %v", d.Pieces)
			}
			open = open[:len(open)-1]
		case prose.Value:
			if p.Name == "" {
				t.Error("a value without a name")
			}
		}
		if strings.Contains(p.HTML, "\x00") {
			t.Errorf("a mark is left in %q", p.HTML)
		}
	}
	if len(open) > 0 {
		t.Fatalf("%d marks are left open in %v", len(open), d.Pieces)
	}
}

// void are the elements that no tag closes.
var void = []string{"br", "hr", "img"}

// checkMarkup looks whether tags are balanced and nothing in them can run.
func checkMarkup(t *testing.T, markup string) {
	t.Helper()
	if strings.Contains(strings.ToLower(markup), "<script") {
		t.Fatalf("a script in %q", markup)
	}
	var open []string
	for z := html.NewTokenizer(strings.NewReader(markup)); z.Next() != html.ErrorToken; {
		token := z.Token()
		checkAttributes(t, token, markup)
		switch {
		case token.Type == html.StartTagToken && !slices.Contains(void, token.Data):
			open = append(open, token.Data)
		case token.Type == html.EndTagToken:
			if len(open) == 0 || open[len(open)-1] != token.Data {
				t.Fatalf("</%s> closes nothing in %q", token.Data, markup)
			}
			open = open[:len(open)-1]
		case token.Type == html.CommentToken, token.Type == html.DoctypeToken:
			t.Fatalf("%v in %q", token, markup)
		}
	}
	if len(open) > 0 {
		t.Fatalf("%v left open in %q", open, markup)
	}
}

var allowed = []string{"href", "rel", "class", "tabindex", "align", "start"}

func checkAttributes(t *testing.T, token html.Token, markup string) {
	t.Helper()
	for _, a := range token.Attr {
		if !slices.Contains(allowed, a.Key) {
			t.Fatalf("attribute %s in %q", a.Key, markup)
		}
		if a.Key != "href" {
			continue
		}
		// Browsers pass over white space and control signs in a scheme.
		seen := strings.ToLower(strings.Map(func(r rune) rune {
			if unicode.IsSpace(r) || unicode.IsControl(r) {
				return -1
			}
			return r
		}, a.Val))
		for _, scheme := range []string{"javascript:", "data:", "vbscript:", "file:"} {
			if strings.HasPrefix(seen, scheme) {
				t.Fatalf("href=%q in %q", a.Val, markup)
			}
		}
	}
}
