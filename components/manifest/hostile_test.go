package manifest

import (
	"fmt"
	"io"
	"strings"
	"testing"

	"doorpocket/components/problem"
)

// fill repeats a text up to the largest size that is read.
func fill(text string) string { return strings.Repeat(text, maxBytes/len(text)) }

// numbered repeats a text with a number in it.
func numbered(format string) string {
	var b strings.Builder
	for i := 0; b.Len() < maxBytes-len(format)-8; i++ {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}

// hostile are large files, each made to be slow in a way of its own.
var hostile = map[string]string{
	"list of numbers":      "a = [" + fill("1,")[:maxBytes-6] + "]",
	"list of empty tables": "a = [" + fill("{},")[:maxBytes-8] + "]",
	"list of words":        "a = [" + fill("b,")[:maxBytes-6] + "]",
	"keys on one line":     "a = {" + numbered("k%d=1,")[:maxBytes-7] + "}",
	"tables on one line":   "a = [" + strings.Repeat("{b=x},", 19000) + "]",
	"wrong words":          numbered("k%d = word\n"),
	"equal keys":           fill("a=1\n"),
	"equal headers":        fill("[a]\n"),
	"equal inline keys":    "a = {" + fill("b=1,")[:maxBytes-8] + "}",
	"list headers":         fill("[[a]]\n"),
	"keys":                 numbered("k%d=1\n"),
	"long header path":     "[" + strings.Repeat("abcdefghijklmnopqrstuvwxyzabcde.", 30) + "x]\n" + numbered("k%d=1\n")[:maxBytes-1000],
	"long key":             fill("k") + "=1",
	"open lists":           "a = " + fill("["),
	"open braces":          fill("a={"),
	"dotted key":           fill("a.")[:maxBytes-4] + "a=1",
	"open texts":           fill("a = \"\n"),
	"quotes":               "a = " + fill(`"`)[:maxBytes-4],
	"backslashes":          "a = \"\"\"" + fill(`\ `)[:maxBytes-10] + "\"\"\"",
	"backslash keys":       numbered("\"\\u0061%d\"=1\n"),
	"colons":               fill("a: 1\n"),
	"no equals":            fill("word\n"),
	"commas":               "a = [" + fill(",")[:maxBytes-6] + "]",
	"not numbers":          "a = [" + fill("nan,")[:maxBytes-8] + "]",
	"not UTF-8":            fill("\xff"),
	"marks":                fill("\xef\xbb\xbf"),
	"case":                 numbered("k%[1]d=1\nK%[1]d=1\n")[:19999*10],
	"comments":             fill("# word\n"),
	"blank":                fill(" "),
	"one long text":        "a = \"" + fill("é")[:maxBytes-6] + "\"",
}

// TestHostile reads each of them to the end. Whatever takes time or memory that
// grows with the square of the size runs into the limit of the whole suite.
func TestHostile(t *testing.T) {
	for name, text := range hostile {
		t.Run(name, func(t *testing.T) {
			table, found := Parse("file.toml", []byte(text))
			r := NewReader(table, &found)
			readEvery(r, 5)
			r.Done()
			found.Sort()
			if err := problem.Write(io.Discard, found, problem.Style{}); err != nil {
				t.Error(err)
			}
			t.Logf("%d problems", len(found))
		})
	}
}
