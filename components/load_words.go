package components

import (
	"io/fs"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
)

// words reads lines.LANG.toml and page.LANG.md of every language there is.
func (l *loader) words(s *System, folder string) {
	for _, lang := range l.languages(folder, "lines", ".toml") {
		if w := l.lines(folder + "/lines." + lang + ".toml"); w != nil {
			w.Page = l.page(folder + "/page." + lang + ".md")
			s.Words[lang] = w
		}
	}
}

func (l *loader) page(name string) *prose.Page {
	data, err := fs.ReadFile(l.files, name)
	if err != nil {
		l.problems.Errorf(problem.Span{File: l.prefix + name}, "missing-page", "The page is missing",
			"Every language that has lines needs a page beside them: write %s.", l.prefix+name)
		return &prose.Page{}
	}
	l.lib.Sources[l.prefix+name] = data
	text, found := manifest.Text(l.prefix+name, data)
	l.problems.Add(found...)
	l.problems.Add(FiguresInWords(l.prefix+name, text)...)
	page, found := l.prose.Page(l.prefix+name, text)
	l.problems.Add(found...)
	return page
}

func (l *loader) lines(name string) *Words {
	table := l.read(name)
	if table == nil {
		return nil
	}
	r := manifest.NewReader(table, &l.problems)
	facts := r.Table("fact")
	w := &Words{
		Facts: textsOf(facts), Choices: map[string]map[string]string{},
		Cautions: map[string]CautionWords{}, Steps: map[string]prose.Doc{}, Checks: map[string]CheckWords{}, places: places{},
	}
	w.places.keys("fact", facts)
	w.Title, _ = r.Text("title", manifest.Required)
	w.About = l.line(r, "about", manifest.Required)
	w.Search, _ = r.Texts("words", manifest.Required)
	for name, c := range r.Each("choice") {
		w.Choices[name] = textsOf(c)
		w.places["choice "+name] = c.At()
		w.places.keys("choice "+name, c)
	}
	for id, c := range r.Each("caution") {
		w.places["caution "+id] = c.At()
		w.Cautions[id] = CautionWords{
			Hazard:      l.line(c, "hazard", manifest.Required),
			Consequence: l.line(c, "consequence", manifest.Required),
			Avoid:       l.line(c, "avoid", manifest.Required),
		}
	}
	steps := r.Table("step")
	w.places.keys("step", steps)
	for _, key := range steps.Keys() {
		w.Steps[key.Name] = l.line(steps, key.Name, manifest.Required)
	}
	for id, c := range r.Each("check") {
		w.places["check "+id] = c.At()
		w.Checks[id] = CheckWords{Look: l.line(c, "look", manifest.Required), Yes: l.line(c, "yes"), No: l.line(c, "no")}
	}
	r.Done()
	return w
}

// keys notes where the keys of a table stand.
func (p places) keys(of string, r *manifest.Reader) {
	for _, key := range r.Keys() {
		p[of+" "+key.Name] = r.KeySpan(key.Name)
	}
}

// textsOf reads a table of which every value is a text.
func textsOf(r *manifest.Reader) map[string]string {
	texts := map[string]string{}
	for _, key := range r.Keys() {
		if text, ok := r.Text(key.Name, manifest.Required); ok {
			texts[key.Name] = text
		}
	}
	return texts
}
