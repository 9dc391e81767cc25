package toilet_test

import (
	"testing"

	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func toilet(t *testing.T, kind, size string, facts ...table.Fact) table.Input {
	t.Helper()
	f := table.Fitted{Name: "toilet", System: "toilet/" + kind, Facts: append([]table.Fact{sample.Fact(t, "capacity", "toilet-capacity", quantity.Volume, size)}, facts...)}
	return sample.Van(t, "toilet", f)
}

func volume(t *testing.T, name, text string) table.Fact {
	t.Helper()
	return sample.Fact(t, name, "", quantity.Volume, text)
}

func TestDaysTable(t *testing.T) {
	cassette := []string{ // 2.5 L a person and day, 2 L in it from the start
		"1 | 4 d | 6 d", // (12 - 2) / 2.5 = 4, (18 - 2) / 2.5 = 6.4
		"2 | 2 d | 3 d", // 2, 3.2
		"3 | 1 d | 2 d", // 1.33, 2.13
		"4 | 1 d | 1.5 d",
	}
	sample.Same(t, sample.Shown(t, "toilet/days", toilet(t, "cassette", "18 L")), cassette)
	sample.Same(t, sample.Shown(t, "toilet/days", toilet(t, "portable-toilet", "18 L")), cassette)
	sample.Same(t, sample.Shown(t, "toilet/days", toilet(t, "macerator-toilet", "60 L")), []string{ // 6.5 L
		"1 | 5.5 d | 8.5 d", // 38 / 6.5 = 5.85, 58 / 6.5 = 8.92
		"2 | 2.5 d | 4 d",
		"3 | 1.5 d | 2.5 d",
		"4 | 1 d | 2 d",
	})
	sample.Same(t, sample.Shown(t, "toilet/days", toilet(t, "dry-toilet", "6 L")), []string{ // 1.5 L, nothing from the start
		"1 | 2.5 d | 4 d",
		"2 | 1 d | 2 d",
		"3 | 0.5 d | 1 d",
		"4 | 0.5 d | 1 d",
	})
	sample.Same(t, sample.Shown(t, "toilet/days", toilet(t, "washroom", "18 L")), nil)
}

// In a tiny tank the first water stands above two thirds: that cell is empty.
func TestDaysTableOfATinyTank(t *testing.T) {
	sample.Same(t, sample.Shown(t, "toilet/days", toilet(t, "portable-toilet", "3 L")), []string{"1 |  | ", "2 |  | ", "3 |  | ", "4 |  | "})
}

func TestDaysTableLacks(t *testing.T) {
	sample.Same(t, sample.Shown(t, "toilet/days", toilet(t, "cassette", "")), []string{"lacks toilet:capacity: capacity is not stated"})
	sample.Same(t, sample.Shown(t, "toilet/days", toilet(t, "cassette", "0 L")),
		[]string{"lacks toilet:capacity: capacity is 0 L, which must be above zero: outside what the formula holds for"})
}

func TestDoseTable(t *testing.T) {
	sample.Same(t, sample.Shown(t, "toilet/dose", toilet(t, "cassette", "18 L", volume(t, "dose", "100 ml"), volume(t, "dose_for", "20 L"))),
		[]string{"18 L | 100 ml | 20 L | 90 ml"})
	sample.Same(t, sample.Shown(t, "toilet/dose", toilet(t, "cassette", "17 L", volume(t, "dose", "60 ml"), volume(t, "dose_for", "10 L"))),
		[]string{"17 L | 60 ml | 10 L | 105 ml"}) // 102, up to 5 ml
	sample.Same(t, sample.Shown(t, "toilet/dose", toilet(t, "cassette", "18 L", volume(t, "dose", "120 ml"))), []string{"18 L | 120 ml |  | 120 ml"})
	sample.Same(t, sample.Shown(t, "toilet/dose", toilet(t, "cassette", "18 L")), nil) // a tablet, or none
	liquid := table.Fact{Name: "chemical", Options: []string{"tablet", "liquid"}}
	for kind, fact := range map[string]table.Fact{"cassette": liquid, "portable-toilet": liquid, "macerator-toilet": sample.Choice("additive", "liquid")} {
		sample.Same(t, sample.Shown(t, "toilet/dose", toilet(t, kind, "18 L", fact)), []string{"lacks toilet:dose: dose is not stated"})
	}
	sample.Same(t, sample.Shown(t, "toilet/dose", toilet(t, "cassette", "18 L", table.Fact{Name: "chemical", Options: []string{"tablet"}})), nil)
}

func TestDoseTableLacks(t *testing.T) {
	for _, c := range []struct{ size, dose, of, want string }{
		{"", "100 ml", "20 L", "lacks toilet:capacity: capacity is not stated"},
		{"18 L", "", "20 L", "lacks toilet:dose: dose is not stated"},
		{"18 L", "100 ml", "", "lacks toilet:dose_for: dose_for is not stated"},
		{"18 L", "100 ml", "2 L", "lacks toilet:dose_for: the tank is 9 times the one of the label, which must be from a quarter to 4: outside what the formula holds for"},
	} {
		got := sample.Shown(t, "toilet/dose", toilet(t, "cassette", c.size, volume(t, "dose", c.dose), volume(t, "dose_for", c.of)))
		sample.Same(t, got, []string{c.want})
	}
}
