package components

import (
	"strings"
	"testing"
	"testing/fstest"
)

// The library says what is wrong with a reading, and where.
func TestReadingsAreChecked(t *testing.T) {
	lib, found := Load(Embedded())
	if found.HasErrors() {
		t.Fatal(found)
	}
	for _, c := range []struct{ reading, want string }{
		{"scale = \"number\"\nsheets = [\"handover\"]", ""},
		{"scale = \"numbre\"\nsheets = [\"handover\"]", "number"},
		{"scale = \"number\"", "sheets"},
		{"scale = \"number\"\nsheets = [\"handovr\"]", "handover"},
		{"scale = \"number\"\nsheets = [\"arriving\"]", "arriving"},
		{"scale = \"number\"\nsheets = [\"handover\"]\nhas = [\"vehicle/keyz\"]", "vehicle/keys"},
		{"scale = \"number\"\nsheets = [\"handover\"]\nhas = [\"vehicle/keys\"]\neach = \"rings\"", "rings"},
		{"scale = \"number\"\nsheets = [\"handover\"]\nhas = [\"vehicle/keys\"]\neach = \"ring\"", ""},
	} {
		l := loader{files: fstest.MapFS{
			"readings.toml":    {Data: []byte("[test]\n" + c.reading)},
			"readings.en.toml": {Data: []byte("[test]\ntitle = \"Test\"\n")},
		}, lib: &Library{Routines: lib.Routines, Families: lib.Families, Roles: lib.Roles, Values: lib.Values, systems: lib.systems, Sources: map[string][]byte{}}}
		l.readings()
		l.problems.Add(l.lib.checkReadings("")...)
		var said strings.Builder
		for _, p := range l.problems {
			said.WriteString(p.String() + " " + p.Detail + "\n")
		}
		if (c.want == "") != (said.String() == "") || !strings.Contains(said.String(), c.want) {
			t.Errorf("%q: want %q, got %q", c.reading, c.want, said.String())
		}
	}
	if lib.Reading("odometer") == nil || len(lib.Reading("odometer").Has) != 0 {
		t.Error("not every van has an odometer")
	}
}
