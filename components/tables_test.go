package components_test

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"testing"

	"golang.org/x/text/language"

	"doorpocket/components"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// unchecked is the library as far as it can be read. What is wrong with it is
// for TestLibraryHasNoProblems to say.
func unchecked() *components.Library {
	lib, _ := embedded()
	return lib
}

func TestEveryTableHasAFunction(t *testing.T) {
	lib, work := unchecked(), components.Calculations()
	for _, id := range slices.Sorted(maps.Keys(lib.Tables)) {
		if work[id] == nil {
			t.Errorf("table %s is declared and has no function", id)
		}
	}
	for _, id := range slices.Sorted(maps.Keys(work)) {
		if lib.Tables[id] == nil {
			t.Errorf("table %s has a function and is not declared", id)
		}
	}
	for _, s := range lib.Systems() {
		for _, id := range s.Tables {
			if work[id] == nil {
				t.Errorf("%s shows table %s, which has no function", s.ID, id)
			}
		}
	}
}

// languages are those in which any table has words.
func languages(lib *components.Library) []string {
	all := map[string]bool{}
	for _, known := range lib.Tables {
		for lang := range known.Words {
			all[lang] = true
		}
	}
	for _, s := range lib.Systems() {
		for lang := range s.Words {
			all[lang] = true
		}
	}
	return slices.Sorted(maps.Keys(all))
}

func TestEveryTableHasItsWords(t *testing.T) {
	lib := unchecked()
	for _, id := range slices.Sorted(maps.Keys(lib.Tables)) {
		known := lib.Tables[id]
		used := slices.Sorted(maps.Keys(wordsUsed(t, lib, id)))
		for _, lang := range languages(lib) {
			said, ok := known.Words[lang]
			if !ok {
				t.Errorf("table %s has no words in %s", id, lang)
				continue
			}
			if said.Caption == "" {
				t.Errorf("table %s has no caption in %s", id, lang)
			}
			if len(known.Sources) == 0 {
				t.Errorf("table %s has no sources", id)
			}
			var columns []string
			for _, c := range known.Columns {
				columns = append(columns, c.ID)
			}
			sameWords(t, id+" column", lang, columns, filled(said.Columns))
			var assumptions []string
			for name, doc := range said.Assumptions {
				if !doc.Empty() {
					assumptions = append(assumptions, name)
				}
			}
			sameWords(t, id+" assumption", lang, known.Assumptions, assumptions)
			cells := filled(said.Cells)
			cells = slices.DeleteFunc(cells, func(word string) bool { return word == joiner })
			sameWords(t, id+" cell", lang, used, cells)
		}
	}
}

// joiner is the word between two uses of one cell. No cell is that word; it is
// there for whoever writes the cell out.
const joiner = "and"

func filled(words map[string]string) []string {
	var names []string
	for name, text := range words {
		if text != "" {
			names = append(names, name)
		}
	}
	return names
}

// sameWords fails the test for words that are used and lack, and for those that
// nothing uses.
func sameWords(t *testing.T, what, lang string, used, said []string) {
	t.Helper()
	for _, name := range used {
		if !slices.Contains(said, name) {
			t.Errorf("%s %q has no words in %s", what, name, lang)
		}
	}
	for _, name := range slices.Sorted(slices.Values(said)) {
		if !slices.Contains(used, name) {
			t.Errorf("%s %q has words in %s and is not used", what, name, lang)
		}
	}
}

// wordsUsed gathers the words that the cells of a table use on many vans.
func wordsUsed(t *testing.T, lib *components.Library, id string) map[string]bool {
	t.Helper()
	used := map[string]bool{}
	for _, result := range resultsOfManyVans(t, lib, id) {
		for _, row := range result.Rows {
			for _, c := range row {
				if c.Word != "" {
					used[c.Word] = true
				}
			}
		}
		if result.Tick == nil {
			continue
		}
		for _, limit := range result.Tick.Limits {
			used[limit.Word] = true
			for _, step := range limit.Steps {
				used[step.Word] = true
			}
		}
	}
	return used
}

// No table holds a quantity that is zero or no number, on whatever van the
// library allows; rows fit the columns; a cell is one thing.
func TestTablesOfManyVans(t *testing.T) {
	lib := unchecked()
	format := quantity.NewFormatter(language.English)
	for _, id := range slices.Sorted(maps.Keys(components.Calculations())) {
		known := lib.Tables[id]
		if known == nil {
			continue // TestEveryTableHasAFunction says so
		}
		rows := 0
		for _, result := range resultsOfManyVans(t, lib, id) {
			rows += len(result.Rows)
			for _, row := range result.Rows {
				if len(row) != len(known.Columns) {
					t.Fatalf("%s: %d cells in %d columns", id, len(row), len(known.Columns))
				}
				for i, c := range row {
					if wrong := cellWrong(format, c, known.Columns[i]); wrong != "" {
						t.Fatalf("%s, column %s: %s", id, known.Columns[i].ID, wrong)
					}
				}
			}
			for _, lack := range result.Lacks {
				if lack.Reason == "" || lack.Use.Fitted == "" || lack.Use.Fact == "" {
					t.Fatalf("%s: a lack without a use or a reason: %+v", id, lack)
				}
			}
		}
		if rows == 0 {
			t.Errorf("%s has no row on any van", id)
		}
	}
}

// cellWrong says what is wrong with a cell, nothing if it is in order. An empty
// cell is allowed in a column of quantities: what is not known is left out.
func cellWrong(format *quantity.Formatter, c table.Cell, column table.Column) string {
	things := 0
	if len(c.Uses) > 0 || c.Word != "" {
		things++
	}
	if c.Quantity.Valid() {
		things++
	}
	switch {
	case things > 1:
		return "a cell of several things"
	case column.Unit.IsZero() && (things == 0 || c.Quantity.Valid()):
		return "no words in a column of words"
	case !column.Unit.IsZero() && things == 1 && !c.Quantity.Valid():
		return "words in a column of quantities"
	case c.Tone != table.Plain && c.Word == "":
		return "a tone without a word"
	case !c.Quantity.Valid():
		return ""
	case column.Unit.Dimension() == quantity.Temperature && c.Quantity.Dimension() == quantity.Temperature:
		return "" // the zero of its scale is a temperature like any other
	}
	v, err := c.Quantity.In(column.Unit)
	if err != nil {
		return err.Error()
	}
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) || v < 0 && !column.Signed {
		return fmt.Sprintf("a quantity of %g", v)
	}
	style := quantity.Style{Unit: column.Unit, Rounding: column.Rounding, Decimals: column.Decimals}
	if shown := format.Format(c.Quantity, style); !hasDigit(shown) {
		return fmt.Sprintf("%s is shown as %q", c.Quantity, shown)
	}
	return ""
}

// hasDigit reports whether a number is more than nothing as it is shown.
func hasDigit(shown string) bool {
	return slices.ContainsFunc([]rune(shown), func(r rune) bool { return '1' <= r && r <= '9' })
}

// A tone never says more than its word: the same word has always the same tone.
func TestTonesGoWithWords(t *testing.T) {
	lib := unchecked()
	for id := range components.Calculations() {
		tones := map[string]table.Tone{}
		for _, result := range resultsOfManyVans(t, lib, id) {
			for _, row := range result.Rows {
				for _, c := range row {
					if known, ok := tones[c.Word]; ok && known != c.Tone {
						t.Fatalf("%s: %q has two tones", id, c.Word)
					}
					tones[c.Word] = c.Tone
				}
			}
		}
	}
}

// A table is the same every time, however often it is worked out.
func TestTablesAreDeterministic(t *testing.T) {
	lib := unchecked()
	for id := range components.Calculations() {
		if a, b := resultsOfManyVans(t, lib, id), resultsOfManyVans(t, lib, id); !reflect.DeepEqual(a, b) {
			t.Errorf("%s differs from one time to the next", id)
		}
	}
}
