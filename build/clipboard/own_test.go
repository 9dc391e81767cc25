package clipboard_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/spec"
)

// own is a small fleet with words that are not English, a list of its own that
// a hirer signs, and a gauge of hours.
func own(conditions string) fstest.MapFS {
	file := func(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }
	return fstest.MapFS{
		"fleet.toml": file(`name = "Küstenmöwe Wohnmobile"
address   = "https://guide.kueste.example"
languages = ["en"]
[call]
helpline  = "+44 1632 960178"
emergency = "112"
[conditions]
handover = """
` + conditions + `"""
waschen = "Größe und Maß sind geprüft."
[routine.waschen]
for   = "staff"
title = "Übergabe der Wäsche"
about = "Außen waschen, dann prüfen."
marks = true
signed_by_hirer = true
[[step]]
id      = "dach"
routine = ["waschen"]
text    = "Dachhauben schließen, Tür öffnen: Ä, ö, ß, é, ñ, ł."
`),
		"vans/moewe.toml": file(`code = "MW"
name      = "Möwe"
spec_date = 2026-10-02
[body]
kind       = "panel-van"
steering   = "left"
length     = "5.99 m"
width      = "2.05 m"
height     = "2.60 m"
wheelbase  = "4.035 m"
door_side  = "nearside"
hour_meter = true
[staff]
registration = "KÜ ST 1"
marks        = "Kratzer über dem Rücklicht, nahe der Tür."
key_safe     = "Schlüsseltresor im Büro."
notes        = "Prüfen: Öl."
[staff.own]
marks = "Not for hirers: the hirer before quarrelled about the dent."
`),
	}
}

func ownSheets(t *testing.T, conditions string) work {
	t.Helper()
	fleet, found := spec.Load(own(conditions), "", library())
	if found.HasErrors() {
		t.Fatal(found)
	}
	w := sheetsOf(fleet, fleet.Reads()[0])
	w.printed = printOf(t, pressOf(t), w, w.sheets...)
	return w
}

// Letters of other languages, the operator's own conditions and own lists come
// through; a key of the operator's own is no key of ours.
func TestOwnWords(t *testing.T) {
	w := ownSheets(t, "Für die Rückgabe gilt der Vertrag.\n\nBitte\nanrufen.\n")
	text := squeezed(strings.Join(w.pages, " "))
	for _, want := range []string{"MW Möwe · KÜ ST 1", "Küstenmöwe Wohnmobile", "Für die Rückgabe gilt der Vertrag. Bitte anrufen.",
		"Dachhauben schließen, Tür öffnen: Ä, ö, ß, é, ñ, ł.", "Größe und Maß sind geprüft.", "Übergabe der Wäsche", "Kratzer über dem Rücklicht", "Hour meter"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is lost", want)
		}
	}
	for _, secret := range []string{"Schlüsseltresor", "quarrelled"} {
		if strings.Contains(text, secret) {
			t.Errorf("%q stands on paper", secret)
		}
	}
	for i, pages := range w.parts(t) {
		if n := strings.Count(strings.Join(pages, " "), "Prüfen: Öl."); (n > 0) == w.sheets[i].Hirer {
			t.Errorf("%s holds the notes %d times", w.sheets[i].ID, n)
		}
	}
}

// Long conditions go on over as many pages as they need, whole and before the
// signatures.
func TestLongConditions(t *testing.T) {
	paragraph := strings.Repeat("Own words of the operator about what was agreed. ", 12) + "End of paragraph."
	w := ownSheets(t, strings.TrimSuffix(strings.Repeat(paragraph+"\n\n", 30), "\n\n"))
	handover := squeezed(strings.Join(w.parts(t)[0], " "))
	if n := strings.Count(handover, "End of paragraph."); n != 30 {
		t.Errorf("%d paragraphs of 30", n)
	}
	if strings.LastIndex(handover, "End of paragraph.") > strings.LastIndex(handover, "Signature") {
		t.Error("conditions stand below the signatures")
	}
}
