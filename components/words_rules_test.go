package components_test

import (
	"regexp"
	"strings"
	"testing"

	"doorpocket/components/reading"
)

// rules are forms that no words for readers may hold.
var rules = []struct {
	what string
	form *regexp.Regexp
}{
	{"a word that belittles:", regexp.MustCompile(`(?i)\b(?:simply|just|eas(?:y|ily|ier)|obviously|please note|of course|needless to say)\b`)},
	{"a dash as an aside:", regexp.MustCompile(`—| – | -- `)},
	{"a hole in a sentence:", regexp.MustCompile(`(?:^|\s)[.,;:!?](?:\s|$)`)},
	{"not British:", regexp.MustCompile(`(?i)\b(?:colors?|centers?|gray|aluminum|tires?|faucets?|liters?|fibers?|neighbors?|odors?|vapors?|molds?|` +
		`labeled|traveled|leveled|leveling|fueling|canceled|favorites?|flashlights?|windshields?|sidewalks?|trunk|curbs?|trash|garbage|analyze|catalog|` +
		`dryer air|kilometers?|meters? (?:long|high|wide|away|from)|check engine|gas station|license plate|driver'?s? license)\b`)},
}

// checkSentences tells of every sentence that is too long or breaks a rule.
func checkSentences(text string, fault func(what, text string)) {
	for _, s := range reading.Sentences(text) {
		if n := len(reading.Words(s)); n > longestSentence {
			fault("a long sentence", s)
		}
		checkRules(s, fault)
	}
}

func checkRules(text string, fault func(what, text string)) {
	for _, rule := range rules {
		if found := rule.form.FindString(text); found != "" {
			fault(rule.what+" "+found, text)
		}
	}
}

var (
	placeholder = regexp.MustCompile(`\{\$[^}]*\}`)
	attribute   = regexp.MustCompile(`\{when=[^}]*\}`)
	searchWords = regexp.MustCompile(`^(?:words|\s+)\s*=?\s*\[?\s*"`)
)

// bareFigure finds a figure with a unit in a line of words as it is written, ""
// for none. Search words are what people type, and may hold anything.
func bareFigure(line string) string {
	if searchWords.MatchString(line) {
		return ""
	}
	return reading.Figure(attribute.ReplaceAllString(placeholder.ReplaceAllString(line, "x"), ""))
}

func TestBareFigure(t *testing.T) {
	for line, want := range map[string]string{
		"Wait 5 min.": "5 min", "at 60 °C or": "60 °C", "1 L.": "1 L", "a 25-metre lead": "25-metre", "fill to 80%": "80%",
		"Wait {$cool}.":                       "",
		"{$front :unit unit=psi} is":          "",
		`## Cold {when="frost < 5 °C"}`:       "",
		"the 12-volt panel, 230 V":            "",
		"1. Close it":                         "",
		"call 112 at once":                    "",
		`words = ["5 bar", "12 V"]`:           "",
		`         "5 bar", "how much is 1 l"`: "",
	} {
		if got := bareFigure(line); got != want {
			t.Errorf("%s: %q, not %q", line, got, want)
		}
	}
}

func TestRules(t *testing.T) {
	for text, want := range map[string]int{
		"Simply turn it.": 1, "It is easy.": 1, "Just wait — a minute.": 2, "Wait – there.": 1, "Adjust the chair in the centre.": 0,
		"The color of the tires.": 1, "Tired? Close the tyre valve.": 0, "It is at .": 1, "Wait until it is hot, 2.5 bar at most.": 0,
		strings.Repeat("word ", 25) + "end.": 1, strings.Repeat("word ", 25) + ".": 1, strings.Repeat("word ", 24) + "end.": 0,
	} {
		n := 0
		checkSentences(text, func(string, string) { n++ })
		if n != want {
			t.Errorf("%s: %d faults, not %d", text, n, want)
		}
	}
}
