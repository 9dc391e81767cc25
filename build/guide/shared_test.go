package guide_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/guide"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
)

// An own page names what the fleet states; a paragraph that names what it does
// not state is left out whole.
func TestOwnPageNamesTheFleet(t *testing.T) {
	const page = "# Call us\n\nCall {$fleet.helpline} or {$fleet.emergency}.\n\nHours: {$fleet.hours}\n\nWrite to {$fleet.mail}.\n\nThis is {$van.name}, code {$van.code}, of {$fleet.name}.\n"
	const always = "Call +44 1632 960111 or 112."
	lib, found := components.Load(components.Embedded())
	if found.HasErrors() {
		t.Fatal(found)
	}
	for more, want := range map[string]string{
		"": always + " This is Rowan, code RW, of Sample Fleet.",
		"hours = \"From 8 to 9.\"\nmail = \"help@sample.example\"\n": always + " Hours: From 8 to 9. Write to help@sample.example. This is Rowan, code RW, of Sample Fleet.",
		"mail = \"help@sample.example\"\n":                           always + " Write to help@sample.example. This is Rowan, code RW, of Sample Fleet.",
	} {
		fleet, found := spec.Load(fstest.MapFS{
			"fleet.toml":       {Data: []byte(sample.FleetTOML + more)},
			"vans/a.toml":      {Data: []byte("code = \"RW\"\nname = \"Rowan\"\nspec_date = 2026-10-02\n" + sample.Body)},
			"pages/call.en.md": {Data: []byte(page)},
		}, "", lib)
		if found.HasErrors() {
			t.Fatal(found)
		}
		g, _ := guide.NewKit(&fleet.Operator, "en").Build(fleet.Vans[0])
		var said []string
		for _, d := range fleet.Pages[0].Words["en"].Page.Docs() {
			said = append(said, d.Text(guide.Filler{Guide: g}))
		}
		if got := strings.Join(strings.Fields(strings.Join(said, " ")), " "); got != want {
			t.Errorf("with %q:\n%s\nnot\n%s", more, got, want)
		}
	}
}
