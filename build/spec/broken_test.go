package spec_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
)

const brokenSpecs = "../../testdata/broken"

// Each broken spec says what is expected of it in a comment on the very line
// that is wrong: "# want: part of the summary". There are no other errors.
func TestBrokenSpecs(t *testing.T) {
	files, err := filepath.Glob(brokenSpecs + "/*.toml")
	if err != nil || len(files) < 30 {
		t.Fatalf("%d broken specs, %v", len(files), err)
	}
	lib, _ := components.Load(components.Embedded())
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".toml"), func(t *testing.T) {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if strings.Contains(file, "not-utf-8") { // a comment would say it in the wrong encoding
				expect(t, load(lib, data), 12, "UTF-8")
				return
			}
			expectComments(t, string(data), load(lib, data))
		})
	}
}

// load reads a fleet of one van and gives its errors.
func load(lib *components.Library, van []byte) problem.List {
	_, found := spec.Load(fstest.MapFS{
		"fleet.toml":      {Data: []byte(sample.FleetTOML)},
		"vans/rowan.toml": {Data: van},
	}, "", lib)
	var errors problem.List
	for _, p := range found {
		if p.Severity == problem.Error {
			errors.Add(p)
		}
	}
	return errors
}

func expectComments(t *testing.T, text string, errors problem.List) {
	t.Helper()
	wanted := map[int]string{}
	for i, line := range strings.Split(text, "\n") {
		if _, want, ok := strings.Cut(line, "# want:"); ok {
			wanted[i+1] = strings.TrimSpace(want)
		}
	}
	if len(wanted) == 0 {
		t.Fatal("no comment says what is wrong here")
	}
	for line, want := range wanted {
		if want == "" {
			t.Errorf("line %d: the comment says nothing", line)
		}
		expect(t, errors, line, want)
	}
	for _, p := range errors {
		if _, ok := wanted[p.Start.Line]; !ok {
			t.Errorf("unexpected: %s", p)
		}
	}
}

// expect looks for an error on a line that says what is wanted and what to do.
func expect(t *testing.T, errors problem.List, line int, want string) {
	t.Helper()
	for _, p := range errors {
		if p.Start.Line != line || !strings.Contains(p.Summary+" "+p.Detail, want) {
			continue
		}
		if p.Start.Column == 0 || p.Detail == "" || p.SourceLine == "" || p.File != "vans/rowan.toml" {
			t.Errorf("%s: without column, line or remedy: %+v", p, p)
		}
		return
	}
	t.Errorf("line %d: no error with %q among %v", line, want, errors)
}

// Whole fleets that are wrong.
func TestBrokenFleets(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	van := func(code string) string {
		return "code = \"" + code + "\"\nname = \"N\"\nspec_date = 2026-10-02\n" + sample.Body
	}
	for _, c := range []struct {
		name  string
		files map[string]string
		want  string
	}{
		{"empty folder", nil, `fleet.toml: error: No fleet here`},
		{"no vans", map[string]string{"fleet.toml": sample.FleetTOML}, `vans: error: No vans`},
		{"one code twice", map[string]string{"fleet.toml": sample.FleetTOML, "vans/a.toml": van("RW"), "vans/b.toml": van("RW")},
			`vans/b.toml:1:1: error: A second van with the code "RW"`},
		{"sheet names itself", map[string]string{"fleet.toml": sample.FleetTOML, "builds/r.toml": "build = \"r\"\n", "vans/a.toml": van("RW")},
			`builds/r.toml:1:9: error: Build sheets that name each other`},
		{"two sheets name each other", map[string]string{"fleet.toml": sample.FleetTOML, "builds/r.toml": "build = \"s\"\n", "builds/s.toml": "build = \"r\"\n", "vans/a.toml": van("RW")},
			`builds/s.toml:1:9: error: Build sheets that name each other`},
		{"bad address", map[string]string{"fleet.toml": strings.Replace(sample.FleetTOML, "https://", "ftp://", 1), "vans/a.toml": van("RW")},
			`fleet.toml:2:11: error: Address of the guides is not understood`},
		{"unknown language", map[string]string{"fleet.toml": strings.Replace(sample.FleetTOML, `["en"]`, `["en", "xx"]`, 1), "vans/a.toml": van("RW")},
			`fleet.toml:3:13: error: The library does not speak "xx"`},
		{"script in a page", map[string]string{"fleet.toml": sample.FleetTOML, "vans/a.toml": van("RW"), "pages/own.en.md": "# Own\n\n<script>alert(1)</script>\n"},
			`pages/own.en.md:3:1: error: Raw HTML in a page`},
		{"page with an unknown fact", map[string]string{"fleet.toml": sample.FleetTOML, "vans/a.toml": van("RW"), "pages/own.en.md": "# Own\n\nHello {$van.nmae}.\n"},
			`pages/own.en.md:3:7: error: Unknown fact "van.nmae"`},
		{"a file of ten megabytes", map[string]string{"fleet.toml": sample.FleetTOML, "vans/a.toml": van("RW") + strings.Repeat("# more\n", 10<<20/7)},
			`vans/a.toml: error: File that is too large`},
		{"deep nesting", map[string]string{"fleet.toml": sample.FleetTOML, "vans/a.toml": van("RW") + "x = " + strings.Repeat("[", 5000) + strings.Repeat("]", 5000) + "\n"},
			`vans/a.toml:19:36: error: Tables or lists too deep`},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := fstest.MapFS{}
			for name, data := range c.files {
				files[name] = &fstest.MapFile{Data: []byte(data)}
			}
			_, found := spec.Load(files, "", lib)
			text := fmt.Sprint(found)
			for _, p := range found {
				if strings.HasPrefix(p.String(), c.want) {
					return
				}
			}
			t.Errorf("no %q in %.2000s", c.want, text)
		})
	}
}
