package quantity

import (
	"math"
	"testing"
)

// mustUnit gives the unit of a dimension by name.
func mustUnit(t testing.TB, dim Dimension, name string) Unit {
	t.Helper()
	u, ok := UnitOf(name, dim)
	if !ok {
		t.Fatalf("no unit %q of %s", name, dim)
	}
	return u
}

// mustParse reads a quantity that the test knows to be right.
func mustParse(t testing.TB, text string, dim Dimension) Quantity {
	t.Helper()
	q, err := Parse(text, dim)
	if err != nil {
		t.Fatal(err)
	}
	return q
}

// mustIn gives the number of units in q.
func mustIn(t testing.TB, q Quantity, u Unit) float64 {
	t.Helper()
	v, err := q.In(u)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// near reports whether two numbers differ by less than the noise of a few
// operations; least is the size below which only the difference counts.
func near(a, b, least float64) bool {
	return math.Abs(a-b) <= 1e-14*math.Max(least, math.Max(math.Abs(a), math.Abs(b)))
}
