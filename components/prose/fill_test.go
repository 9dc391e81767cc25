package prose_test

import (
	"strings"
	"testing"

	"doorpocket/components/problem"
)

// full is the van of the tests: it has nothing else.
var full = van{
	values: map[string]string{"net": "6 kg", "net lb": "13.2 lb", "body.height": "2.79 m", "odd": `<b>&"'`, "hard": "6\u00a0kg"},
	links:  map[string]string{"system:gas/taps": "../G2/index.html", "page:odd": `x"><b>`},
	embeds: map[string]string{"table:gas/duration": "<figure>ALT</figure>"},
}

func TestHTML(t *testing.T) {
	for name, tt := range map[string]struct{ source, want string }{
		"paragraph":                        {"Turn *it* **off** `now`.", "<p>Turn <em>it</em> <strong>off</strong> <code>now</code>.</p>"},
		"value":                            {"It holds {$net}.", "<p>It holds 6 kg.</p>"},
		"value in another unit":            {"It holds {$net :unit unit=lb}.", "<p>It holds 13.2 lb.</p>"},
		"value of the body":                {"{$body.height} high", "<p>2.79 m high</p>"},
		"value escaped":                    {"{$odd}", "<p>&lt;b&gt;&amp;&#34;&#39;</p>"},
		"value in emphasis and links":      {"*{$net}* [{$net}](system:gas/taps)", `<p><em>6 kg</em> <a href="../G2/index.html">6 kg</a></p>`},
		"text escaped":                     {`5 \< 6 & "7"`, "<p>5 &lt; 6 &amp; &quot;7&quot;</p>"},
		"paragraph left out":               {"One.\n\nTwo {$no}.\n\nThree.", "<p>One.</p><p>Three.</p>"},
		"paragraph with both left out":     {"{$net} of {$no}.", ""},
		"item left out":                    {"- one\n- {$no}\n- three", "<ul><li>one</li><li>three</li></ul>"},
		"loose item left out whole":        {"- one\n\n  {$no}\n\n- two\n", "<ul><li><p>two</p></li></ul>"},
		"list left out":                    {"Before.\n\n1. {$no}\n2. {$no}\n", "<p>Before.</p>"},
		"nested item left out":             {"- one\n  - {$no}\n  - two", "<ul><li>one<ul><li>two</li></ul></li></ul>"},
		"nested list left out":             {"- one\n  - {$no}\n- two", "<ul><li>one</li><li>two</li></ul>"},
		"outer item takes the inner":       {"- {$no}\n  - one\n- two", "<ul><li>two</li></ul>"},
		"item with nothing but a list":     {"- - {$no}\n- two", "<ul><li>two</li></ul>"},
		"lists within lists all left out":  {"- - - {$no}\n", ""},
		"row left out":                     {"| a | b |\n|---|---|\n| 1 | {$no} |\n| 2 | {$net} |\n", `<div class="scroll" tabindex="0"><table><thead><tr><th>a</th><th>b</th></tr></thead><tbody><tr><td>2</td><td>6 kg</td></tr></tbody></table></div>`},
		"table left out with its rows":     {"| a |\n|---|\n| {$no} |\n", ""},
		"table left out with its head":     {"| {$no} |\n|---|\n| a |\n", ""},
		"table without rows":               {"| a |\n|---|\n", `<div class="scroll" tabindex="0"><table><thead><tr><th>a</th></tr></thead></table></div>`},
		"aligned":                          {"| a |\n|--:|\n| 1 |\n", `<div class="scroll" tabindex="0"><table><thead><tr><th align="right">a</th></tr></thead><tbody><tr><td align="right">1</td></tr></tbody></table></div>`},
		"heading left out":                 {"### For {$no}\n\nText.", "<p>Text.</p>"},
		"heading that stands":              {"### For {$net}\n\nText.", "<h3>For 6 kg</h3><p>Text.</p>"},
		"quotation left out":               {"> {$no}\n\nText.", "<p>Text.</p>"},
		"quotation left out in part":       {"> {$no}\n>\n> Text.", "<blockquote><p>Text.</p></blockquote>"},
		"link":                             {"See [the *taps*](system:gas/taps).", `<p>See <a href="../G2/index.html">the <em>taps</em></a>.</p>`},
		"link to what is absent":           {"See [the *hob*](system:kitchen/hob).", "<p>See the <em>hob</em>.</p>"},
		"link escaped":                     {"[a](page:odd)", `<p><a href="x&#34;&gt;&lt;b&gt;">a</a></p>`},
		"link by reference":                {"[a][taps]\n\n[taps]: system:gas/taps", `<p><a href="../G2/index.html">a</a></p>`},
		"link to the open":                 {"[a](https://a.example/?b=1&c=\"2\")", `<p><a href="https://a.example/?b=1&amp;c=%222%22" rel="noreferrer">a</a></p>`},
		"telephone":                        {"[a](tel:+441632960123)", `<p><a href="tel:+441632960123" rel="noreferrer">a</a></p>`},
		"embed alone":                      {"One.\n\n![How long](table:gas/duration)\n\nTwo.", "<p>One.</p><figure>How long</figure><p>Two.</p>"},
		"embed over two lines":             {"![How\nlong](table:gas/duration)", "<figure>How long</figure>"},
		"words of an embed":                {`![A \* & caf&eacute; *b*](table:gas/duration)`, "<figure>A * & café b</figure>"},
		"embed that is absent":             {"One.\n\n![x](figure:locator)\n\nTwo.", "<p>One.</p><p>Two.</p>"},
		"embed in an item":                 {"- one\n\n  ![x](table:gas/duration)\n", "<ul><li><p>one</p><figure>x</figure></li></ul>"},
		"item of an absent embed":          {"- one\n\n  ![x](figure:locator)\n\n- two\n", "<ul><li><p>two</p></li></ul>"},
		"embed holds an item with no list": {"- ![x](table:gas/duration)\n\n  - {$no}\n", "<ul><li><figure>x</figure></li></ul>"},
		"numbers go on":                    {"1. one\n\n![x](table:gas/duration)\n\n2. two\n", `<ol><li>one</li></ol><figure>x</figure><ol start="2"><li>two</li></ol>`},
		"rule":                             {"a\n\n---\n\nb", "<p>a</p><hr><p>b</p>"},
		"line break":                       {"a\\\nb", "<p>a<br>b</p>"},
		"NUL":                              {"`a\x00value\x00b` \x00", "<p><code>a\uFFFDvalue\uFFFDb</code> \uFFFD</p>"},
	} {
		t.Run(name, func(t *testing.T) {
			got := page(t, tt.source).Intro.HTML(full)
			if got = strings.ReplaceAll(got, "\n", ""); got != tt.want {
				t.Errorf("%q:\n got %s\nwant %s", tt.source, got, tt.want)
			}
		})
	}
}

// What is refused can do no harm either: a page that is shown in spite of its
// problems, as in a preview, runs nothing.
func TestRefusedIsNeutral(t *testing.T) {
	for source, want := range map[string]string{
		"<script>alert(1)</script>":               "",
		"a <img src=x onerror=alert(1)> b":        "<p>a  b</p>",
		"[a](javascript:alert(1))":                "<p>a</p>",
		"[a](JavaScript:alert(1))":                "<p>a</p>",
		"[a](&#106;avascript:alert(1))":           "<p>a</p>",
		"[a](&#x6A;avascript:alert(1))":           "<p>a</p>",
		"[a](javascript&colon;alert(1))":          "<p>a</p>",
		"[a](java&Tab;script:alert(1))":           "<p>a</p>",
		"[a](java&NewLine;script:alert(1))":       "<p>a</p>",
		"[a](< javascript:alert(1)>)":             "<p>a</p>",
		"[a](<\tjavascript:alert(1)>)":            "<p>a</p>",
		"[a](\x01javascript:alert(1))":            "<p>a</p>",
		"[a](<\x01javascript:alert(1)>)":          "<p>a</p>",
		"[a](java\\script:alert(1))":              "<p>a</p>",
		"[a](data:text/html,x)":                   "<p>a</p>",
		"[a](vbscript:x)":                         "<p>a</p>",
		"<javascript:alert(1)>":                   "<p></p>",
		"![a](javascript:alert(1))":               "",
		"[a][r]\n\n[r]: &#106;avascript:alert(1)": "<p>a</p>",
	} {
		p, found := parser.Page("page.md", []byte(source))
		if len(found) == 0 {
			t.Errorf("%q is not refused", source)
		}
		if got := strings.ReplaceAll(p.Intro.HTML(full), "\n", ""); got != want {
			t.Errorf("%q: got %q, want %q", source, got, want)
		}
	}
}

func TestText(t *testing.T) {
	for source, want := range map[string]string{
		"Turn *it* **off** `a < b`, {$odd}.":                  `Turn it off a < b, <b>&"'.`,
		"One.\n\nTwo {$no}.\n\n- three\n- four":               "One. three four",
		"See [the taps](system:gas/taps) or [hob](fitted:x).": "See the taps or hob.",
		"One\ntwo\\\nthree &amp; {$hard}":                     "One two three & 6 kg",
		"![Words](table:gas/duration)":                        "",
		"| a | b |\n|---|---|\n| 1 | 2 |":                     "a b 1 2",
	} {
		if got := page(t, source).Intro.Text(full); got != want {
			t.Errorf("%q: got %q, want %q", source, got, want)
		}
	}
}

func TestLineHasNoParagraph(t *testing.T) {
	line, found := parser.Line("Turn *{$net}*\nto [it](system:gas/taps).", problem.Span{})
	if len(found) > 0 {
		t.Fatal(found)
	}
	if got, want := line.HTML(full), "Turn <em>6 kg</em>\nto <a href=\"../G2/index.html\">it</a>."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// One Parser and one Doc serve all vans at once.
func TestSharedByVans(t *testing.T) {
	doc := page(t, "- {$net} [a](system:gas/taps)\n- b\n").Intro
	for range 8 {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			for range 50 {
				if got := doc.HTML(full); !strings.Contains(got, "6 kg") {
					t.Error(got)
				}
				if got := doc.HTML(van{}); strings.Contains(got, "href") || !strings.Contains(got, "<li>b</li>") {
					t.Error(got)
				}
				page(t, "Text {$net}.")
			}
		})
	}
}
