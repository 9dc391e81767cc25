package reading

import (
	"strings"
	"testing"
)

// Vowels spoken, from the Carnegie Mellon pronouncing dictionary.
var spokenWords = map[int]string{
	1: `a valve hose closed pipes fridge switched through strength weighs wait edge pumps filled burned clothes yet lean
		bathes drawer grille fuse change guide we're`,
	2: `water boiler heater table handled lifted hoses switches handle station special drying drier engine safely careful
		pavement cushion sideways quiet fluid fibre cases wanted opened being hundred evening propane doesn't couldn't`,
	3: `cylinder radio area manual idea monoxide gasoline everything somebody electric carefully lithium ventilate
		battery appliance whoever element anyone horizon qualify`,
	4: `emergency regulator ability disconnected refrigerate January February carbonated`,
	5: `refrigerator electricity university`,
}

func TestSyllables(t *testing.T) {
	for want, words := range spokenWords {
		for _, w := range strings.Fields(words) {
			if got := Syllables(w); got != want {
				t.Errorf("%s: %d, not %d", w, got, want)
			}
		}
	}
}

// Our own reading aloud.
func TestSyllablesOfSymbols(t *testing.T) {
	for word, want := range map[string]int{
		"left-hand": 2, "anticlockwise": 4, "hook-up": 2, "handbrake": 2, "litre": 2, "litres": 2,
		"kg": 2, "W": 3, "kW": 4, "LED": 3, "USB": 3, "RCD": 3, "V": 1, "I": 1, "No": 1,
		"0": 2, "7": 2, "11": 3, "12": 1, "17": 3, "20": 2, "75": 4, "100": 3, "112": 5, "230": 6, "1000": 3, "2026": 7, "2000": 3,
		"2.5": 3, "10.07": 6, "3,500": 6, "1632": 10, "96011": 6, "12V": 2, "E3": 2, "3rd": 3,
		"—": 1, "café": 2,
	} {
		if got := Syllables(word); got != want {
			t.Errorf("%s: %d, not %d", word, got, want)
		}
	}
}
