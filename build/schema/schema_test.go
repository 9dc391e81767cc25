package schema

import (
	"bytes"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"doorpocket/components"
	"doorpocket/content"
)

var update = flag.Bool("update", false, "rewrite testdata")

// schemas compiles the schemas of the library with a validator that is not ours.
func schemas(t *testing.T) map[string]*jsonschema.Schema {
	t.Helper()
	lib, found := components.Load(components.Embedded())
	if found.HasErrors() {
		t.Fatal(found)
	}
	compiler := jsonschema.NewCompiler()
	compiler.AssertFormat()
	all := map[string]*jsonschema.Schema{}
	for _, f := range Files(lib, "en") {
		document, err := jsonschema.UnmarshalJSON(bytes.NewReader(f.Data))
		if err != nil {
			t.Fatal(err)
		}
		if err := compiler.AddResource(f.Name, document); err != nil {
			t.Fatal(err)
		}
		compiled, err := compiler.Compile(f.Name)
		if err != nil {
			t.Fatalf("%s: %v", f.Name, err)
		}
		all[f.Name] = compiled
	}
	return all
}

// document gives a TOML file as a validator sees it: dates are words.
func document(data []byte) (any, error) {
	var root map[string]any
	if _, err := toml.Decode(string(data), &root); err != nil {
		return nil, err
	}
	return plain(root), nil
}

func plain(v any) any {
	switch v := v.(type) {
	case map[string]any:
		for key, value := range v {
			v[key] = plain(value)
		}
	case []map[string]any:
		items := make([]any, len(v))
		for i := range v {
			items[i] = plain(v[i])
		}
		return items
	case []any:
		for i := range v {
			v[i] = plain(v[i])
		}
	case time.Time:
		if v.Location().String() == "date-local" {
			return v.Format(time.DateOnly)
		}
		return v.Format(time.RFC3339)
	}
	return v
}

func schemaFor(file string) string {
	switch path.Dir(file) {
	case "vans":
		return "van.json"
	case "builds":
		return "build.json"
	}
	return "fleet.json"
}

// What is right is called right: every file of the demonstration fleet and of
// the small one to begin with.
func TestFleetsAreValid(t *testing.T) {
	all := schemas(t)
	for name, files := range map[string]fs.FS{"demonstration": content.Fleet(), "starter": content.Starter()} {
		for _, pattern := range []string{"fleet.toml", "vans/*.toml", "builds/*.toml"} {
			found, err := fs.Glob(files, pattern)
			if err != nil || len(found) == 0 {
				t.Fatalf("%s: no %s: %v", name, pattern, err)
			}
			for _, file := range found {
				data, err := fs.ReadFile(files, file)
				if err != nil {
					t.Fatal(err)
				}
				read, err := document(data)
				if err != nil {
					t.Fatal(err)
				}
				if err := all[schemaFor(file)].Validate(read); err != nil {
					t.Errorf("%s: %s: %v", name, file, err)
				}
			}
		}
	}
}

// What is wrong is called wrong as far as one file shows it. The golden list
// says of every broken spec whether the schema sees it; the rest is for inspect.
func TestBrokenSpecs(t *testing.T) {
	all := schemas(t)
	found, err := filepath.Glob("../../testdata/broken/*.toml")
	if err != nil || len(found) == 0 {
		t.Fatal("no broken specs", err)
	}
	var got strings.Builder
	for _, file := range found {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		verdict := "for inspect"
		if read, err := document(data); err != nil {
			verdict = "no TOML"
		} else if all["van.json"].Validate(read) != nil {
			verdict = "seen"
		}
		fmt.Fprintf(&got, "%-12s %s\n", verdict, filepath.Base(file))
	}
	const golden = "testdata/broken.txt"
	if *update {
		if err := os.WriteFile(golden, []byte(got.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if got.String() != string(want) {
		t.Errorf("%s differs (-update rewrites it):\n%s", golden, got.String())
	}
}

// The same library gives the same bytes.
func TestSteady(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	first, second := Files(lib, "en"), Files(lib, "en")
	for i := range first {
		if !bytes.Equal(first[i].Data, second[i].Data) {
			t.Errorf("%s differs from run to run", first[i].Name)
		}
	}
}

// What a van takes away of its build sheet is a fact of the system, or one of
// the few things that every fitted system can have.
func TestWithoutFacts(t *testing.T) {
	van := schemas(t)["van.json"]
	for line, right := range map[string]bool{
		`[fitted.pump]` + "\n" + `system = "water/pump"` + "\n" + `without = ["lamp", "note"]`: true,
		`[fitted.pump]` + "\n" + `system = "water/pump"` + "\n" + `without = ["burners"]`:      false,
		`[fitted.pump]` + "\n" + `without = ["lamp"]`:                                          true, // the sheet says what it is
		`[body]` + "\n" + `without = ["berths"]`:                                               true,
		`[body]` + "\n" + `without = ["lamp"]`:                                                 false,
	} {
		read, err := document([]byte("code = \"RW\"\nname = \"Rowan\"\nspec_date = 2026-10-02\nbuild = \"ridge\"\n" + line + "\n"))
		if err != nil {
			t.Fatal(err)
		}
		if err := van.Validate(read); (err == nil) != right {
			t.Errorf("%s: %v", line, err)
		}
	}
}
