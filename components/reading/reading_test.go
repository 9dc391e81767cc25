package reading

import (
	"math"
	"strings"
	"testing"
)

// Published worked examples of the formula: counts and the grade printed.
var published = []struct {
	name   string
	counts Counts
	grade  float64
	within float64 // half of the last digit printed
	source string
}{
	{"a children's book, 5.7 words a sentence and 1.02 syllables a word", Counts{Sentences: 1000, Words: 5700, Syllables: 5814}, -1.3, 0.05,
		"two weblogs (one of 2007) that quote the encyclopaedia article on the measure"},
	{"the lowest grade there is: sentences of one word of one syllable", Counts{Sentences: 1, Words: 1, Syllables: 1}, -3.4, 0.05,
		"the same two"},
	{"six words of one syllable", Counts{Sentences: 1, Words: 6, Syllables: 6}, -1.45, 0.005,
		"computed from the formula"},
	{"13 words, 24 syllables", Counts{Sentences: 1, Words: 13, Syllables: 24}, 11.3, 0.05,
		"the encyclopaedia article, from memory; the formula gives 11.265"},
}

func TestGradePublished(t *testing.T) {
	for _, p := range published {
		if got := p.counts.Grade(); math.Abs(got-p.grade) > p.within {
			t.Errorf("%s: grade %.3f, not %.3f (%s)", p.name, got, p.grade, p.source)
		}
	}
}

// The same figures from texts, so that sentences, words and syllables are
// counted too.
func TestGradeOfText(t *testing.T) {
	for text, want := range map[string]float64{
		"Go.":                     -3.4,
		"Go. Go. Stop!":           -3.4,
		"The cat sat on the mat.": -1.45,
		"The cat sat on the mat.\n\nThe cat sat on the mat.": -1.45,
	} {
		if got := Grade(text); math.Abs(got-want) > 0.05 {
			t.Errorf("%q: grade %.3f, not %.2f (%+v)", text, got, want, Count(text))
		}
	}
	for _, text := range []string{"", " \n\n ", "- \n- ", "…", "— !"} {
		if got := Grade(text); got != 0 {
			t.Errorf("%q has no words, but grade %v", text, got)
		}
	}
}

// Longer sentences and longer words make a text harder, and repeating a text
// changes nothing.
func TestGradeProperties(t *testing.T) {
	text := "Close the valve of every cylinder. Wait one minute before you drive. Look at the gauge."
	base := Grade(text)
	if joined := Grade(strings.Replace(text, ". Wait", " and wait", 1)); joined <= base {
		t.Errorf("a longer sentence is not harder: %v, %v", joined, base)
	}
	if longer := Grade(strings.Replace(text, "gauge", "installation", 1)); longer <= base {
		t.Errorf("a longer word is not harder: %v, %v", longer, base)
	}
	if twice := Grade(text + "\n\n" + text); math.Abs(twice-base) > 1e-9 {
		t.Errorf("the same text twice: %v, not %v", twice, base)
	}
}
