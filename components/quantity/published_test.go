package quantity

import (
	"fmt"
	"testing"

	"golang.org/x/text/language"
)

// Single conversions with the source of each.
func TestPublishedConversions(t *testing.T) {
	f := NewFormatter(language.English)
	for _, c := range []struct {
		from, unit string
		dim        Dimension
		decimals   int
		want       string
		source     string
	}{
		{"1 bar", "psi", Pressure, 4, "14.5038 psi", "engineering thermodynamics textbook, appendix A (seen)"},
		{"1 inH2O", "Pa", Pressure, 5, "249.08891 Pa", "public unit libraries (seen); NIST SP 811 B.8 (from memory)"},
		{"5.5 bar", "psi", Pressure, 2, "79.77 psi", "computed from the definition"},
		{"5.5 bar", "psi", Pressure, 1, "79.8 psi", "computed from the definition"},
		{"5.0 bar", "psi", Pressure, 1, "72.5 psi", "computed from the definition"},
		{"80 psi", "bar", Pressure, 3, "5.516 bar", "computed from the definition"},
		{"1 psi", "Pa", Pressure, 9, "6,894.757293168 Pa", "NIST SP 811 (from memory)"},
		{"1 hp", "W", Power, 4, "745.6999 W", "NIST SP 811, horsepower of 550 ft·lbf/s (from memory)"},
		{"1 Btu/h", "W", Power, 7, "0.2930711 W", "NIST SP 811, International Table (from memory)"},
		{"1 mph", "km/h", Speed, 6, "1.609344 km/h", "NIST SP 811, exact (from memory)"},
		{"30 mph", "km/h", Speed, 0, "48 km/h", "speed limits page of the British government (seen, archived)"},
		{"50 mph", "km/h", Speed, 0, "80 km/h", "speed limits page of the British government (seen, archived)"},
		{"60 mph", "km/h", Speed, 0, "97 km/h", "computed; the speed limits page prints 96, cut and not rounded"},
		{"-40 °C", "°F", Temperature, 6, "-40.000000 °F", "where the two scales meet, by definition"},
		{"100 °C", "°F", Temperature, 6, "212.000000 °F", "definition of the scale"},
	} {
		q := mustParse(t, c.from, c.dim)
		if got := f.Format(q, Style{Unit: mustUnit(t, c.dim, c.unit), Decimals: c.decimals}); got != spaced(c.want) {
			t.Errorf("%s: %q, expected %q (%s)", c.from, got, c.want, c.source)
		}
	}
}

// Source: UN Regulation No. 54, annex 7 appendix 2, relation between the
// pressure index and units of pressure (seen as quoted text).
func TestPublishedPressureIndex(t *testing.T) {
	f := NewFormatter(language.English)
	bar, kPa := mustUnit(t, Pressure, "bar"), mustUnit(t, Pressure, "kPa")
	for _, row := range []struct {
		psi int
		bar string
		kPa int
	}{
		{20, "1.4", 140}, {25, "1.7", 170}, {30, "2.1", 210}, {35, "2.4", 240}, {40, "2.8", 280}, {45, "3.1", 310},
		{50, "3.4", 340}, {55, "3.8", 380}, {60, "4.1", 410}, {65, "4.5", 450}, {70, "4.8", 480}, {75, "5.2", 520},
		{80, "5.5", 550}, {85, "5.9", 590}, {90, "6.2", 620}, {95, "6.6", 660}, {100, "6.9", 690}, {105, "7.2", 720},
		{110, "7.6", 760}, {115, "7.9", 790}, {120, "8.3", 830}, {125, "8.6", 860}, {130, "9.0", 900}, {135, "9.3", 930},
		{140, "9.7", 970}, {145, "10.0", 1000}, {150, "10.3", 1030},
	} {
		q := mustParse(t, fmt.Sprint(row.psi, " psi"), Pressure)
		if got, want := f.Format(q, Style{Unit: bar, Decimals: 1}), spaced(row.bar+" bar"); got != want {
			t.Errorf("%s: %q, expected %q", q, got, want)
		}
		printed := mustParse(t, row.bar+" bar", Pressure)
		if got := mustIn(t, printed, kPa); !near(got, float64(row.kPa), 1) {
			t.Errorf("%s is %v kPa, expected %d", printed, got, row.kPa)
		}
	}
}

// Source: computed with 0.0254 m in an inch, to the next inch, outside this
// package.
func TestHeightsUpToTheInch(t *testing.T) {
	f := NewFormatter(language.English)
	up := Style{Unit: mustUnit(t, Length, "ft-in"), Rounding: Up, Decimals: Sensible}
	for _, row := range []struct{ m, want string }{
		{"2.0", "6 ft 7 in"}, {"2.3", "7 ft 7 in"}, {"2.5", "8 ft 3 in"}, {"2.65", "8 ft 9 in"}, {"2.7", "8 ft 11 in"},
		{"2.8", "9 ft 3 in"}, {"2.9", "9 ft 7 in"}, {"3.0", "9 ft 11 in"}, {"3.1", "10 ft 3 in"}, {"3.2", "10 ft 6 in"},
		{"3.5", "11 ft 6 in"}, {"4.0", "13 ft 2 in"},
	} {
		q := mustParse(t, row.m+" m", Length)
		if got := f.Format(q, up); got != spaced(row.want) {
			t.Errorf("%s: %q, expected %q", q, got, row.want)
		}
	}
}
