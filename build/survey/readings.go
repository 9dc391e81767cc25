package survey

import (
	"path"
	"slices"
	"strings"

	"doorpocket/build/spec"
	"doorpocket/components/prose"
	"doorpocket/components/reading"
)

// EasyGrade is the grade that a tired reader still takes in, to which the words
// of the library keep.
const EasyGrade = 8

// Reading is how hard a page is to read that the operator wrote.
type Reading struct {
	File    string // below the fleet folder
	Title   string
	Counts  reading.Counts
	Hardest string // its sentence of the highest grade
}

// Hard reports whether the page asks more of a reader than the library does.
func (r Reading) Hard() bool { return r.Counts.Grade() > EasyGrade }

// gradedLanguage is the one that the grade is made for.
const gradedLanguage = "en"

// Readings grades the pages that the operator wrote, in English: own pages and
// the pages of own systems.
func Readings(op *spec.Operator) []Reading {
	var all []Reading
	if !slices.Contains(op.Languages, gradedLanguage) {
		return nil
	}
	for _, p := range op.Pages {
		if words, ok := p.Words[gradedLanguage]; ok && words.Page != nil {
			all = append(all, readingOf("pages/"+p.Name+"."+gradedLanguage+".md", words.Title, words.Page))
		}
	}
	for _, s := range op.Library.Systems() {
		if words := s.Words[gradedLanguage]; s.Own() && words != nil && words.Page != nil {
			all = append(all, readingOf(path.Join("systems", s.ID, "page."+gradedLanguage+".md"), words.Title, words.Page))
		}
	}
	return all
}

func readingOf(file, title string, page *prose.Page) Reading {
	made := Reading{File: file, Title: title}
	most := 0.0
	for _, d := range page.Docs() {
		text := d.Text(anyValue{})
		counts := reading.Count(text)
		made.Counts.Sentences += counts.Sentences
		made.Counts.Words += counts.Words
		made.Counts.Syllables += counts.Syllables
		for _, sentence := range reading.Sentences(text) {
			if grade := reading.Grade(sentence); grade > most && len(strings.Fields(sentence)) > 4 {
				most, made.Hardest = grade, strings.Join(strings.Fields(sentence), " ")
			}
		}
	}
	return made
}

// anyValue stands in for what differs from van to van: a number is read as a
// short word.
type anyValue struct{}

func (anyValue) Value(string, string) (string, bool)         { return "10", true }
func (anyValue) Link(string, string) (string, bool)          { return "#", true }
func (anyValue) Embed(string, string, string) (string, bool) { return "", true }
