package components_test

import (
	"strings"
	"sync"
	"testing"

	"doorpocket/components"
	"doorpocket/components/problem"
)

// embedded is the library that comes with the program, read once: nothing
// changes a loaded library.
var embedded = sync.OnceValues(func() (*components.Library, problem.List) { return components.Load(components.Embedded()) })

// library is the embedded one, free of problems.
func library(t *testing.T) *components.Library {
	t.Helper()
	lib, found := embedded()
	if len(found) > 0 {
		found.Sort()
		found.Dedupe()
		var text strings.Builder
		if err := problem.Write(&text, found, problem.Style{}); err != nil {
			t.Fatal(err)
		}
		t.Fatalf("%d problems in the library:\n%s", len(found), text.String())
	}
	return lib
}

func TestLibraryHasNoProblems(t *testing.T) {
	lib := library(t)
	t.Logf("%d systems", len(lib.Systems()))
}
