// Package published reads the check values of testdata/published for the tests
// of the calculations. Each stands there with its source.
package published

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/BurntSushi/toml"

	"doorpocket/components/quantity"
)

// Bases are the ways in which a value can be known.
var Bases = []string{
	"seen",            // read in the source named
	"computed",        // worked out from seen values, outside this project, as source says
	"from memory",     // not looked up
	"common practice", // a figure of the trade without a source
}

// Check is one published figure, worked example or short table.
type Check struct {
	ID     string
	What   string
	Source string
	Basis  string
	Within float64 // the part of a value by which a result may differ; Note says why
	Note   string
	Values map[string]string   // quantities as a spec writes them
	Rows   []map[string]string // the same for a table
}

// Read reads testdata/published/NAME.toml and fails the test if it cannot, or
// if a value in it lacks its source.
func Read(t testing.TB, name string) map[string]Check {
	t.Helper()
	file := filepath.Join(root(t), "testdata", "published", name+".toml")
	var content struct{ Check []Check }
	meta, err := toml.DecodeFile(file, &content)
	if err != nil {
		t.Fatal(err)
	}
	if extra := meta.Undecoded(); len(extra) > 0 {
		t.Fatalf("%s: unknown key %s", file, extra[0])
	}
	checks := map[string]Check{}
	for _, c := range content.Check {
		if c.ID == "" || c.What == "" || c.Source == "" || !slices.Contains(Bases, c.Basis) {
			t.Fatalf("%s: check %q needs id, what, source and a basis of %q", file, c.ID, Bases)
		}
		if _, twice := checks[c.ID]; twice {
			t.Fatalf("%s: two checks are called %q", file, c.ID)
		}
		checks[c.ID] = c
	}
	return checks
}

// root is the folder of the module: tests run in the folder of their package.
func root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for ; dir != filepath.Dir(dir); dir = filepath.Dir(dir) {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
	}
	t.Fatal("no go.mod above the test")
	return ""
}

// Get finds a check.
func Get(t testing.TB, checks map[string]Check, id string) Check {
	t.Helper()
	c, ok := checks[id]
	if !ok {
		t.Fatalf("no published check %q", id)
	}
	return c
}

// Value reads one of the values of a check or of a row of it.
func Value[T quantity.Measure](t testing.TB, values map[string]string, name string) T {
	t.Helper()
	v, err := quantity.As[T](Quantity[T](t, values, name))
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return v
}

// Quantity reads one of the values as a spec would.
func Quantity[T quantity.Measure](t testing.TB, values map[string]string, name string) quantity.Quantity {
	t.Helper()
	text, ok := values[name]
	if !ok {
		t.Fatalf("no published value %q", name)
	}
	q, err := quantity.Parse(text, quantity.Of(T(0)).Dimension())
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return q
}

// Same fails the test where a result differs from the published value by more
// than the check allows.
func (c Check) Same(t testing.TB, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= c.Within*math.Abs(want)) {
		t.Errorf("%s: %s is %g, expected %g within %g (%s; %s)", c.ID, what, got, want, c.Within, c.Source, c.Basis)
	}
}
