package components

import (
	"strings"

	"doorpocket/components/manifest"
	"doorpocket/components/prose"
)

// families reads families.toml and its words.
func (l *loader) families() {
	r := manifest.NewReader(l.read("families.toml"), &l.problems)
	for id, f := range r.EachTable() {
		family := &Family{ID: id, Words: map[string]FamilyWords{}}
		family.Letter, _ = f.Text("letter", manifest.Required)
		l.familyLetter(f, family)
		l.lib.Families = append(l.lib.Families, family)
	}
	r.Done()
	l.listWords("families", func(lang, id string, w *manifest.Reader) bool {
		f := l.lib.Family(id)
		if f == nil {
			return false
		}
		title, _ := w.Text("title", manifest.Required)
		about, _ := w.Text("about")
		f.Words[lang] = FamilyWords{Title: title, About: about}
		return true
	})
}

// lookalikes are the letters that no family may have: printed small or read in
// bad light, I looks like 1, and O and Q like 0. Other letters that look like a
// digit (B, S, Z, G, L) are told apart by their place: a label code is one
// letter and then digits, never the other way about.
const lookalikes = "IOQ"

// familyLetter looks whether a letter can begin label codes.
func (l *loader) familyLetter(r *manifest.Reader, family *Family) {
	letter := family.Letter
	if letter == "" {
		return
	}
	if len(letter) != 1 || letter < "A" || letter > "Z" || strings.Contains(lookalikes, letter) {
		r.Problem("letter", "bad-letter", "No letter for label codes: "+letter, "Use one capital letter that is not "+strings.Join(strings.Split(lookalikes, ""), ", ")+", which look like 1 and 0.")
	}
	for _, other := range l.lib.Families {
		if other.Letter == letter {
			r.Problem("letter", "duplicate-letter", "Letter "+letter+" of two families", "It is that of "+other.ID+" already: a letter says on the telephone which family is meant.")
		}
	}
}

// routines reads routines.toml and its words.
func (l *loader) routines() {
	r := manifest.NewReader(l.read("routines.toml"), &l.problems)
	for id, f := range r.EachTable() {
		l.lib.Routines = append(l.lib.Routines, l.routine(f, id))
	}
	r.Done()
	l.listWords("routines", func(lang, id string, w *manifest.Reader) bool {
		routine := l.lib.Routine(id)
		if routine == nil {
			return false
		}
		var words RoutineWords
		words.Title, _ = w.Text("title", manifest.Required)
		words.About, _ = w.Text("about", manifest.Required)
		words.Search, _ = w.Texts("words")
		routine.Words[lang] = words
		return true
	})
}

func (l *loader) routine(r *manifest.Reader, id string) *Routine {
	audience := l.oneOf(r, "for", []string{"hirer", "staff"})
	begin := l.oneOf(r, "begin", []string{"cab", "inside", "outside"})
	routine := &Routine{ID: id, Staff: audience == "staff", Begin: begin, Words: map[string]RoutineWords{}}
	routine.Facts, _ = r.Bool("facts")
	routine.Marks, _ = r.Bool("marks")
	routine.Hirer, _ = r.Bool("signed_by_hirer")
	return routine
}

// symptoms reads symptoms.toml and its words.
func (l *loader) symptoms() {
	r := manifest.NewReader(l.read("symptoms.toml"), &l.problems)
	for id, f := range r.EachTable() {
		danger, _ := f.Bool("danger")
		urgent, _ := f.Bool("urgent")
		l.lib.Symptoms = append(l.lib.Symptoms, &Symptom{ID: id, Danger: danger || urgent, Urgent: urgent, Words: map[string]SymptomWords{}})
	}
	r.Done()
	l.listWords("symptoms", func(lang, id string, w *manifest.Reader) bool {
		symptom := l.lib.Symptom(id)
		if symptom == nil {
			return false
		}
		var words SymptomWords
		words.Title, _ = w.Text("title", manifest.Required)
		words.About, _ = w.Text("about", manifest.Required)
		words.Search, _ = w.Texts("words")
		words.First = l.firstThings(w, symptom)
		symptom.Words[lang] = words
		return true
	})
}

// firstThings reads what to do before any check; where people may be hurt
// there must be some.
func (l *loader) firstThings(w *manifest.Reader, s *Symptom) []prose.Doc {
	var options []manifest.Option
	if s.Danger {
		options = append(options, manifest.Required)
	}
	lines, _ := w.Texts("first", options...)
	var docs []prose.Doc
	for _, line := range lines {
		docs = append(docs, l.compile(w, line, w.Span("first")))
	}
	return docs
}

// listWords reads the words of a list in every language; take reports whether
// it knows the id.
func (l *loader) listWords(stem string, take func(lang, id string, w *manifest.Reader) bool) {
	for _, lang := range l.languages(".", stem, ".toml") {
		r := manifest.NewReader(l.read(stem+"."+lang+".toml"), &l.problems)
		for id, w := range r.EachTable() {
			if !take(lang, id, w) {
				r.ProblemAt(w.At(), "unknown-name", "Words for \""+id+"\", which is not in "+stem+".toml",
					"Correct the name, or add it to "+stem+".toml.")
				w.Rest() // nothing can be said of its words
			}
		}
		r.Done()
	}
}

// hazards reads hazards.toml: which families and roles bring a hazard.
func (l *loader) hazards() {
	r := manifest.NewReader(l.read("hazards.toml"), &l.problems)
	for id, f := range r.EachTable() {
		h := Hazard{ID: id}
		h.Families, _ = f.Texts("families")
		h.Roles, _ = f.Texts("roles")
		h.Systems, _ = f.Texts("systems")
		l.lib.Hazards = append(l.lib.Hazards, h)
	}
	r.Done()
}

// roles reads roles.toml: what facts may mean to a computation.
func (l *loader) roles() {
	r := manifest.NewReader(l.read("roles.toml"), &l.problems)
	l.lib.Roles = map[string]Role{}
	for id, f := range r.EachTable() {
		var role Role
		role.Types, _ = f.Texts("type", manifest.Required, manifest.OrSingle)
		role.Things, _ = f.Bool("things")
		role.Takes, _ = f.Bool("takes")
		l.lib.Roles[id] = role
	}
	r.Done()
}
