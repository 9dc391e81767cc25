package search_test

import (
	"encoding/json"
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/guide"
	"doorpocket/build/sample"
	"doorpocket/build/search"
	"doorpocket/build/spec"
	"doorpocket/components"
)

// hostile is a title that would end a script, were it written as it is.
const hostile = `</script><script>alert(1)</script><!-- ` + "\u2028\u2029" + ` "quoted" \`

// built is the guide of a van with a pump and an own page.
func built(t *testing.T) *guide.Guide {
	t.Helper()
	lib, _ := components.Load(components.Embedded())
	title, err := json.Marshal(hostile)
	if err != nil {
		t.Fatal(err)
	}
	fleet, found := spec.Load(fstest.MapFS{
		"fleet.toml":        {Data: []byte(sample.FleetTOML)},
		"pages/sites.en.md": {Data: []byte("# Our sites\n\nWe like {$van.name}.\n\n## By the sea\n\nSand.\n")},
		"vans/a.toml": {Data: []byte("code = \"RW\"\nname = \"Rowan\"\nspec_date = 2026-10-02\n" + sample.Body +
			"[fitted.pump]\nsystem = \"water/pump\"\nlabel = \"W1\"\ntitle = " + string(title) + "\nkind = \"pressure\"\nswitch = \"own-switch\"\n")},
	}, "", lib)
	if found.HasErrors() {
		t.Fatal(found)
	}
	g, problems := guide.NewKit(&fleet.Operator, "en").Build(fleet.Vans[0])
	if problems.HasErrors() {
		t.Fatal(problems)
	}
	return g
}

// Every page of a guide is one document that leads to it, dangers first.
func TestDocuments(t *testing.T) {
	g := built(t)
	documents := search.Documents(g, english)
	if want := len(g.Symptoms) + len(g.Routines) + len(g.Pages) + 1; len(documents) != want {
		t.Errorf("%d documents, not %d", len(documents), want)
	}
	order := map[string]int{"danger": 0, "symptom": 1, "routine": 2, "page": 3}
	at := 0
	paths := map[string]bool{}
	for i, d := range documents {
		rank, known := order[d.Kind]
		if !known || rank < at && !(at == 1 && rank == 0) {
			t.Errorf("%s %q stands after a later kind", d.Kind, d.Title)
		}
		at = max(at, rank)
		if d.ID != i || paths[d.Path] || !strings.HasSuffix(d.Path, "/index.html") || strings.HasPrefix(d.Path, "/") {
			t.Errorf("%d: %+v", i, d)
		}
		if d.Title == "" || d.Kind != "page" && (d.About == "" || d.Words == "") {
			t.Errorf("says nothing: %+v", d)
		}
		if text := d.Title + d.About + d.Words + strings.Join(d.Lines, " "); strings.Contains(text, "{$") {
			t.Errorf("an unfilled hole: %+v", d)
		}
		paths[d.Path] = true
	}
	if documents[0].Kind != "danger" {
		t.Errorf("first is %+v", documents[0])
	}
}

// A page is found by its code, the words of the library and the operator's own
// title; an own page by all it says.
func TestWhatADocumentHolds(t *testing.T) {
	var pump, own search.Document
	for _, d := range search.Documents(built(t), english) {
		switch {
		case d.Code == "W1":
			pump = d
		case d.Title == "Our sites":
			own = d
		}
	}
	if pump.Path != "W1/index.html" || !strings.Contains(pump.Words, "pump") || pump.About == "" || pump.Title == "" {
		t.Errorf("%+v", pump)
	}
	if !strings.Contains(strings.Join(own.Lines, " "), "We like Rowan.") || !strings.Contains(own.Words, "By the sea") {
		t.Errorf("%+v", own)
	}
}

// What a van no longer has is found last, by the code on its label.
func TestOldLabelIsFound(t *testing.T) {
	g := built(t)
	g.Gone = []*guide.Gone{{Code: "K7", Path: "K7/", Title: "Microwave"}}
	l := english
	l.OldLabel = "An old label"
	l.WasFor = func(x *guide.Gone) string { return x.Code + " was for: " + x.Title }
	documents := search.Documents(g, l)
	got := documents[len(documents)-1]
	if got.Kind != "gone" || got.Code != "K7" || got.Path != "K7/index.html" || got.Title != "An old label" || got.About != "K7 was for: Microwave" {
		t.Errorf("%+v", got)
	}
}

var english = search.Language{Idle: "the", Trouble: "not", Endings: "s"}

// The documents are data in a script: no text can end it or begin another.
func TestScriptHoldsNoMarkup(t *testing.T) {
	g := built(t)
	script := string(search.Script(g, english))
	for _, bad := range []string{"<", ">", "\u2028", "\u2029"} {
		if strings.Contains(script, bad) {
			t.Errorf("the script holds %q", bad)
		}
	}
	data, ok := strings.CutPrefix(script, "window.guideDocuments=")
	data, ends := strings.CutSuffix(data, ";\n")
	var held struct {
		Idle, Trouble, Endings string
		Documents              []search.Document
	}
	if err := json.Unmarshal([]byte(data), &held); !ok || !ends || err != nil {
		t.Fatal(ok, ends, err)
	}
	found := false
	for _, d := range held.Documents {
		found = found || strings.Contains(d.Title, "</script><script>")
	}
	if !found || len(held.Documents) != len(search.Documents(g, english)) || held.Idle != "the" || held.Trouble != "not" || held.Endings != "s" {
		t.Error("the title is lost")
	}
	if again := search.Script(g, english); string(again) != script {
		t.Error("another script for the same guide")
	}
}
