// Package reading tells how hard a text is to read, so that a test can hold
// the words of the library to what a tired person can take in.
//
// The measure is the Flesch-Kincaid grade: the years of school that a reader
// needs. It knows only the lengths of sentences and of words, so a low grade
// proves nothing about sense; a high one is a sure sign of trouble.
package reading

// Counts is what the grade is worked out from.
type Counts struct{ Sentences, Words, Syllables int }

// Count counts the sentences, words and syllables of a text in English.
func Count(text string) Counts {
	var c Counts
	for _, sentence := range Sentences(text) {
		words := Words(sentence)
		if len(words) == 0 {
			continue
		}
		c.Sentences++
		c.Words += len(words)
		for _, w := range words {
			c.Syllables += Syllables(w)
		}
	}
	return c
}

// Grade is the Flesch-Kincaid grade of a text, 0 for a text without words.
func Grade(text string) float64 { return Count(text).Grade() }

// Grade is the Flesch-Kincaid grade:
//
//	0.39 words/sentences + 11.8 syllables/words - 15.59
//
// It is meant for running English of a hundred words or more; in a shorter
// text one long word moves it by a grade.
//
// Source: archived pages of a US veterans' research site (2008) and four
// others that print the same formula.
func (c Counts) Grade() float64 {
	if c.Words == 0 {
		return 0
	}
	return 0.39*ratio(c.Words, c.Sentences) + 11.8*ratio(c.Syllables, c.Words) - 15.59
}

func ratio(a, b int) float64 { return float64(a) / float64(b) }
