package schema

import (
	"regexp"
	"testing"

	"doorpocket/components/quantity"
)

// What a spec may write for a quantity matches the pattern of its dimension,
// whichever way the unit is spelled; a number without unit, a comma and words do
// not.
func TestPattern(t *testing.T) {
	for _, dim := range quantity.Dimensions() {
		shape := regexp.MustCompile(pattern(dim))
		for _, spelling := range quantity.Spellings(dim) {
			for _, text := range []string{"5 " + spelling, "5.25" + spelling, " 1 000 " + spelling, "-1 " + spelling} {
				if _, err := quantity.Parse(text, dim); err == nil && !shape.MatchString(text) {
					t.Errorf("%s: %q is right and does not match", dim, text)
				}
			}
		}
		for _, text := range []string{"", "5,5 bar", "five", "5 furlongs", "5 5.5", "NaN", "1e3 kg"} {
			if shape.MatchString(text) {
				t.Errorf("%s: %q matches", dim, text)
			}
		}
		if text := "7"; dim != quantity.Ratio && shape.MatchString(text) {
			t.Errorf("%s: %q matches", dim, text)
		}
	}
	for dim, text := range map[quantity.Dimension]string{quantity.Length: "9 ft 2 in", quantity.Time: "5 h 40 min", quantity.Ratio: "0.85"} {
		if !regexp.MustCompile(pattern(dim)).MatchString(text) {
			t.Errorf("%s: %q does not match", dim, text)
		}
	}
}
