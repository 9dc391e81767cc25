package reading

import (
	"slices"
	"testing"
)

func TestFigures(t *testing.T) {
	for text, want := range map[string][]string{
		"Wait 5 min.":                              {"5 min"},
		"from 10 to 15 minutes":                    {"15 minutes"},
		"5 min, 60 °C and 2,500 W":                 {"5 min", "60 °C", "2,500 W"},
		"1 L 2 L":                                  {"1 L", "2 L"},
		"a 25-metre lead":                          {"25-metre"},
		"fill to 80%, or 80 per cent":              {"80%", "80 per cent"},
		"3.5 t at most":                            {"3.5 t"},
		"about 12 inches, 30cm":                    {"12 inches", "30cm"},
		"2\u00a0kg":                                {"2\u00a0kg"},
		"45 psi (3.1 bar, 310 kPa)":                {"45 psi", "3.1 bar", "310 kPa"},
		"20 miles, 5 gallons, 11 lb":               {"20 miles", "5 gallons", "11 lb"},
		"2.5 mm² of copper, 120 Ah, 40 Wh, 300 mA": {"2.5 mm²", "120 Ah", "40 Wh", "300 mA"},
		"3 nights, 2 weeks":                        {"3 nights", "2 weeks"},
		"tilt it 10 degrees, or 10°":               {"10 degrees", "10°"},
		"the 12-volt panel, 230 V, 24 V":           nil, // names of systems
		"1. Close it":                              nil,
		"call 112 at once":                         nil,
		"two people, 4 berths, label G1":           nil,
		"page 3 and 4 of 5":                        nil,
		"on 2 October 2026":                        nil,
		"EN 1646-1, H07RN-F 3G2.5":                 nil,
		"4 metalworkers":                           nil, // the unit is a whole word
	} {
		if got := Figures(text); !slices.Equal(got, want) {
			t.Errorf("%s: %q, expected %q", text, got, want)
		}
		first := ""
		if len(want) > 0 {
			first = want[0]
		}
		if got := Figure(text); got != first {
			t.Errorf("%s: %q comes first, not %q", text, got, first)
		}
	}
}
