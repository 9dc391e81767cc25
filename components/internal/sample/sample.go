// Package sample builds vans for the tests of tables and writes tables out as
// a page would, so that a test can say what a reader must see.
package sample

import (
	"strings"
	"sync"
	"testing"

	"golang.org/x/text/language"

	"doorpocket/components"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// Fact is a fact with a quantity as a spec writes it. An empty text is a fact
// without a value.
func Fact(t testing.TB, name, role string, dim quantity.Dimension, text string) table.Fact {
	t.Helper()
	fact := table.Fact{Name: name, Role: role}
	if text == "" {
		return fact
	}
	q, err := quantity.Parse(text, dim)
	if err != nil {
		t.Fatal(err)
	}
	fact.Quantity = q
	return fact
}

// Choice is a fact with one option of several.
func Choice(name, option string) table.Fact { return table.Fact{Name: name, Option: option} }

// Count is a fact with a whole number.
func Count(name string, n int) table.Fact { return table.Fact{Name: name, Count: n} }

// Van is what a calculation is asked for the page of the named fitted system.
func Van(t testing.TB, self string, fitted ...table.Fitted) table.Input {
	t.Helper()
	for _, f := range fitted {
		if f.Name == self {
			return table.Input{Self: f, All: fitted}
		}
	}
	t.Fatalf("nothing is fitted as %q", self)
	return table.Input{}
}

// library is read once: it is large, and what is wrong elsewhere in it is for
// the tests of the library to say.
var library = sync.OnceValue(func() *components.Library {
	lib, _ := components.Load(components.Embedded())
	return lib
})

// Shown writes each row as English readers see it, with " | " between cells:
// the names of the uses as fitted:fact, the key of a word, a quantity rounded
// as the table declares. Lacks follow as "lacks fitted:fact: reason".
func Shown(t testing.TB, id string, in table.Input) []string {
	t.Helper()
	known := library().Tables[id]
	if known == nil {
		t.Fatalf("no table %q is declared", id)
	}
	result, err := components.Calculations()[id](in)
	if err != nil {
		t.Fatal(err)
	}
	format := quantity.NewFormatter(language.English)
	var lines []string
	for _, row := range result.Rows {
		var cells []string
		for i, c := range row {
			cells = append(cells, cell(format, c, known.Columns[i]))
		}
		lines = append(lines, strings.Join(cells, " | "))
	}
	for _, lack := range result.Lacks {
		lines = append(lines, "lacks "+use(lack.Use)+": "+lack.Reason)
	}
	return lines
}

func cell(format *quantity.Formatter, c table.Cell, column table.Column) string {
	if c.Quantity.Valid() {
		style := quantity.Style{Unit: column.Unit, Rounding: column.Rounding, Decimals: column.Decimals}
		return strings.ReplaceAll(format.Format(c.Quantity, style), "\u00a0", " ")
	}
	var uses []string
	for _, u := range c.Uses {
		uses = append(uses, use(u))
	}
	if c.Word != "" {
		uses = append(uses, c.Word)
	}
	return strings.Join(uses, " + ")
}

func use(u table.Use) string { return u.Fitted + ":" + u.Fact }

// Same fails the test where the lines are not those expected.
func Same(t testing.TB, got, want []string) {
	t.Helper()
	if g, w := strings.Join(got, "\n"), strings.Join(want, "\n"); g != w {
		t.Errorf("got\n%s\n\nexpected\n%s", g, w)
	}
}
