package weight_test

import (
	"bytes"
	"compress/gzip"
	"io"
	"math/rand/v2"
	"strings"
	"testing"

	"doorpocket/build/weight"
)

// noise is text that hardly gets smaller when compressed: n letters of 64.
func noise(n int) string {
	const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
	r := rand.New(rand.NewPCG(1, 2))
	b := make([]byte, n)
	for i := range b {
		b[i] = alphabet[r.IntN(len(alphabet))]
	}
	return string(b)
}

func TestPartsOfAHeavyPage(t *testing.T) {
	text := noise(24_000)
	page := "<style>" + text[:4000] + "</style><svg>" + text[4000:12_000] + `</svg><figure class="table">` + text[12_000:14_000] + "</figure>" + text[14_000:]
	p := weight.Of([]byte(page))
	if p.Over() != p.Bytes-weight.RoundTrip || p.Over() == 0 {
		t.Fatalf("%+v is over by %d", p, p.Over())
	}
	var names []string
	sum := 0
	for _, part := range p.Parts {
		names = append(names, part.Name)
		sum += part.Bytes
	}
	if got := strings.Join(names, ", "); got != "styles, drawings, tables, words and the rest" {
		t.Errorf("parts: %s", got)
	}
	if sum != p.Bytes {
		t.Errorf("the parts weigh %d together, the page %d", sum, p.Bytes)
	}
	// Six bits a letter: what was put in comes out.
	for i, letters := range []int{4000, 8000, 2000, 10_000} {
		if want, got := letters*6/8, p.Parts[i].Bytes; got < want || got > want*106/100+60 {
			t.Errorf("%s: %d bytes, want about %d", p.Parts[i].Name, got, want)
		}
	}
}

func TestLightPages(t *testing.T) {
	for _, page := range []string{"", "<style>a</style>", strings.Repeat("word ", 50_000)} {
		if p := weight.Of([]byte(page)); p.Over() != 0 || len(p.Parts) > 0 {
			t.Errorf("%d letters: %+v", len(page), p)
		}
	}
}

// Compressed is what a gzip reader is sent.
func TestCompressed(t *testing.T) {
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	if _, err := io.WriteString(w, noise(5000)); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	if got := weight.Compressed([]byte(noise(5000))); got != b.Len() {
		t.Errorf("%d bytes, gzip sends %d", got, b.Len())
	}
}
