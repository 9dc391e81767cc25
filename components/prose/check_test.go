package prose_test

import (
	"slices"
	"strings"
	"testing"

	"doorpocket/components/problem"
)

// What a page may not hold is told with line and column, the column counted in
// characters.
func TestPageProblems(t *testing.T) {
	for name, tt := range map[string]struct {
		source string
		want   []string
	}{
		"nothing wrong":                 {"Turn the *tap*.\n\n## Next\n\n- one\n- two\n", nil},
		"tag in a line":                 {"Drück <b>fest\n", []string{"1:7 raw-html"}},
		"comment":                       {"One.\n\nTwo <!-- note --> three.\n", []string{"3:5 raw-html"}},
		"block of HTML":                 {"One.\n\n<div>\nTwo.\n</div>\n", []string{"3:1 raw-html"}},
		"script":                        {"<script>alert(1)</script>\n", []string{"1:1 raw-html"}},
		"tag in a list":                 {"- one\n- für <i>zwei</i>\n", []string{"2:7 raw-html", "2:14 raw-html"}},
		"tag in a cell":                 {"| a | b |\n|---|---|\n| ü | <i> |\n", []string{"3:7 raw-html"}},
		"escaped sign":                  {"Below 5 \\< 6 and 7 < 8.\n", nil},
		"first-level heading":           {"Text.\n\n# Title\n", []string{"3:1 first-level-heading"}},
		"bare address":                  {"See <https://site.example>.\n", []string{"1:5 bare-address"}},
		"indented code":                 {"Text.\n\n    code\n", []string{"3:5 code-block"}},
		"fenced code":                   {"```\ncode\n```\n", []string{"1:1 code-block"}},
		"script address":                {"[a](javascript:alert(1))\n", []string{"1:1 bad-address"}},
		"script address by reference":   {"ü [a][r]\n\n[r]: javascript:x\n", []string{"1:3 bad-address"}},
		"plain web address":             {"[a](http://site.example)\n", []string{"1:1 bad-address"}},
		"path":                          {"[a](../RW/G1/)\n", []string{"1:1 bad-address"}},
		"address without target":        {"[a](system:)\n", []string{"1:1 empty-address"}},
		"addresses that are allowed":    {"[a](https://a.example) [b](tel:112) [c](mailto:a@b.example) [d](sms:112) [e](system:gas/x) [f](fitted:x) [g](routine:x) [h](symptom:x) [i](page:x)\n", nil},
		"image from elsewhere":          {"![a](https://a.example/x.jpg)\n", []string{"1:1 bad-image"}},
		"image without target":          {"![a](table:)\n", []string{"1:1 bad-image"}},
		"image of data":                 {"![a](data:image/png;base64,AAAA)\n", []string{"1:1 bad-image"}},
		"image in a sentence":           {"Ä ![a](table:x) b\n", []string{"1:3 image-in-text"}},
		"image in a link":               {"[![a](table:x)](system:b)\n", []string{"1:2 image-in-text"}},
		"two images together":           {"![a](table:x) ![b](table:y)\n", []string{"1:1 image-in-text", "1:15 image-in-text"}},
		"image of its own":              {"![a](table:x)\n\n![b](figure:y)\n\n![c](picture:z)\n", nil},
		"placeholder, capital":          {"Up to {$Net} now\n", []string{"1:7 bad-placeholder"}},
		"placeholder, open":             {"Öl: {$net\n", []string{"1:5 bad-placeholder"}},
		"placeholder, empty":            {"{$}\n", []string{"1:1 bad-placeholder"}},
		"placeholder, spaced":           {"{ $net }\n", []string{"1:1 bad-placeholder"}},
		"placeholder, other function":   {"{$net :number}\n", []string{"1:1 bad-placeholder"}},
		"placeholder, no unit":          {"{$net :unit}\n", []string{"1:1 bad-placeholder"}},
		"placeholder, two units":        {"{$net :unit unit=kg unit=lb}\n", []string{"1:1 bad-placeholder"}},
		"placeholder over two lines":    {"{$net\n:unit unit=kg}\n", []string{"1:1 bad-placeholder"}},
		"placeholders that are right":   {"{$net} {$net :unit unit=lb} {$body.height } {$a_b2}\n", nil},
		"placeholder in backticks":      {"Type `{$net}` now\n", []string{"1:7 misplaced-placeholder"}},
		"placeholder in an address":     {"[a](https://a.example/{$net})\n", []string{"1:1 misplaced-placeholder"}},
		"placeholder in an image":       {"![For {$net}](table:x)\n", []string{"1:7 misplaced-placeholder"}},
		"braces that mean nothing":      {"{net} and { and }\n", nil},
		"unknown attribute":             {"## A {#here}\n", []string{"1:1 unknown-attribute"}},
		"condition without quotes":      {"## A {when=net > 1}\n", []string{"1:6 misplaced-condition"}},
		"condition on a paragraph":      {"Übrigens {when=\"net\"}\n", []string{"1:10 misplaced-condition"}},
		"condition on a third level":    {"## A\n\n### B {when=\"net\"}\n", []string{"3:1 misplaced-condition"}},
		"condition within a quotation":  {"> ## B {when=\"net\"}\n", []string{"1:3 misplaced-condition"}},
		"condition on a first level":    {"# B {when=\"net\"}\n", []string{"1:1 first-level-heading", "1:1 misplaced-condition"}},
		"condition that is right":       {"## B {when=\"net > 2 kg\"}\n", nil},
		"lines that end as on Windows":  {"One.\r\n\r\nÜber <b>\r\n", []string{"3:6 raw-html"}},
		"everything on the same line":   {"<b> [a](x:y) {$N}\n", []string{"1:1 raw-html", "1:5 bad-address", "1:14 bad-placeholder"}},
		"a character of several bytes":  {"🚐🚐 [a](x:y)\n", []string{"1:4 bad-address"}},
		"tag in an image's words":       {"![a <b>](table:x)\n", []string{"1:5 raw-html"}},
		"address with control signs":    {"[a](https:\x01//a.example)\n", []string{"1:1 bad-address"}},
		"address with a hidden scheme":  {"[a](//a.example/x)\n", []string{"1:1 bad-address"}},
		"address with another protocol": {"[a](file:///etc/x) [b](blob:x) [c](about:blank)\n", []string{"1:1 bad-address", "1:20 bad-address", "1:32 bad-address"}},
	} {
		t.Run(name, func(t *testing.T) {
			_, found := parser.Page("page.md", []byte(tt.source))
			if got := told(found); !slices.Equal(got, tt.want) {
				t.Errorf("%q: got %q, want %q", tt.source, got, tt.want)
			}
			for _, p := range found {
				line := strings.TrimRight(strings.Split(tt.source, "\n")[p.Start.Line-1], "\r")
				if p.File != "page.md" || p.SourceLine != line || p.Severity != problem.Error || p.Detail == "" {
					t.Errorf("%+v: does not show the line %q of the page", p, line)
				}
			}
		})
	}
}

// A line is one paragraph of words; its problems point at where it stands in
// its own file.
func TestLineProblems(t *testing.T) {
	at := problem.Span{File: "lines.en.toml", Start: problem.Pos{Line: 7, Column: 9}, Length: 20}
	for source, want := range map[string]string{
		"Turn *it* to {$net}, then [look](system:gas/x).": "",
		"Turn it.\nThen wait.":                            "",
		"":                                                "not-one-line",
		"One.\n\nTwo.":                                    "not-one-line",
		"- One":                                           "not-one-line",
		"1. One":                                          "not-one-line",
		"## One":                                          "not-one-line",
		"> One":                                           "not-one-line",
		"| a |\n|---|\n| b |":                             "not-one-line",
		"Press <b>hard</b>":                               "raw-html",
		"Press [it](javascript:x)":                        "bad-address",
		"Press {$N}":                                      "bad-placeholder",
		"![A](table:x)":                                   "image-in-text",
		"    code":                                        "code-block",
	} {
		_, found := parser.Line(source, at)
		switch {
		case want == "" && len(found) > 0:
			t.Errorf("%q: %v", source, found)
		case want == "":
		case len(found) == 0 || found[0].Code != want:
			t.Errorf("%q: got %v, want %s", source, found, want)
		case found[0].Span != at:
			t.Errorf("%q: points at %v+%d", source, found[0].Span, found[0].Length)
		}
	}
}

func TestProblemsAreNotEndless(t *testing.T) {
	_, found := parser.Page("page.md", []byte(strings.Repeat("{$", 30_000)))
	if n := len(found); n < 10 || n > 100 {
		t.Errorf("%d problems", n)
	}
}
