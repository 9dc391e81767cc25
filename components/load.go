package components

import (
	"io/fs"
	"path"
	"slices"
	"strings"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
)

// loader reads one tree of library files. It gathers problems and goes on.
type loader struct {
	files    fs.FS
	prefix   string // shown before file names in problems
	prose    *prose.Parser
	lib      *Library
	problems problem.List
}

// read gives a file as a TOML table, nil where it cannot be read or is broken.
func (l *loader) read(name string) *manifest.Table {
	data, err := fs.ReadFile(l.files, name)
	if err != nil {
		l.problems.Errorf(problem.Span{File: l.prefix + name}, "unreadable-file", "File cannot be read", "%v", err)
		return nil
	}
	l.lib.Sources[l.prefix+name] = data
	table, found := manifest.Parse(l.prefix+name, data)
	l.problems.Add(found...)
	return table
}

// systems reads every folder FAMILY/NAME that has a system.toml.
func (l *loader) systems() {
	names, err := fs.Glob(l.files, "*/*/system.toml")
	if err != nil {
		panic(err) // the pattern is ours
	}
	slices.Sort(names)
	for _, name := range names {
		folder := path.Dir(name)
		if s := l.system(folder); s != nil {
			l.words(s, folder)
			l.lib.systems[s.ID] = s
		}
	}
}

// languages finds the languages for which a folder has a file such as
// lines.en.toml.
func (l *loader) languages(folder, stem, ending string) []string {
	names, err := fs.Glob(l.files, path.Join(folder, stem+".*"+ending))
	if err != nil {
		panic(err)
	}
	var found []string
	for _, name := range names {
		lang := strings.TrimSuffix(strings.TrimPrefix(path.Base(name), stem+"."), ending)
		found = append(found, lang)
	}
	slices.Sort(found)
	return found
}

// line compiles one line of words at a key; the empty Doc where it is absent.
func (l *loader) line(r *manifest.Reader, key string, options ...manifest.Option) prose.Doc {
	text, ok := r.Text(key, options...)
	if !ok {
		return prose.Doc{}
	}
	return l.compile(r, text, r.Span(key))
}

func (l *loader) compile(r *manifest.Reader, text string, at problem.Span) prose.Doc {
	doc, found := l.prose.Line(text, at)
	for _, p := range found {
		r.Report(p)
	}
	if !statesAssumptions(at.File) {
		for _, p := range figuresInWords(at, text) {
			r.Report(p)
		}
	}
	return doc
}

// statesAssumptions reports whether a file is words of tables: their assumptions
// name the figures that the calculations beside them take for granted.
func statesAssumptions(file string) bool { return strings.HasPrefix(path.Base(file), "tables.") }
