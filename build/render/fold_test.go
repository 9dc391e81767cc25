package render

import (
	"bytes"
	"html/template"
	"io/fs"
	"testing"
	"testing/fstest"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/content"
	"doorpocket/layouts"
)

// Pages are the same with the words put into the templates before as with the
// words said page by page, each escaped for where it stands.
func TestPagesWithWordsInPlaceAreTheSame(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	fleet, found := spec.Load(content.Fleet(), "", lib)
	if found.HasErrors() {
		t.Fatal(found)
	}
	inPlace, err := New(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	oneByOne, err := New(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	if oneByOne.words["en"].pages, err = template.ParseFS(layouts.Files(), "pages/*.html"); err != nil {
		t.Fatal(err)
	}
	said := 0
	for _, r := range fleet.Reads()[:1] {
		var sides [2][]File
		for i, renderer := range []*Renderer{inPlace, oneByOne} {
			kit := guide.NewKit(&fleet.Operator, "en")
			g, _ := kit.Build(r.Van)
			pages, err := renderer.Van(g)
			if err != nil {
				t.Fatal(err)
			}
			sides[i] = pages
			err = renderer.StaffVan(kit, g, r, nil, func(f File) error {
				sides[i] = append(sides[i], File{f.Path, bytes.Clone(f.Data)})
				return nil
			})
			if err != nil {
				t.Fatal(err)
			}
		}
		for i, page := range sides[0] {
			if said++; !bytes.Equal(page.Data, sides[1][i].Data) {
				t.Errorf("%s is another page", page.Path)
			}
		}
	}
	if said < 50 {
		t.Errorf("only %d pages compared", said)
	}
}

// A template that says words which there are not is refused at once.
func TestTemplatesSayWordsThereAre(t *testing.T) {
	files := fstest.MapFS{}
	all := layouts.Files()
	err := fs.WalkDir(all, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := fs.ReadFile(all, name)
		files[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := New(files); err != nil {
		t.Fatal(err)
	}
	files["pages/extra.html"] = &fstest.MapFile{Data: []byte(`{{define "extra"}}{{range .Vans}}{{if .}}{{$.W.Say "no_such_words"}}{{end}}{{end}}{{end}}`)}
	if _, err := New(files); err == nil || err.Error() != `words.en.toml: page templates: no words for "no_such_words"` {
		t.Error(err)
	}
}
