// Package condition parses and decides the conditions under which a section,
// step, check, caution or fact stands: "cylinders > 1 and changeover = by-hand".
//
// A condition is one or more terms joined by "and". A term is
//
//	key        a fact is present (a yes/no fact: is yes), or a system is on board
//	!key       the opposite
//	key = v    likewise != > < >= <=; v is an option, a count, yes or no, or a quantity
//	body.width > 2.2 m
//	kitchen/oven
//
// Names are those of facts of the same system, body.NAME for the van's body,
// or the name of a system.
package condition

import (
	"fmt"
	"slices"
	"strings"
)

// Term is one comparison.
type Term struct {
	Key   string
	Op    Op
	Value string // as written; "" with Present and Absent
}

// Op is what a term asks of its key.
type Op string

// The comparisons.
const (
	Present      Op = ""
	Absent       Op = "!"
	Equal        Op = "="
	NotEqual     Op = "!="
	Greater      Op = ">"
	Less         Op = "<"
	GreaterEqual Op = ">="
	LessEqual    Op = "<="
)

// IsSystem reports whether the term is about a system on board.
func (t Term) IsSystem() bool { return strings.Contains(t.Key, "/") }

// Condition is a conjunction; the zero value always holds.
type Condition struct {
	Terms []Term
	text  string
}

// String is the condition as written.
func (c Condition) String() string { return c.text }

// Parse reads a condition. The empty text always holds. An error tells which
// term is not understood.
func Parse(text string) (Condition, error) {
	c := Condition{text: text}
	if strings.TrimSpace(text) == "" {
		return c, nil
	}
	for part := range strings.SplitSeq(text, " and ") {
		term, err := parseTerm(strings.TrimSpace(part))
		if err != nil {
			return Condition{}, err
		}
		c.Terms = append(c.Terms, term)
	}
	return c, nil
}

func parseTerm(s string) (Term, error) {
	t, not, ok := scanTerm(s)
	if !ok {
		return Term{}, fmt.Errorf("%q is no condition: write a fact, !fact, or fact = value, joined by and", s)
	}
	if not {
		if t.Op != Present {
			return Term{}, fmt.Errorf("%q mixes ! with a comparison: write != instead", s)
		}
		t.Op = Absent
	}
	if t.IsSystem() && t.Op != Present && t.Op != Absent {
		return Term{}, fmt.Errorf("%q compares a system: a system is only on board or not", s)
	}
	return t, nil
}

// space is what may stand between the parts of a term.
const space = " \t\n\f\r"

// operators are the comparisons, a longer one before its own beginning.
var operators = []Op{NotEqual, GreaterEqual, LessEqual, Equal, Greater, Less}

// scanTerm takes a term apart: a key, perhaps with ! before it, perhaps with a
// comparison after it. It is written by hand because every page of every van
// asks for it.
func scanTerm(s string) (t Term, not, ok bool) {
	s, not = strings.CutPrefix(s, "!")
	s = strings.TrimLeft(s, space)
	n := nameLength(s)
	if n == 0 {
		return t, not, false
	}
	if n < len(s) && (s[n] == '.' || s[n] == '/') {
		if more := nameLength(s[n+1:]); more > 0 {
			n += 1 + more
		}
	}
	t.Key, s = s[:n], strings.TrimLeft(s[n:], space)
	if s == "" {
		return t, not, true
	}
	for _, op := range operators {
		if value, found := strings.CutPrefix(s, string(op)); found {
			t.Op, t.Value = op, strings.TrimSpace(value)
			return t, not, t.Value != "" && t.Value[0] != '=' && !strings.Contains(t.Value, "\n")
		}
	}
	return t, not, false
}

// nameLength is how much of a text is a name: a small letter, then letters,
// digits, underscores and hyphens.
func nameLength(s string) int {
	for i := range len(s) {
		c := s[i]
		letter := 'a' <= c && c <= 'z'
		if !letter && (i == 0 || !('0' <= c && c <= '9' || c == '_' || c == '-')) {
			return i
		}
	}
	return len(s)
}

// Asker answers the terms of a condition for one fitted system of one van.
type Asker interface {
	// Aboard reports whether the van has the system.
	Aboard(system string) bool
	// Present reports whether the fact is stated (yes/no: is yes).
	Present(key string) bool
	// Compare tells how the fact stands to the value as written: negative,
	// zero or positive, and whether they can be compared at all. For a fact
	// of several choices zero means that the value is among them.
	Compare(key, value string) (order int, ok bool)
}

// Holds decides the condition.
func (c Condition) Holds(a Asker) bool {
	return !slices.ContainsFunc(c.Terms, func(t Term) bool { return !t.holds(a) })
}

func (t Term) holds(a Asker) bool {
	switch {
	case t.IsSystem():
		return a.Aboard(t.Key) == (t.Op == Present)
	case t.Op == Present:
		return a.Present(t.Key)
	case t.Op == Absent:
		return !a.Present(t.Key)
	}
	order, ok := a.Compare(t.Key, t.Value)
	if !ok {
		return t.Op == NotEqual // an absent fact differs from every value
	}
	switch t.Op {
	case Equal:
		return order == 0
	case NotEqual:
		return order != 0
	case Greater:
		return order > 0
	case Less:
		return order < 0
	case GreaterEqual:
		return order >= 0
	default:
		return order <= 0
	}
}

// Guards reports whether the condition can hold only where the fact is
// present, so that words under it may name the fact.
func (c Condition) Guards(key string) bool {
	return slices.ContainsFunc(c.Terms, func(t Term) bool {
		return t.Key == key && t.Op != Absent && t.Op != NotEqual
	})
}
