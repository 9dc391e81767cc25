package components

import (
	"strconv"
	"strings"

	"doorpocket/components/manifest"
)

// ValueWords is how values are put into sentences in one language.
type ValueWords struct {
	Yes, No, And string
	date         string
	months       []string
}

// Date is a day in words.
func (w ValueWords) Date(d manifest.Date) string {
	return strings.NewReplacer(
		"{$day}", strconv.Itoa(d.Day), "{$month}", w.months[d.Month-1], "{$year}", strconv.Itoa(d.Year),
	).Replace(w.date)
}

// List is names joined as in a sentence: "a, b and c".
func (w ValueWords) List(names []string) string {
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " " + w.And + " " + names[n-1]
	}
	return strings.Join(names, "")
}

// values reads values.LANG.toml.
func (l *loader) values() {
	l.lib.Values = map[string]ValueWords{}
	for _, lang := range l.languages(".", "values", ".toml") {
		r := manifest.NewReader(l.read("values."+lang+".toml"), &l.problems)
		var w ValueWords
		w.Yes, _ = r.Text("yes", manifest.Required)
		w.No, _ = r.Text("no", manifest.Required)
		w.And, _ = r.Text("and", manifest.Required)
		w.date, _ = r.Text("date", manifest.Required)
		w.months, _ = r.Texts("months", manifest.Required)
		if len(w.months) != 12 {
			r.Problem("months", "wrong-count", "Not twelve months", "Write the names of the twelve months in order.")
			continue
		}
		r.Done()
		l.lib.Values[lang] = w
	}
}
