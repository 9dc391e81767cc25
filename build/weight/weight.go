// Package weight tells what a page weighs on the way to a phone, and what makes
// it heavy.
package weight

import (
	"compress/gzip"
	"io"
	"regexp"
)

// RoundTrip is how many compressed bytes of a page reach a phone in one round
// trip: the initial window of RFC 6928, ten segments of 1,460 bytes.
const RoundTrip = 14_600

// Page is what a page weighs, compressed as hosts do it; of a page so short that
// it fits as it is, uncompressed.
type Page struct {
	Bytes int
	Parts []Part // of one that is over, in the order in which they were cut out
}

// Over is how many bytes too many a page has, 0 where it fits.
func (p Page) Over() int { return max(0, p.Bytes-RoundTrip) }

// Part is a kind of thing in a page: "styles", "drawings", "tables", "cautions"
// or "words and the rest". Bytes is how much lighter the page would be without
// it, so that parts that resemble each other count little.
type Part struct {
	Name  string
	Bytes int
}

// parts are cut out of a page in this order. Templates write them without
// nesting one kind in itself.
var parts = []struct {
	name string
	form *regexp.Regexp
}{
	{"styles", regexp.MustCompile(`(?s)<style>.*?</style>`)},
	{"drawings", regexp.MustCompile(`(?s)<svg.*?</svg>`)},
	{"tables", regexp.MustCompile(`(?s)<figure class="table".*?</figure>`)},
	{"cautions", regexp.MustCompile(`(?s)<aside class="caution.*?</aside>`)},
}

// Of weighs a page. One that fits is not looked into.
func Of(page []byte) Page {
	if len(page) < RoundTrip {
		return Page{Bytes: len(page)} // an upper bound: no need to compress it
	}
	p := Page{Bytes: Compressed(page)}
	if p.Over() == 0 {
		return p
	}
	left := p.Bytes
	for _, part := range parts {
		page = part.form.ReplaceAll(page, nil)
		rest := Compressed(page)
		if rest < left {
			p.Parts = append(p.Parts, Part{part.name, left - rest})
		}
		left = rest
	}
	p.Parts = append(p.Parts, Part{"words and the rest", left})
	return p
}

// Compressed is the size of data as gzip sends it.
func Compressed(data []byte) int {
	var n counter
	w := gzip.NewWriter(&n)
	_, _ = w.Write(data) // a counter takes everything
	_ = w.Close()
	return int(n)
}

type counter int

var _ io.Writer = new(counter)

func (c *counter) Write(p []byte) (int, error) {
	*c += counter(len(p))
	return len(p), nil
}
