package render

import (
	"io/fs"
	"path"
	"strings"
	"testing"

	"github.com/alecthomas/chroma/v2"
	"github.com/alecthomas/chroma/v2/lexers"
	"github.com/google/go-cmp/cmp"

	"doorpocket/content"
)

// The specs of the demonstration fleet are taken apart as the highlighter's own
// lexer does when it has all the time it wants.
func TestTokensAsTheLexer(t *testing.T) {
	err := fs.WalkDir(content.Fleet(), ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || path.Ext(name) != ".toml" {
			return err
		}
		data, err := fs.ReadFile(content.Fleet(), name)
		if err != nil {
			return err
		}
		compareTokens(t, name, string(data))
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{"", "a = 1_000.5\n", "when = 2026-10-02T10:00:00Z", "a = 'x' # y\n[b.c]\n", "open = \"no end\nb = 1", "ü = ?", "t = true\ntrues = false", `a = "q \" \\ \\" # x`, "+5 -5"} {
		compareTokens(t, text, text)
	}
}

func compareTokens(t *testing.T, name, text string) {
	t.Helper()
	got := tokensOf(text)
	var whole strings.Builder
	for _, token := range got {
		whole.WriteString(token.Value)
	}
	if whole.String() != text {
		t.Errorf("%s: the tokens are not the text", name)
	}
	var want []chroma.Token
	for range 20 { // on a busy machine the lexer sometimes gives up on a word
		each, err := chroma.Coalesce(lexers.Get("toml")).Tokenise(&chroma.TokeniseOptions{State: "root"}, text)
		if err != nil {
			t.Fatal(err)
		}
		if want = each.Tokens(); cmp.Equal(want, got) {
			return
		}
	}
	t.Errorf("%s:\n%s", name, cmp.Diff(want, got))
}
