package condition

import (
	"regexp"
	"strings"
	"testing"
)

// termForm says in one line what a term is.
var termForm = regexp.MustCompile(`^(!?)\s*([a-z][a-z0-9_-]*(?:[./][a-z][a-z0-9_-]*)?)\s*(?:(=|!=|>=|<=|>|<)\s*([^\s=].*))?$`)

func FuzzTerm(f *testing.F) {
	for _, seed := range []string{
		"cylinders > 1", "!heated", "! heated", "!a = b", "changeover=by-hand", "body.width > 2.2 m", "kitchen/oven", "!kitchen/oven", "kitchen/oven = 1",
		"frost < 5 °C", "a >= 2", "a<=2", "a != b", "a !=", "a =", "a.b.c", "a/", "a.", "1a", "", "!", "A", "a b", "a == b", "a > = b", "a = b\nc", "a\t=\fb", "ä = 1",
		"a.1", "a/B", "a>=", "a<==", "=", "a = !", "a-b_c9 = x  ",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s := strings.TrimSpace(text)
		got, not, ok := scanTerm(s)
		m := termForm.FindStringSubmatch(s)
		if ok != (m != nil) {
			t.Fatalf("%q: taken %v, the form says %v", s, ok, m != nil)
		}
		if !ok {
			return
		}
		if want := (Term{Key: m[2], Op: Op(m[3]), Value: strings.TrimSpace(m[4])}); got != want || not != (m[1] != "") {
			t.Errorf("%q: %+v, %v; the form says %+v, %q", s, got, not, want, m[1])
		}
	})
}
