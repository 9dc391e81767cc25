package manifest

import (
	"flag"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"doorpocket/components/problem"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the messages that the tests give into testdata")

// TestMessages checks every word of the messages for broken files. The file
// holds each text as a Go string, and below it what must be said: place and
// length, code, summary, detail, notes. To add a text, write it there and run
// the test with -update, then read what changed.
func TestMessages(t *testing.T) {
	const name = "testdata/messages.txt"
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for line := range strings.Lines(string(data)) {
		switch {
		case strings.HasPrefix(line, `"`):
			b.WriteString(line + messages(t, strings.TrimSpace(line)))
		case !strings.HasPrefix(line, "\t"):
			b.WriteString(line)
		}
	}
	if *update {
		if err := os.WriteFile(name, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if diff := cmp.Diff(string(data), b.String()); diff != "" {
		t.Error(diff)
	}
}

// messages returns what is said about a quoted text.
func messages(t *testing.T, quoted string) string {
	t.Helper()
	text, err := strconv.Unquote(quoted)
	if err != nil {
		t.Fatalf("%s: %v", quoted, err)
	}
	table, found := Parse("file.toml", []byte(text))
	var b strings.Builder
	for _, p := range found {
		b.WriteString("\t" + brief(p) + "\n")
	}
	if table == nil {
		b.WriteString("\t(no table)\n")
	}
	return b.String()
}

// brief writes a problem on one line: place and length, code, words and notes.
func brief(p problem.Problem) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%d:%d+%d %s: %s. %s", p.Start.Line, p.Start.Column, p.Length, p.Code, p.Summary, p.Detail)
	for _, n := range p.Notes {
		fmt.Fprintf(&b, " (%s: %d:%d)", n.Text, n.Start.Line, n.Start.Column)
	}
	return b.String()
}
