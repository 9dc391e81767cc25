package label

import (
	"cmp"
	"strings"
)

// Ref names one label of the fleet: the code of its van and its own, as they are
// printed and read out, "RW G1". The zero Ref names none.
type Ref struct{ Van, Code string }

// ParseRef reads "RW G1".
func ParseRef(text string) (Ref, bool) {
	van, code, ok := strings.Cut(text, " ")
	r := Ref{van, code}
	return r, ok && ValidVan(van) && ValidLabel(code)
}

// String is the label as it is printed, "" for none.
func (r Ref) String() string {
	if r == (Ref{}) {
		return ""
	}
	return r.Van + " " + r.Code
}

// Path is the page of the label below the hirer tree.
func (r Ref) Path() string { return r.Van + "/" + r.Code + "/" }

// Compare orders labels by van, letter and number.
func (r Ref) Compare(o Ref) int {
	return cmp.Or(cmp.Compare(r.Van, o.Van), CompareCodes(r.Code, o.Code))
}

// CompareCodes orders label codes by letter and number: G2 before G10.
func CompareCodes(a, b string) int {
	if a == "" || b == "" {
		return cmp.Compare(a, b)
	}
	return cmp.Or(cmp.Compare(a[:1], b[:1]), cmp.Compare(len(a), len(b)), cmp.Compare(a, b))
}
