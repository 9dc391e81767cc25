package render

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/base64"
	"slices"
)

// Tokens that stand in a page until it is complete. No text can hold them: the
// noncharacters are refused in specs and pages.
const (
	sheetToken = "\ufdd0sheet\ufdd0"
	staffToken = "\ufdd0staff\ufdd0"
	sumToken   = "\ufdd0sum\ufdd0"
	earlyToken = "\ufdd0early\ufdd0"
)

// policy lets exactly one sheet and one script stand in a page, and nobody else's
// anything.
const policy = "default-src 'none'; script-src 'self' 'sha256-" + earlyToken + "'; style-src 'sha256-" + sumToken +
	"'; img-src 'self' data:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; form-action 'none'; base-uri 'none'"

// finish puts into a page the sheet that it uses, its revision, and the sums of
// what may stand in it, which are those of the page as it is written. The result
// is appended to out.
func (r *Renderer) finish(out, page []byte) []byte {
	token, s := []byte(sheetToken), r.sheet
	if bytes.Contains(page, []byte(staffToken)) {
		token, s = []byte(staffToken), r.staffSheet
	}
	used := s.used(page)
	revision := []byte(revisionOf(page, token, used))
	holes := append(holesOf(page, []byte(revisionToken), revision, -1), holesOf(page, []byte(query(string(revisionToken))), revision, -1)...)
	holes = append(holes, holesOf(page, token, used, 1)...)
	holes = append(holes, holesOf(page, []byte(earlyToken), r.earlySum, 1)...)
	return fillHoles(out, page, append(holes, holesOf(page, []byte(sumToken), styleSum(page, holes), 1)...))
}

// hole is where a token stands, and what goes there.
type hole struct {
	from, to int
	text     []byte
}

// holesOf finds a token as many times as it stands in a page, most times at most
// unless that is negative.
func holesOf(page, token, text []byte, most int) []hole {
	var all []hole
	for at := 0; most < 0 || len(all) < most; {
		i := bytes.Index(page[at:], token)
		if i < 0 {
			break
		}
		all = append(all, hole{at + i, at + i + len(token), text})
		at += i + len(token)
	}
	return all
}

// fillHoles appends a text to out, with its holes filled, in whatever order they
// are given.
func fillHoles(out, text []byte, holes []hole) []byte {
	slices.SortFunc(holes, func(a, b hole) int { return cmp.Compare(a.from, b.from) })
	long := len(text)
	for _, h := range holes {
		long += len(h.text) - (h.to - h.from)
	}
	out = slices.Grow(out, long)
	at := 0
	for _, h := range holes {
		out = append(append(out, text[at:h.from]...), h.text...)
		at = h.to
	}
	return append(out, text[at:]...)
}

// revisionOf is that of a page in which a sheet stands in the place of its token.
func revisionOf(page, token, used []byte) string {
	before, after, found := bytes.Cut(page, token)
	sum := sha256.New()
	sum.Write(before)
	if found {
		sum.Write(used)
		sum.Write(after)
	}
	return revisionIn(sum.Sum(nil))
}

// styleSum is that of the styles of a page once their holes are filled.
func styleSum(page []byte, holes []hole) []byte {
	begin, end := []byte("<style>"), []byte("</style>")
	from := bytes.Index(page, begin) + len(begin)
	long := bytes.Index(page[from:], end)
	if from < len(begin) || long < 0 {
		return sourceSum(nil) // a page without styles lets none stand in it
	}
	var within []hole
	for _, h := range holes {
		if h.from >= from && h.to <= from+long {
			within = append(within, hole{h.from - from, h.to - from, h.text})
		}
	}
	return sourceSum(fillHoles(nil, page[from:from+long], within))
}

// sourceSum is how a policy names what may stand in a page.
func sourceSum(text []byte) []byte {
	sum := sha256.Sum256(text)
	return base64.StdEncoding.AppendEncode(nil, sum[:])
}
