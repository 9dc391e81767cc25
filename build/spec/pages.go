package spec

import (
	"bytes"
	"io/fs"
	"path"
	"slices"
	"strings"

	"doorpocket/components"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
)

// readPages reads the operator's own pages, pages/NAME.LANG.md. The first line
// is the title: "# Our sites".
func (l *loader) readPages() {
	files, err := fs.Glob(l.files, "pages/*.md")
	if err != nil {
		panic(err) // the pattern is ours
	}
	slices.Sort(files)
	pages := map[string]*OwnPage{}
	for _, file := range files {
		name, lang, ok := strings.Cut(strings.TrimSuffix(path.Base(file), ".md"), ".")
		if !ok || !validName(name) || !slices.Contains(l.fleet.Languages, lang) {
			l.problems.Errorf(l.span(file), "bad-name", "Page with a name that is not understood",
				"Pages are called name.language.md in a language of the fleet, for example pages/our-sites.en.md. "+nameRule)
			continue
		}
		if pages[name] == nil {
			pages[name] = &OwnPage{Name: name, Words: map[string]OwnWords{}}
			l.fleet.Pages = append(l.fleet.Pages, pages[name])
		}
		pages[name].Words[lang] = l.ownPage(file)
	}
}

func (l *loader) ownPage(file string) OwnWords {
	data, err := fs.ReadFile(l.files, file)
	if err != nil {
		l.problems.Errorf(l.span(file), "unreadable-file", "File cannot be read", "%v", err)
		return OwnWords{Page: &prose.Page{}}
	}
	l.fleet.Sources[l.prefix+file] = data
	text, found := manifest.Text(l.prefix+file, data)
	l.problems.Add(found...)
	first, rest, _ := bytes.Cut(text, []byte("\n"))
	title, ok := strings.CutPrefix(strings.TrimSpace(string(first)), "# ")
	if !ok && text != nil {
		l.problems.Add(problem.New(problem.Error, problem.Span{File: l.prefix + file, Start: problem.Pos{Line: 1, Column: 1}},
			"missing-title", "Page without a title", "Begin it with a line such as: # Our sites"))
	}
	l.problems.Add(components.FiguresInWords(l.prefix+file, text)...)
	page, problems := l.prose.Page(l.prefix+file, append([]byte("\n"), rest...))
	l.problems.Add(problems...)
	l.problems.Add(l.fleet.Library.CheckPage(page)...)
	l.noPictures(page)
	return OwnWords{Title: strings.TrimSpace(title), Page: page}
}

// checkPageLinks looks whether the pages lead to pages that there are, and to
// names that some van has; on a van without one the link is plain text.
func (l *loader) checkPageLinks(vans []Summary) {
	valid := map[string][]string{"page": {}, "fitted": {}}
	for _, p := range l.fleet.Pages {
		valid["page"] = append(valid["page"], p.Name)
	}
	valid["fitted"] = append(valid["fitted"], namesInFleet(vans)...)
	for _, own := range l.fleet.Pages {
		for _, words := range own.Words {
			for _, d := range words.Page.Docs() {
				for _, link := range d.Links() {
					l.checkPageLink(link, valid[link.Scheme])
				}
			}
		}
	}
}

func (l *loader) checkPageLink(link prose.Piece, valid []string) {
	if valid == nil || slices.Contains(valid, link.Name) {
		return
	}
	detail := "No van has anything of this name. Correct it, or link to a system."
	if link.Scheme == "page" {
		detail = "There is no page pages/" + link.Name + ".LANG.md. Correct the name, or write it."
	}
	if near := problem.Nearest(link.Name, valid); near != "" {
		detail = "Did you mean \"" + near + "\"?"
	}
	l.problems.Add(problem.New(problem.Error, link.At, "unknown-name", "Unknown "+link.Scheme+" \""+link.Name+"\"", detail))
}
