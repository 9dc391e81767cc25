package publication_test

import (
	"flag"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/net/html"
)

var update = flag.Bool("update", false, "rewrite the golden pages")

// The whole guide of one van as a reader meets it, page by page, without
// markup: to be read by eye when it changes.
func TestGoldenGuide(t *testing.T) {
	golden(t, "rowan.txt", func(name string) (string, bool) {
		return strings.TrimPrefix(name, "hirers/"), strings.HasPrefix(name, "hirers/RW/")
	})
}

// The sheets of one van, likewise.
func TestGoldenSheets(t *testing.T) {
	golden(t, "rowan-sheets.txt", func(name string) (string, bool) {
		return strings.TrimPrefix(name, "staff/"), strings.HasPrefix(name, "staff/RW/sheets/")
	})
}

// golden compares the pages that are wanted with a file, each under the name
// that it has there.
func golden(t *testing.T, file string, wanted func(name string) (string, bool)) {
	t.Helper()
	file = "../../testdata/golden/" + file
	tree := files(t, demoSite(t))
	var b strings.Builder
	for _, name := range slices.Sorted(maps.Keys(tree)) {
		if as, ok := wanted(name); ok && strings.HasSuffix(name, ".html") {
			b.WriteString("=== " + as + "\n" + readingText(t, tree[name]) + "\n")
		}
	}
	if *update {
		if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(b.String(), "\n")); diff != "" {
		t.Errorf("these pages changed; look at them, then run with -update:\n%s", diff)
	}
}

// blocks begin a line of their own.
var blocks = map[string]string{"h1": "# ", "h2": "## ", "h3": "### ", "p": "", "li": "- ", "tr": "| ", "caption": "Table: ", "dt": "", "summary": "+ "}

// readingText is the text of a page, a line a block.
func readingText(t *testing.T, page string) string {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	var walk func(*html.Node)
	walk = func(n *html.Node) {
		switch {
		case n.Type == html.TextNode:
			b.WriteString(n.Data)
		case n.Data == "style" || n.Data == "script" || n.Data == "svg" || n.Data == "nav":
			return
		case n.Data == "td" || n.Data == "th":
			b.WriteString(" | ")
		}
		if prefix, ok := blocks[n.Data]; ok && n.Type == html.ElementNode {
			b.WriteString("\n" + prefix)
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c)
		}
	}
	walk(root)
	var lines []string
	for line := range strings.Lines(b.String()) {
		line = strings.ReplaceAll(line, "| |", "|")
		if line = strings.Join(strings.Fields(line), " "); line != "" && line != "-" {
			lines = append(lines, line)
		}
	}
	return strings.Join(lines, "\n") + "\n"
}
