package sample_test

import (
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
)

// mutants changes texts at random, always in the same way for the same number.
type mutants struct {
	tokens []string // of all real specs
	values []string // of all real specs, and some that nobody should write
}

var (
	tokenForm = regexp.MustCompile(`"""|'''|"[^"\n]*"|'[^'\n]*'|[A-Za-z0-9_.+-]+|[ \t]+|#[^\n]*|\n|.`)
	valueForm = regexp.MustCompile(`(?m)(^|[{,] ?)([A-Za-z0-9_.-]+)( *= *)("[^"\n]*"|\[[^\]\n]*\]|\{[^}\n]*\}|[^\s,}#]+)`)
)

// hostile are values that read well as TOML or nearly, and mean nothing good.
var hostile = []string{
	`""`, `" "`, `"0"`, `"-0 m"`, `"-1 m"`, `"1e308 m"`, `"1e309 kg"`, `"NaN m"`, `"Inf kg"`, `"0.0000000001 mm"`, `"999999999999999999 km"`, `"1.2.3 m"`,
	`"1,234.5 kg"`, `"½ l"`, `"٣ m"`, `"5 furlong"`, `"m"`, `"5 m m"`, `"\u0000"`, `"\u202e"`, `"\U0010ffff"`, `"{$van.name}"`, `"{$van.name"`, `"<b>"`, `"../../x"`,
	`"CON"`, `"a/b"`, `"https://x.example"`, "0", "-1", "9223372036854775807", "-9223372036854775808", "9223372036854775808", "1e400", "nan", "inf", "0x1F", "1.5",
	"true", "false", "[]", "[[]]", "{}", `[""]`, `["a", "a"]`, "[1, true]", `{ side = "roof" }`, `{ along = "1e9 m" }`, "0000-01-01", "0001-01-01", "9999-12-31", "2026-02-30", "10:00:00",
	"2026-10-02T10:00:00Z", `"""` + "\n" + `a` + "\n" + `"""`, `"` + strings.Repeat("long ", 2000) + `"`, "[" + strings.Repeat(`"a", `, 500) + "]", strings.Repeat("[", 60) + strings.Repeat("]", 60),
}

func newMutants(texts []string) *mutants {
	m := &mutants{values: slices.Clone(hostile)}
	for _, text := range texts {
		m.tokens = append(m.tokens, tokenForm.FindAllString(text, -1)...)
		for _, found := range valueForm.FindAllStringSubmatch(text, -1) {
			m.values = append(m.values, found[4])
		}
	}
	return m
}

// make changes a text at one to four places: its bytes, its tokens or its values.
func (m *mutants) make(text string, number int) string {
	r := rand.New(rand.NewPCG(uint64(number), 11))
	change := []func(string, *rand.Rand) string{mutateBytes, m.mutateTokens, m.mutateValues}[number%3]
	for range 1 + r.IntN(4) {
		text = change(text, r)
	}
	return text
}

// mutateBytes knows nothing of what it changes.
func mutateBytes(text string, r *rand.Rand) string {
	at := r.IntN(len(text) + 1)
	end := min(len(text), at+1+r.IntN(40))
	switch r.IntN(6) {
	case 0:
		return text[:at]
	case 1:
		return text[:at] + text[end:]
	case 2:
		return text[:at] + text[at:end] + text[at:]
	case 3:
		to := r.IntN(len(text) + 1)
		return text[:to] + text[at:end] + text[to:]
	case 4:
		return text[:at] + string([]byte{"\x00\x01\t\r\n\"'#=[]{}.,-_\\ \x7f\x80\xc3\xe2\xff"[r.IntN(24)]}) + text[at:]
	}
	if at == len(text) {
		return text
	}
	changed := []byte(text)
	changed[at] ^= 1 << r.IntN(8)
	return string(changed)
}

// mutateTokens takes away, repeats, swaps or replaces what stands between spaces.
func (m *mutants) mutateTokens(text string, r *rand.Rand) string {
	tokens := tokenForm.FindAllString(text, -1)
	if len(tokens) == 0 {
		return text
	}
	at, to := r.IntN(len(tokens)), r.IntN(len(tokens))
	switch r.IntN(4) {
	case 0:
		tokens = slices.Delete(tokens, at, at+1)
	case 1:
		tokens = slices.Insert(tokens, to, tokens[at])
	case 2:
		tokens[at], tokens[to] = tokens[to], tokens[at]
	case 3:
		tokens[at] = m.tokens[r.IntN(len(m.tokens))]
	}
	return strings.Join(tokens, "")
}

// mutateValues keeps the keys and the form, and states something else.
func (m *mutants) mutateValues(text string, r *rand.Rand) string {
	places := valueForm.FindAllStringSubmatchIndex(text, -1)
	if len(places) == 0 {
		return text
	}
	one := places[r.IntN(len(places))]
	value := m.values[r.IntN(len(m.values))]
	if r.IntN(3) == 0 {
		value = hostile[r.IntN(len(hostile))]
	}
	return text[:one[8]] + value + text[one[9]:]
}
