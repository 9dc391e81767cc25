package components

import "doorpocket/components/manifest"

// mostYears is the longest life that makes sense: a life of more is a mistake.
const mostYears = 40

// due reads due.toml, what falls due, and its words.
func (l *loader) due() {
	r := manifest.NewReader(l.read("due.toml"), &l.problems)
	for name, t := range r.EachTable() {
		if !idForm.MatchString(name) {
			r.ProblemAt(t.At(), "bad-name", "A duty cannot be called "+name, "Use small letters, digits and hyphens, a letter first.")
		}
		d := &Duty{Name: name, At: t.At(), Words: map[string]DutyWords{}}
		d.Staff, _ = t.Text("staff")
		d.Years, _ = t.Int("years", 1, mostYears)
		d.System, _ = t.Text("system")
		d.Fact, _ = t.Text("fact")
		d.Has = l.signs(t, "has")
		if (d.Staff == "") == (d.System == "") || (d.System == "") != (d.Fact == "") || (d.Years > 0 && d.Staff == "") {
			r.ProblemAt(t.At(), "bad-duty", "Where the day of "+name+" stands is not clear",
				"Write staff, with years where it is the day of making; or system and fact.")
		}
		l.lib.Duties = append(l.lib.Duties, d)
	}
	r.Done()
	l.listWords("due", func(lang, name string, w *manifest.Reader) bool {
		d := l.lib.Duty(name)
		if d == nil {
			return false
		}
		title, _ := w.Text("title", manifest.Required)
		reason, _ := w.Text("reason", manifest.Required)
		d.Words[lang] = DutyWords{Title: title, Reason: reason}
		return true
	})
}
