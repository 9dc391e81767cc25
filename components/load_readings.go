package components

import "doorpocket/components/manifest"

// readings reads readings.toml, what is written down when a van changes hands,
// and its words.
func (l *loader) readings() {
	r := manifest.NewReader(l.read("readings.toml"), &l.problems)
	for id, t := range r.EachTable() {
		if !idForm.MatchString(id) {
			r.ProblemAt(t.At(), "bad-name", "A reading cannot be called "+id, "Use small letters, digits and hyphens, a letter first.")
		}
		reading := &Reading{ID: id, At: t.At(), Words: map[string]ReadingWords{}}
		reading.Scale = Scale(l.oneOf(t, "scale", scales))
		reading.Has = l.signs(t, "has")
		reading.Each, _ = t.Text("each")
		reading.Sheets, _ = t.Texts("sheets", manifest.Required, manifest.Example(`["handover"]`))
		l.lib.Readings = append(l.lib.Readings, reading)
	}
	r.Done()
	l.listWords("readings", func(lang, id string, w *manifest.Reader) bool {
		reading := l.lib.Reading(id)
		if reading == nil {
			return false
		}
		var words ReadingWords
		words.Title, _ = w.Text("title", manifest.Required)
		words.Unit, _ = w.Text("unit")
		words.Tell = l.line(w, "tell")
		reading.Words[lang] = words
		return true
	})
}
