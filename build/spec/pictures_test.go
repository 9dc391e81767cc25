package spec_test

import (
	"bytes"
	"image"
	"image/png"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
)

// bikeBox is a system of the operator's own, whose page is PAGE.
var bikeBox = map[string]string{
	"systems/living/bike-box/system.toml":   "family = \"living\"\nlabel = true\n[fact.lid]\ntype = \"yes-no\"\ndefault = false\n",
	"systems/living/bike-box/lines.en.toml": "title = \"Bike box\"\nabout = \"For bikes.\"\nwords = [\"bike\"]\n[fact]\nlid = \"lid\"\n",
}

const fittedBikes = "[fitted.bikes]\nsystem = \"living/bike-box\"\nlabel = \"L1\"\nat = { side = \"rear\" }\n"

func vanWith(code, fitted string) string {
	return "code = \"" + code + "\"\nname = \"Van " + code + "\"\nspec_date = 2026-10-02\n" + sample.Body + fitted
}

func smallPNG(t testing.TB) string {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 6, 4))); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// loadPictures reads a fleet of the files given and gives its errors.
func loadPictures(lib *components.Library, more ...map[string]string) (*spec.Fleet, problem.List) {
	files := fstest.MapFS{"fleet.toml": {Data: []byte(sample.FleetTOML)}}
	for _, m := range append([]map[string]string{bikeBox}, more...) {
		for name, data := range m {
			files[name] = &fstest.MapFile{Data: []byte(data)}
		}
	}
	fleet, found := spec.Load(files, "", lib)
	return fleet, slices.DeleteFunc(found, func(p problem.Problem) bool { return p.Severity != problem.Error })
}

// marked are lines of a spec for a picture with marks.
func marked(marks string) string {
	return "pictures = [\n  { file = \"box.png\", alt = \"A box\", marks = [\n    " + marks + "\n  ] },\n]\n"
}

// What is wrong with pictures is said once and with its place, whatever else.
func TestPictureProblems(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	good := smallPNG(t)
	page := func(text string) map[string]string {
		return map[string]string{"systems/living/bike-box/page.en.md": text}
	}
	van := func(pictures string) map[string]string {
		return map[string]string{"vans/a.toml": vanWith("AA", fittedBikes+pictures), "pictures/box.png": good}
	}
	line := func(file string) string { return "pictures = [{ file = \"" + file + "\", alt = \"A box\" }]\n" }
	for _, c := range []struct {
		name  string
		files []map[string]string
		want  []string // the errors, each a part of its text
	}{
		{"none", []map[string]string{page("Hello.\n"), van("")}, nil},
		{"embedded", []map[string]string{page("![](picture:box)\n"), van(line("box.png"))}, nil},
		{"broken", []map[string]string{page("Hello.\n"), van(line("bad.jpg")), {"pictures/bad.jpg": good[:40]}},
			[]string{`vans/a.toml:23:22: error: Picture "bad.jpg" is not whole`}},
		{"shown by a sheet and two vans", []map[string]string{page("Hello.\n"), {
			"builds/b.toml": sample.Body + fittedBikes + line("bad.jpg"), "pictures/bad.jpg": "GIF89a",
			"vans/a.toml": "code = \"AA\"\nname = \"A\"\nspec_date = 2026-10-02\nbuild = \"b\"\n",
			"vans/b.toml": "code = \"BB\"\nname = \"B\"\nspec_date = 2026-10-02\nbuild = \"b\"\n",
		}}, []string{`builds/b.toml:20:22: error: Picture "bad.jpg" is a GIF`}},
		{"a folder", []map[string]string{page("Hello.\n"), van(line("more.d")), {"pictures/more.d/x": ""}},
			[]string{`vans/a.toml:23:22: error: Picture "more.d" cannot be read`}},
		{"two of one name", []map[string]string{page("Hello.\n"),
			van("pictures = [{ file = \"box.png\", alt = \"A\" }, { file = \"box.jpg\", alt = \"B\" }]\n"), {"pictures/box.jpg": good}},
			[]string{`vans/a.toml:23:55: error: A second picture "box"`}},
		{"no words for those who cannot see it", []map[string]string{page("Hello.\n"), van("pictures = [{ file = \"box.png\" }]\n")},
			[]string{`vans/a.toml:23:13: error: Missing key "alt"`}},
		{"empty words", []map[string]string{page("Hello.\n"), van("pictures = [{ file = \"box.png\", alt = \" \" }]\n")},
			[]string{`vans/a.toml:23:39: error: `}},
		{"a key of no picture", []map[string]string{page("Hello.\n"), van("pictures = [{ file = \"box.png\", alt = \"A\", mark = [] }]\n")},
			[]string{`vans/a.toml:23:44: error: `}},
		{"marks", []map[string]string{page("Hello.\n"), van(marked(`{ across = "30 %", down = "0.45", text = "The lid" }`))}, nil},
		{"a mark beside the picture", []map[string]string{page("Hello.\n"), van(marked(`{ across = "130 %", down = "45 %", text = "The lid" }`))},
			[]string{`error: "130`}},
		{"a mark without a place", []map[string]string{page("Hello.\n"), van(marked(`{ across = "30 %", text = "The lid" }`))},
			[]string{`error: Missing key "down"`}},
		{"a mark in a length", []map[string]string{page("Hello.\n"), van(marked(`{ across = "30 mm", down = "45 %", text = "The lid" }`))},
			[]string{`vans/a.toml:25:`}},
		{"a mark without words", []map[string]string{page("Hello.\n"), van(marked(`{ across = "30 %", down = "45 %" }`))},
			[]string{`error: Missing key "text"`}},
		{"too many marks", []map[string]string{page("Hello.\n"), van(marked(strings.Repeat(`{ across = "30 %", down = "45 %", text = "The lid" }, `, 21)))},
			[]string{`error: More than 20 marks`}},
		{"embed without a picture", []map[string]string{page("Hello.\n\n![](picture:box)\n"), van("")},
			[]string{`systems/living/bike-box/page.en.md:3:5: error: No picture "box" for [fitted.bikes] on Van AA`}},
		{"embed misspelt", []map[string]string{page("![](picture:bxo)\n"), van(line("box.png"))}, []string{`Did you mean "box"?`}},
		{"embed where the file is missing", []map[string]string{page("![](picture:gone)\n"), van(line("gone.png"))},
			[]string{`vans/a.toml:23:22: error: No picture "gone.png"`}},
		{"embed in a section that stands", []map[string]string{page("## Lid {when=\"lid\"}\n\n![](picture:lid)\n"), van("lid = true\n")},
			[]string{`page.en.md:3:5: error: No picture "lid"`}},
		{"embed in a section that does not", []map[string]string{page("## Lid {when=\"lid\"}\n\n![](picture:lid)\n"), van("")}, nil},
		{"embed in a page of no system", []map[string]string{page("Hello.\n"), van(""), {"pages/own.en.md": "# Own\n\n![](picture:box)\n"}},
			[]string{`pages/own.en.md:3:5: error: Picture "box" on a page that belongs to no system`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, found := loadPictures(lib, c.files...)
			if len(found) != len(c.want) {
				t.Fatalf("%d errors, want %d: %v", len(found), len(c.want), found)
			}
			for i, p := range found {
				if text := p.String() + "\n" + p.Detail; !strings.Contains(text, c.want[i]) || p.SourceLine == "" || p.Detail == "" {
					t.Errorf("%s, not %q", text, c.want[i])
				}
			}
		})
	}
}

// A picture is made once for all vans, from whichever file names it.
func TestPicturesAreShared(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	line := "pictures = [{ file = \"box.png\", alt = \"A box\" }]\n"
	fleet, found := loadPictures(lib, map[string]string{
		"systems/living/bike-box/page.en.md": "Hello.\n", "pictures/box.png": smallPNG(t), "pictures/nobody.png": "not read",
		"vans/a.toml": vanWith("AA", fittedBikes+line), "vans/b.toml": vanWith("BB", fittedBikes+line),
	})
	if len(found) > 0 {
		t.Fatal(found)
	}
	if files := slices.Collect(maps.Keys(fleet.Pictures)); !slices.Equal(files, []string{"box.png"}) {
		t.Errorf("made %v", files)
	}
	for _, v := range fleet.Vans {
		if p := v.Named("bikes").Picture("box"); p == nil || p.Alt != "A box" {
			t.Errorf("%s: %+v", v.Code, p)
		}
	}
}
