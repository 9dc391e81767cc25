// Package render turns guides into the bytes of pages. Templates, styles and
// words are read once, by New; a page is then only filled in.
package render

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"html/template"
	"io/fs"
	"path"
	"strings"

	"doorpocket/build/offline"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// Renderer holds what all pages are made of. It is safe for concurrent use.
type Renderer struct {
	sheet       sheet
	early       template.JS // what a hirer's page does before it is shown
	earlySum    []byte      // by which a policy lets it
	staffSheet  sheet
	words       map[string]*Words
	coloured    kept[string, template.HTML] // listings marked up, by text
	signs       map[string]template.HTML
	shared      []Shared
	staffShared []Shared
	listed      []offline.File // the shared files, for the lists of phones
	worker      []byte         // the script that keeps a guide on a phone
}

// Shared is a file that pages of all vans use.
type Shared struct {
	Path string // below the hirer tree
	Data []byte
}

// Shared lists the files that pages of all vans use.
func (r *Renderer) Shared() []Shared { return r.shared }

// New reads the layouts.
func New(files fs.FS) (*Renderer, error) {
	r := &Renderer{words: map[string]*Words{}, signs: map[string]template.HTML{}, coloured: kept[string, template.HTML]{most: colouredMost}}
	for _, read := range []func(fs.FS) error{r.readStyle, r.readSigns, r.readWords, r.readScripts} {
		if err := read(files); err != nil {
			return nil, err
		}
	}
	return r, nil
}

// readStyle takes the style sheets, and from the scripts the classes that they
// give.
func (r *Renderer) readStyle(files fs.FS) error {
	page, err := fs.ReadFile(files, "styles/page.css")
	if err != nil {
		return fmt.Errorf("style sheet: %w", err)
	}
	staff, err := fs.ReadFile(files, "styles/staff.css")
	if err != nil {
		return fmt.Errorf("style sheet: %w", err)
	}
	names, err := fs.Glob(files, "scripts/*.js")
	if err != nil {
		return err
	}
	scripts := map[string]string{}
	for _, name := range names {
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return fmt.Errorf("script: %w", err)
		}
		scripts[strings.TrimSuffix(path.Base(name), ".js")] = string(data)
	}
	scripts[""] = scripts["early"] // which stands in every page
	r.early, r.earlySum = template.JS(scripts["early"]), sourceSum([]byte(scripts["early"]))
	r.sheet = newSheet(string(page), scripts)
	r.staffSheet = newSheet(string(page)+string(staff), scripts)
	return nil
}

// compact drops comments and line breaks; our own sheets have neither inside
// strings.
func compact(sheet string) string {
	var b strings.Builder
	for sheet != "" {
		before, rest, found := strings.Cut(sheet, "/*")
		b.WriteString(before)
		if !found {
			break
		}
		_, sheet, _ = strings.Cut(rest, "*/")
	}
	var lines []string
	for line := range strings.Lines(b.String()) {
		lines = append(lines, strings.TrimSpace(line))
	}
	return strings.Join(lines, "")
}

func (r *Renderer) readSigns(files fs.FS) error {
	names, err := fs.Glob(files, "signs/*.svg")
	if err != nil {
		return err
	}
	for _, name := range names {
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return fmt.Errorf("sign: %w", err)
		}
		r.signs[strings.TrimSuffix(path.Base(name), ".svg")] = template.HTML(bytes.TrimSpace(data))
	}
	return nil
}

func (r *Renderer) readWords(files fs.FS) error {
	pages, err := template.ParseFS(files, "pages/*.html")
	if err != nil {
		return fmt.Errorf("page templates: %w", err)
	}
	names, err := fs.Glob(files, "words.*.toml")
	if err != nil {
		return err
	}
	for _, name := range names {
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return fmt.Errorf("words: %w", err)
		}
		table, found := manifest.Parse(name, data)
		if len(found) > 0 {
			return fmt.Errorf("words: %s", found[0])
		}
		words, problems := newWords(table)
		if len(problems) > 0 {
			return fmt.Errorf("words: %s", problems[0])
		}
		if words.pages, err = inWords(pages, words); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		lang := strings.Split(name, ".")[1]
		words.RightToLeft = rightToLeft(lang)
		r.words[lang] = words
	}
	return nil
}

// readScripts reads the worker, and names the other scripts by their content, so
// that a host may let phones keep them for good.
func (r *Renderer) readScripts(files fs.FS) error {
	var err error
	if r.worker, err = fs.ReadFile(files, "scripts/worker.js"); err != nil {
		return fmt.Errorf("script: %w", err)
	}
	for _, name := range []string{"thirdparty/minisearch/minisearch.js", "scripts/search.js", "scripts/tick.js", "scripts/lost.js", "scripts/routine.js", "scripts/guide.js"} {
		s, err := readScript(files, name)
		if err != nil {
			return err
		}
		r.shared = append(r.shared, s)
		r.listed = append(r.listed, offline.File{Path: s.Path, Sum: offline.Sum(s.Data)})
	}
	for _, name := range []string{"scripts/due.js", "scripts/sift.js"} {
		s, err := readScript(files, name)
		if err != nil {
			return err
		}
		r.staffShared = append(r.staffShared, s)
	}
	return nil
}

func readScript(files fs.FS, name string) (Shared, error) {
	data, err := fs.ReadFile(files, name)
	if err != nil {
		return Shared{}, fmt.Errorf("script: %w", err)
	}
	sum := sha256.Sum256(data)
	base := strings.TrimSuffix(path.Base(name), ".js")
	return Shared{Path: fmt.Sprintf("parts/%s-%x.js", base, sum[:5]), Data: data}, nil
}

// script gives the path of a script below the hirer tree.
func (r *Renderer) script(name string) string {
	for _, s := range r.shared {
		if strings.HasPrefix(s.Path, "parts/"+name+"-") {
			return s.Path
		}
	}
	panic("no script " + name) // the names are ours
}

// staffScript gives the path of a script below the staff tree.
func (r *Renderer) staffScript(name string) string {
	for _, s := range r.staffShared {
		if strings.HasPrefix(s.Path, "parts/"+name+"-") {
			return s.Path
		}
	}
	panic("no script " + name) // the names are ours
}

// Words are the words of the interface in one language, and the page templates
// with them in place.
type Words struct {
	// RightToLeft tells that the language is written from right to left.
	RightToLeft bool
	texts       map[string]string
	pages       *template.Template
	fragments   kept[any, template.HTML]
}

func newWords(table *manifest.Table) (*Words, problem.List) {
	var found problem.List
	w := &Words{texts: map[string]string{}, fragments: kept[any, template.HTML]{most: fragmentsMost}}
	r := manifest.NewReader(table, &found)
	for _, key := range r.Keys() {
		if text, ok := r.Text(key.Name, manifest.Required); ok {
			w.texts[key.Name] = text
		}
	}
	return w, found
}

// Words gives the words of the interface in one language.
func (r *Renderer) Words(lang string) (*Words, error) {
	w := r.words[lang]
	if w == nil {
		return nil, fmt.Errorf("the interface has no words for language %q: add layouts/words.%s.toml", lang, lang)
	}
	return w, nil
}

// Say gives the words for a key with placeholders filled in: names and values
// in turn. A key without words is a mistake in the layouts, and an error.
func (w *Words) Say(key string, pairs ...any) (string, error) {
	text, ok := w.texts[key]
	if !ok {
		return "", fmt.Errorf("no words for %q", key)
	}
	for i := 0; i+1 < len(pairs); i += 2 {
		text = strings.ReplaceAll(text, fmt.Sprintf("{$%v}", pairs[i]), w.Apart(fmt.Sprint(pairs[i+1])))
	}
	return text, nil
}

// must is Say for keys that our own code names: a test looks that all exist.
func (w *Words) must(key string, pairs ...any) string {
	text, err := w.Say(key, pairs...)
	if err != nil {
		panic(err)
	}
	return text
}
