package render

import (
	"regexp"
	"strings"

	"github.com/alecthomas/chroma/v2"
)

// tomlToken matches one token of TOML at the start of a text; of the
// alternatives the first that matches counts. The lexer that comes with the
// highlighter has the same rules but gives up on one when the machine is too busy
// to come back to it in time, so that the same spec would not always give the
// same page; these always end.
var tomlToken = regexp.MustCompile(`\A(?:(\s+)|(#.*)|((?:false|true)\b)|(\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:Z|[+-]\d{2}:\d{2}))|` +
	`([+-]?[0-9](?:_?\d)*\.\d+)|([+-]?[0-9](?:_?\d)*)|("(?:\\\\|\\"|[^"])*")|('(?:\\\\|\\'|[^'])*')|([.,=\[\]{}])|([A-Za-z0-9_-]+))`)

// tomlTypes are the types of the alternatives of tomlToken.
var tomlTypes = []chroma.TokenType{
	chroma.Text, chroma.Comment, chroma.KeywordConstant, chroma.LiteralDate,
	chroma.LiteralNumberFloat, chroma.LiteralNumberInteger, chroma.LiteralStringDouble, chroma.LiteralStringSingle, chroma.Punctuation, chroma.NameOther,
}

// tokensOf takes a spec apart for colouring.
func tokensOf(source string) []chroma.Token {
	var tokens []chroma.Token
	add := func(kind chroma.TokenType, text string) {
		if last := len(tokens) - 1; last >= 0 && tokens[last].Type == kind {
			tokens[last].Value += text
			return
		}
		tokens = append(tokens, chroma.Token{Type: kind, Value: text})
	}
	for source != "" {
		kind, end := nextToken(source)
		add(kind, source[:end])
		source = source[end:]
	}
	return tokens
}

// nextToken is the type and length of the first token. It looks no further than
// the line, where that is enough: the longer the text, the longer the search.
func nextToken(source string) (chroma.TokenType, int) {
	line := source
	if i := strings.IndexByte(source, '\n'); i >= 0 {
		line = source[:i+1]
	}
	m := tomlToken.FindStringSubmatchIndex(line)
	if m == nil && (source[0] == '"' || source[0] == '\'') { // a text of several lines
		m = tomlToken.FindStringSubmatchIndex(source)
	}
	if m == nil {
		return chroma.Error, 1
	}
	for i, kind := range tomlTypes {
		if m[2*i+2] >= 0 {
			return kind, m[1]
		}
	}
	return chroma.Error, 1
}
