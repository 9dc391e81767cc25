package spec_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
)

const bikeTent = "[fitted.bike-tent]\nsystem = \"living/bike-box\"\nat = { side = \"rear\" }\n"

// pickUp reads a fleet with these files beside fleet.toml and a page, and gives
// what each van shows, "NAME: FILE = WORDS", with the problems of pictures.
func pickUp(t *testing.T, files map[string]string) (shown map[string][]string, found problem.List) {
	t.Helper()
	lib, _ := components.Load(components.Embedded())
	all := fstest.MapFS{"fleet.toml": {Data: []byte(sample.FleetTOML)}, "systems/living/bike-box/page.en.md": {Data: []byte("Hello.\n")}}
	for _, m := range []map[string]string{bikeBox, files} {
		for name, data := range m {
			all[name] = &fstest.MapFile{Data: []byte(data)}
		}
	}
	fleet, problems := spec.Load(all, "", lib)
	shown = map[string][]string{}
	for _, v := range fleet.Vans {
		for _, f := range v.Fitted {
			for _, p := range f.Pictures {
				if _, made := fleet.Pictures[p.File]; made {
					shown[v.Code] = append(shown[v.Code], f.Name+": "+p.File+" = "+p.Alt)
				}
			}
		}
	}
	for _, p := range problems {
		if p.Severity == problem.Error || strings.HasPrefix(p.File, "pictures/") {
			found = append(found, p)
		}
	}
	return shown, found
}

func TestPicturesArePickedUpByName(t *testing.T) {
	good := smallPNG(t)
	onSheet := func(code, more string) string {
		return "code = \"" + code + "\"\nname = \"Van " + code + "\"\nspec_date = 2026-10-02\nbuild = \"ridge\"\n" + more
	}
	for _, c := range []struct {
		name  string
		files map[string]string
		shown map[string][]string
		found []string // each a part of a problem's text with its notes
	}{
		{"in the order of people, after those of the spec", map[string]string{
			"vans/a.toml":      vanWith("AA", fittedBikes+"pictures = [{ file = \"box.png\", alt = \"A box\" }]\n"),
			"pictures/box.png": good, "pictures/AA/bikes 10 shut.png": good, "pictures/AA/bikes-2 open.PNG": good, "pictures/AA/Bikes 1 the lid.jpg": good,
		}, map[string][]string{"AA": {"bikes: box.png = A box", "bikes: AA/Bikes 1 the lid.jpg = The lid", "bikes: AA/bikes-2 open.PNG = Open", "bikes: AA/bikes 10 shut.png = Shut"}}, nil},
		{"the longest name", map[string]string{
			"vans/a.toml":                     vanWith("AA", fittedBikes+strings.Replace(bikeTent, "bike-tent", "bikes-tent", 1)),
			"pictures/AA/bikes-tent up.png":   good,
			"pictures/AA/bikes_tent 2 up.png": good,
			"pictures/AA/bikes-te in it.png":  good,
		}, map[string][]string{"AA": {"bikes: AA/bikes-te in it.png = Te in it", "bikes-tent: AA/bikes_tent 2 up.png = Up", "bikes-tent: AA/bikes-tent up.png = Up"}}, nil},
		{"words from the spec", map[string]string{
			"vans/a.toml":                   vanWith("AA", fittedBikes+"pictures = [{ file = \"AA/bikes-1.png\", alt = \"The lid\", marks = [{ across = \"1 %\", down = \"1 %\", text = \"Here\" }] }]\n"),
			"pictures/AA/bikes-1.png":       good,
			"pictures/AA/bikes-0 first.png": good,
		}, map[string][]string{"AA": {"bikes: AA/bikes-1.png = The lid", "bikes: AA/bikes-0 first.png = First"}}, nil},
		{"without words", map[string]string{
			"vans/a.toml":                  vanWith("AA", fittedBikes+bikeTent+"pictures = [{ file = \"box.png\", alt = \"A box\" }]\n"),
			"vans/b.toml":                  onSheet("BB", ""),
			"builds/ridge.toml":            sample.Body + fittedBikes,
			"pictures/box.png":             good,
			"pictures/AA/bikes.png":        good,
			"pictures/AA/bike-tent_1.png":  good,
			"pictures/AA/body IMG_1.png":   good,
			"pictures/BB/bikes (2).png":    good,
			"pictures/ridge/bikes-003.png": good,
		}, map[string][]string{"AA": {"bike-tent: box.png = A box"}}, []string{
			`pictures/AA/bike-tent_1.png: warning: Picture "AA/bike-tent_1.png" has no words, so it is not shown
Those who cannot see it need to hear what it shows. Say so in its name: "bike-tent_1 what it shows.png".
Or add to the list { file = "AA/bike-tent_1.png", alt = "what it shows" } here: vans/a.toml:26:1`,
			`pictures/AA/bikes.png: warning: Picture "AA/bikes.png" has no words, so it is not shown
Those who cannot see it need to hear what it shows. Say so in its name: "bikes what it shows.png".
Or write below this line: vans/a.toml:19:1
  pictures = [{ file = "AA/bikes.png", alt = "what it shows" }]`,
			`Say so in its name: "body IMG_1 what it shows.png".
`,
			`Or write at the end of the spec: vans/b.toml
  [fitted.bikes]
  pictures = [{ file = "BB/bikes (2).png", alt = "what it shows" }]`,
			"Or write below this line: builds/ridge.toml:16:1",
		}},
		{"of a build sheet, and in their place a van's own", map[string]string{
			"builds/ridge.toml":                     sample.Body + fittedBikes + bikeTent + "pictures = [{ file = \"box.png\", alt = \"A box\" }]\n",
			"pictures/box.png":                      good,
			"vans/a.toml":                           onSheet("AA", ""),
			"vans/b.toml":                           onSheet("BB", ""),
			"vans/c.toml":                           onSheet("CC", "[fitted.bikes]\nwithout = [\"pictures\"]\n"),
			"vans/d.toml":                           onSheet("DD", "[fitted.bikes]\npictures = [{ file = \"box.png\", alt = \"D\" }]\n"),
			"pictures/ridge/bikes as built.png":     good,
			"pictures/ridge/body as built.png":      good,
			"pictures/BB/bikes its own.png":         good,
			"pictures/BB/bike-tent its own.png":     good,
			"pictures/BB/body its own.png":          good,
			"pictures/ridge/bike-tent as built.png": good,
		}, map[string][]string{
			"AA": {"body: ridge/body as built.png = As built", "bikes: ridge/bikes as built.png = As built", "bike-tent: box.png = A box", "bike-tent: ridge/bike-tent as built.png = As built"},
			"BB": {"body: BB/body its own.png = Its own", "bikes: BB/bikes its own.png = Its own", "bike-tent: BB/bike-tent its own.png = Its own"},
			"CC": {"body: ridge/body as built.png = As built", "bike-tent: box.png = A box", "bike-tent: ridge/bike-tent as built.png = As built"},
			"DD": {"body: ridge/body as built.png = As built", "bikes: box.png = D", "bike-tent: box.png = A box", "bike-tent: ridge/bike-tent as built.png = As built"},
		}, nil},
		{"of a sheet on a sheet", map[string]string{
			"builds/ridge.toml": sample.Body + fittedBikes, "builds/ridge-2.toml": "build = \"ridge\"\n" + bikeTent,
			"vans/a.toml":                           strings.Replace(onSheet("AA", ""), "ridge", "ridge-2", 1),
			"pictures/ridge/bikes as built.png":     good,
			"pictures/ridge/body as built.png":      good,
			"pictures/ridge-2/body from 2027.png":   good,
			"pictures/ridge-2/bike-tent folded.png": good,
		}, map[string][]string{"AA": {"body: ridge-2/body from 2027.png = From 2027", "bikes: ridge/bikes as built.png = As built", "bike-tent: ridge-2/bike-tent folded.png = Folded"}}, nil},
		{"of what is taken away", map[string]string{
			"builds/ridge.toml":                sample.Body + fittedBikes + strings.Replace(bikeTent, "bike-tent", "bikes-tent", 1),
			"vans/a.toml":                      onSheet("AA", ""),
			"vans/b.toml":                      strings.Replace(onSheet("BB", ""), "build", "without = [\"bikes-tent\"]\nbuild", 1),
			"pictures/ridge/bikes-tent up.png": good,
			"pictures/BB/bikes-tent up.png":    good,
		}, map[string][]string{"AA": {"bikes-tent: ridge/bikes-tent up.png = Up"}}, []string{
			`pictures/BB/bikes-tent up.png: warning: Picture "BB/bikes-tent up.png" is called after nothing that is fitted`,
		}},
		{"of what joins by itself", map[string]string{
			"systems/living/rack/system.toml":   "family = \"living\"\nautomatic = [\"living/bike-box\"]\n",
			"systems/living/rack/lines.en.toml": "title = \"Rack\"\nabout = \"A rack.\"\nwords = [\"rack\"]\n",
			"systems/living/rack/page.en.md":    "A rack.\n",
			"vans/a.toml":                       vanWith("AA", fittedBikes),
			"vans/b.toml":                       vanWith("BB", ""),
			"pictures/AA/rack on the wall.png":  good,
			"pictures/BB/rack on the wall.png":  good,
		}, map[string][]string{"AA": {"rack: AA/rack on the wall.png = On the wall"}}, []string{
			`pictures/BB/rack on the wall.png: warning: Picture "BB/rack on the wall.png" is called after nothing that is fitted` + "\nThis van has no rack.",
		}},
		{"that are something else", map[string]string{
			"vans/a.toml":                         vanWith("AA", fittedBikes),
			"pictures/AA/bkies open.png":          good,
			"pictures/AA/DSC00123.png":            good,
			"pictures/AA/bikes lid.mov":           "x",
			"pictures/AA/.DS_Store":               "x",
			"pictures/AA/._bikes lid.png":         "x",
			"pictures/AA/Thumbs.db":               "x",
			"pictures/AA/notes.txt":               "x",
			"pictures/AA/old/bikes open.png":      good,
			"pictures/AB/bikes open.png":          good,
			"pictures/aa/bikes open.png":          good,
			"pictures/.trash/bikes open.png":      good,
			"pictures/AA/bikes broken.png":        good[:40],
			"pictures/AA/bikes from the moon.jpg": "GIF89a",
		}, nil, []string{
			`pictures/AA/DSC00123.png: warning: Picture "AA/DSC00123.png" is called after nothing that is fitted` + "\n" + `Begin its name with the name of what it shows, as that stands in the spec, and say what it shows: "bikes the open door.png".`,
			"pictures/AA/bikes broken.png: warning: Picture \"AA/bikes broken.png\" is not whole",
			"pictures/AA/bikes from the moon.jpg: warning: Picture \"AA/bikes from the moon.jpg\" is a GIF",
			"pictures/AA/bikes lid.mov: warning: File is not read",
			"Did you mean \"bikes\"? Begin its name",
			"pictures/AA/old/: warning: Folder is not read",
			`pictures/AB: warning: No van and no build sheet "AB" for these pictures` + "\nDid you mean \"pictures/AA\"?",
			`pictures/aa: warning: No van and no build sheet "aa"`,
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			shown, found := pickUp(t, c.files)
			for code := range c.shown {
				if !slices.Equal(shown[code], c.shown[code]) {
					t.Errorf("%s shows %q\nwant %q", code, shown[code], c.shown[code])
				}
				delete(shown, code)
			}
			if len(shown) > 0 {
				t.Errorf("others show %q", shown)
			}
			if len(found) != len(c.found) {
				t.Errorf("%d problems, want %d: %v", len(found), len(c.found), found)
				return
			}
			for i, p := range found {
				text := p.String() + "\n" + p.Detail
				for _, n := range p.Notes {
					text += strings.TrimSuffix("\n"+n.Text+": "+n.Span.String(), ": ")
				}
				if !strings.Contains(text+"\n", c.found[i]) {
					t.Errorf("%s\nis not %q", text, c.found[i])
				}
			}
		})
	}
}

// counted counts how often folders of pictures are read.
type counted struct {
	fstest.MapFS
	mu    sync.Mutex
	reads map[string]int
}

func (c *counted) ReadDir(name string) ([]fs.DirEntry, error) {
	if name == "pictures" || strings.HasPrefix(name, "pictures/") {
		c.mu.Lock()
		c.reads[name]++
		c.mu.Unlock()
	}
	return c.MapFS.ReadDir(name)
}

// Picking up costs one look into each folder that there is, and none for the vans
// that have no folder.
func TestPickingUpIsCheap(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	files := &counted{MapFS: sample.Many(lib, 30, 1), reads: map[string]int{}}
	for _, name := range []string{sample.Code(3) + "/body.png", sample.Code(4) + "/body.png", "batch-0/body the front.png"} {
		files.MapFS["pictures/"+name] = &fstest.MapFile{Data: []byte(smallPNG(t))}
	}
	if _, found := spec.Load(files, "", lib); found.HasErrors() {
		t.Fatal(errors.New(found[0].String()))
	}
	if len(files.reads) != 4 {
		t.Errorf("read %v", files.reads)
	}
	for name, n := range files.reads {
		if n != 1 {
			t.Errorf("%s was read %d times", name, n)
		}
	}
}

// A folder of pictures that lies elsewhere is one all the same.
func TestLinkedFolderOfPictures(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	folder, elsewhere := t.TempDir(), t.TempDir()
	write := func(name, data string) {
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(data), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for name, data := range sample.Many(lib, 1, 1) {
		write(filepath.Join(folder, name), string(data.Data))
	}
	write(filepath.Join(elsewhere, "body from behind.png"), smallPNG(t))
	write(filepath.Join(folder, "pictures", "box.png"), smallPNG(t))
	if err := os.Symlink(elsewhere, filepath.Join(folder, "pictures", sample.Code(0))); err != nil {
		t.Fatal(err)
	}
	fleet, found := spec.Load(os.DirFS(folder), "", lib)
	if found.HasErrors() || len(fleet.Vans[0].Body.Pictures) != 1 || len(fleet.Pictures) != 1 {
		t.Errorf("%v %+v", found, fleet.Vans[0].Body.Pictures)
	}
}
