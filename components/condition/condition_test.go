package condition

import (
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestParse(t *testing.T) {
	for text, want := range map[string][]Term{
		"":                    nil,
		"   ":                 nil,
		"gas":                 {{Key: "gas"}},
		"!gas":                {{Key: "gas", Op: Absent}},
		"! gas":               {{Key: "gas", Op: Absent}},
		"cylinders > 1":       {{Key: "cylinders", Op: Greater, Value: "1"}},
		"cylinders>=2":        {{Key: "cylinders", Op: GreaterEqual, Value: "2"}},
		"cylinders<2":         {{Key: "cylinders", Op: Less, Value: "2"}},
		"cylinders <= 2":      {{Key: "cylinders", Op: LessEqual, Value: "2"}},
		"lamp != yes":         {{Key: "lamp", Op: NotEqual, Value: "yes"}},
		"body.width > 2.2 m":  {{Key: "body.width", Op: Greater, Value: "2.2 m"}},
		"kitchen/oven":        {{Key: "kitchen/oven"}},
		"!kitchen/gas-hob":    {{Key: "kitchen/gas-hob", Op: Absent}},
		"a = b and !c and d":  {{Key: "a", Op: Equal, Value: "b"}, {Key: "c", Op: Absent}, {Key: "d"}},
		"  a = b  and  c ":    {{Key: "a", Op: Equal, Value: "b"}, {Key: "c"}},
		"kind = stand-and-go": {{Key: "kind", Op: Equal, Value: "stand-and-go"}},
	} {
		c, err := Parse(text)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		if diff := cmp.Diff(want, c.Terms); diff != "" || c.String() != text {
			t.Errorf("%q is read as %q:\n%s", text, c, diff)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"lock or key":          `"lock or key" is no condition: write a fact, !fact, or fact = value, joined by and`,
		"a = ":                 `"a =" is no condition`,
		"= b":                  `"= b" is no condition`,
		"a == b":               `"a == b" is no condition`,
		"a and":                `"a and" is no condition`,
		" and a":               `"" is no condition`,
		"Gas":                  `"Gas" is no condition`,
		"2 > 1":                `"2 > 1" is no condition`,
		"!a = b":               `"!a = b" mixes ! with a comparison: write != instead`,
		"kitchen/oven = yes":   `"kitchen/oven = yes" compares a system`,
		"!!a":                  `"!!a" is no condition`,
		"a/b/c":                `"a/b/c" is no condition`,
		"a.b.c":                `"a.b.c" is no condition`,
		"gas and lock or key":  `"lock or key" is no condition`,
		"a (b)":                `"a (b)" is no condition`,
		"a = b and kitchen/ö":  `"kitchen/ö" is no condition`,
		"\x00":                 `is no condition`,
		"body. > 2":            `"body. > 2" is no condition`,
		"a = b and !c = d":     `"!c = d" mixes`,
		"a ~ b":                `"a ~ b" is no condition`,
		strings.Repeat("(", 9): `is no condition`,
	} {
		if c, err := Parse(text); err == nil || !strings.Contains(err.Error(), want) || len(c.Terms) > 0 {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

// van answers for tests: facts as texts, numbers where both are numbers.
type van struct {
	facts  map[string]string
	aboard string
}

func (v van) Aboard(system string) bool { return system == v.aboard }
func (v van) Present(key string) bool   { return v.facts[key] != "" && v.facts[key] != "no" }
func (v van) Compare(key, value string) (int, bool) {
	have, stated := v.facts[key]
	if !stated {
		return 0, false
	}
	a, err1 := strconv.Atoi(have)
	b, err2 := strconv.Atoi(value)
	if err1 == nil && err2 == nil {
		return a - b, true
	}
	return strings.Compare(have, value), true
}

func TestHolds(t *testing.T) {
	v := van{facts: map[string]string{"cylinders": "2", "kind": "valve", "lamp": "yes", "fan": "no", "body.width": "22"}, aboard: "kitchen/oven"}
	for text, want := range map[string]bool{
		"": true, "kind": true, "!kind": false, "spanner": false, "!spanner": true, "lamp": true, "fan": false, "!fan": true,
		"cylinders = 2": true, "cylinders != 2": false, "cylinders > 1": true, "cylinders > 2": false, "cylinders >= 2": true,
		"cylinders < 2": false, "cylinders < 3": true, "cylinders <= 2": true, "cylinders <= 1": false, "body.width > 21": true,
		"kind = valve": true, "kind = switch": false, "kind != switch": true,
		"kitchen/oven": true, "!kitchen/oven": false, "kitchen/hob": false, "!kitchen/hob": true,
		"spanner = 3": false, "spanner != 3": true, "spanner > 3": false, "spanner <= 3": false, // an absent fact differs from every value
		"kind = valve and cylinders > 1": true, "kind = valve and cylinders > 2": false, "spanner and kind = valve": false,
	} {
		c, err := Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.Holds(v); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}

// Words under a condition may name a fact only where it cannot be absent.
func TestGuards(t *testing.T) {
	for text, want := range map[string]bool{
		"": false, "level": true, "!level": false, "level = 3": true, "level != 3": false, "level > 3": true,
		"kind = valve": false, "kind = valve and level": true, "kind = valve and !level": false, "kitchen/level": false,
	} {
		c, err := Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.Guards("level"); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}

// FuzzParse shows that no text stops the parser, and that what it reads can be
// decided and says the same when it is read again.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"", "a", "!a", "a = b and c > 2.2 m", "kitchen/oven", "a and and b", "! a", "a =  b ", "body.x!=y and\tz"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := Parse(text)
		if err != nil {
			if len(c.Terms) > 0 || err.Error() == "" {
				t.Errorf("%q: terms beside the error %v", text, err)
			}
			return
		}
		c.Holds(van{})
		for _, term := range c.Terms {
			if term.Key == "" || (term.Op == Present || term.Op == Absent) != (term.Value == "") {
				t.Errorf("%q: term %+v", text, term)
			}
		}
		again, err := Parse(c.String())
		if err != nil || !cmp.Equal(c.Terms, again.Terms) {
			t.Errorf("%q is read as %v, then as %v", text, c.Terms, again.Terms)
		}
	})
}
