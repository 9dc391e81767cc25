package publication_test

import (
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/publication"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/build/weight"
	"doorpocket/components"
)

// spare is how many bytes of a round trip every page of the demonstration fleet
// leaves: a fleet with a longer address, a longer name or more words needs them.
const spare = 500

// Every page that a hirer of the demonstration fleet opens reaches the phone in
// one round trip, and its first view asks for nothing else: no style sheet, no
// script that holds it up.
func TestPagesFitOneRoundTrip(t *testing.T) {
	heaviest, heaviestName, sum, n := 0, "", 0, 0
	for name, text := range files(t, demoSite(t)) {
		if !strings.HasPrefix(name, "hirers/") || !strings.HasSuffix(name, ".html") {
			continue
		}
		bytes := weight.Compressed([]byte(text))
		sum += bytes
		n++
		if bytes > heaviest {
			heaviest, heaviestName = bytes, name
		}
		if w := weight.Of([]byte(text)); w.Over() > 0 {
			t.Errorf("%s: %d bytes over: %v", name, w.Over(), w.Parts)
		}
		if strings.Contains(text, "stylesheet") || strings.Count(text, "<script src") != strings.Count(text, " defer></script>") {
			t.Errorf("%s: its first view needs a second request", name)
		}
	}
	if left := weight.RoundTrip - heaviest; left < spare {
		t.Errorf("%s leaves %d bytes, want %d", heaviestName, left, spare)
	}
	t.Logf("%d pages, %d bytes on average, the heaviest %d: %s", n, sum/n, heaviest, heaviestName)
}

// A page that is over is told with its van, its address and what makes it so.
func TestWeighTellsTheHeavyPage(t *testing.T) {
	var words strings.Builder
	for i := range 5500 { // words that resemble each other little
		words.WriteString(strconv.FormatUint(uint64(i+1)*0x9e3779b97f4a7c15>>16, 36) + " ")
	}
	files := fstest.MapFS{}
	for name, text := range map[string]string{
		"fleet.toml":          sample.FleetTOML,
		"vans/a.toml":         "code = \"AA\"\nname = \"Aspen\"\nspec_date = 2026-10-02\n" + sample.Body,
		"pages/history.en.md": "# History\n\n" + words.String() + "\n",
		"pages/welcome.en.md": "# Welcome\n\nHello.\n",
	} {
		files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	lib, _ := components.Load(components.Embedded())
	fleet, found := spec.Load(files, "", lib)
	if found.HasErrors() {
		t.Fatal(found)
	}
	heavy, err := publication.Weigh(fleet)
	if err != nil {
		t.Fatal(err)
	}
	if len(heavy) != 1 {
		t.Fatalf("%d warnings, want one: %v", len(heavy), heavy)
	}
	for _, want := range []string{"AA/read/history/ is ", "bytes over", "styles ", "words and the rest "} {
		if !strings.Contains(heavy[0].Detail, want) {
			t.Errorf("no %q in %q", want, heavy[0].Detail)
		}
	}
	if heavy[0].Span.File != "vans/a.toml" || heavy[0].Span.Start.Line != 1 {
		t.Errorf("stands at %v", heavy[0].Span)
	}
}
