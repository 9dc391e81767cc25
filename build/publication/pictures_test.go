package publication_test

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/chromedp/chromedp"

	"doorpocket/build/pictures"
	"doorpocket/build/publication"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
)

// pictured is a fleet of two vans with a system of the operator's own: both
// show box and lever, the page itself asks for lever, and what nobody names
// lies there too.
func pictured(t *testing.T) fstest.MapFS {
	t.Helper()
	const fitted = `[fitted.bikes]
system = "living/bike-box"
label = "L1"
at = { side = "rear" }
pictures = [
  { file = "box.jpg", alt = "Box \"B\" <closed> & dry" },
  { file = "lever.jpg", alt = "The lever", marks = [
    { across = "25 %", down = "50 %", text = "Push <here>" },
    { across = "100 %", down = "0 %", text = "The hinge" },
  ] },
]
`
	van := func(code string) string {
		return "code = \"" + code + "\"\nname = \"" + code + "\"\nspec_date = 2026-10-02\n" + sample.Body + fitted
	}
	files := fstest.MapFS{}
	for name, text := range map[string]string{
		"fleet.toml": sample.FleetTOML, "vans/a.toml": van("AA"), "vans/b.toml": van("BB"),
		"systems/living/bike-box/system.toml":   "family = \"living\"\nlabel = true\n",
		"systems/living/bike-box/lines.en.toml": "title = \"Bike box\"\nabout = \"For bikes.\"\nwords = [\"bike\"]\n",
		"systems/living/bike-box/page.en.md":    "Hello.\n\n## Open it\n\n![Pull \"this\"](picture:lever)\n",
		"pictures/box.jpg":                      photo(t, 1200, 800, 40), "pictures/lever.jpg": photo(t, 700, 1000, 90),
		"pictures/nobody.jpg": photo(t, 1200, 800, 160),
	} {
		files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return files
}

// publishFleet publishes a fleet given by its files and gives the site's folder.
func publishFleet(t *testing.T, files fstest.MapFS) string {
	t.Helper()
	lib, _ := components.Load(components.Embedded())
	fleet, found := spec.Load(files, "", lib)
	for _, p := range found {
		if p.Severity == problem.Error {
			t.Fatal(p, p.Detail)
		}
	}
	target := filepath.Join(t.TempDir(), "site")
	if _, err := publication.Publish(fleet, target, "test"); err != nil {
		t.Fatal(err)
	}
	return target
}

// photo is a photograph with a note of where it was taken.
func photo(t *testing.T, w, h int, shade byte) string {
	t.Helper()
	m := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			m.SetGray(x, y, color.Gray{Y: shade + byte(x*y/4096)%40})
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, nil); err != nil {
		t.Fatal(err)
	}
	const note = "taken at CANARY-3PQ"
	return b.String()[:2] + "\xff\xfe\x00" + string(rune(len(note)+2)) + note + b.String()[2:]
}

// stem is what the published files of a picture are called but for width and ending.
type stem struct{ jpeg, webp string }

func stems(t *testing.T, data []byte) stem {
	t.Helper()
	made, err := pictures.Make("x.jpg", data)
	if err != nil {
		t.Fatal(err)
	}
	before := func(name string) string { name, _, _ = strings.Cut(name, "-"); return name }
	return stem{jpeg: before(made.Variants[0].Name), webp: before(made.Modern[0].Name)}
}

// The same photograph under two names is one file, and still shown with the words of
// either where only one of them is asked for by the page.
func TestTwoNamesOfOnePicture(t *testing.T) {
	fleet := pictured(t)
	fleet["pictures/box.jpg"] = fleet["pictures/lever.jpg"]
	tree := files(t, publishFleet(t, fleet))
	text := tree["hirers/AA/L1/index.html"]
	if n := strings.Count(text, "<figure class=\"picture"); n != 2 || !strings.Contains(text, `alt="Box &#34;B&#34; &lt;closed&gt; &amp; dry"`) || !strings.Contains(text, `alt="Pull &#34;this&#34;"`) {
		t.Errorf("%d pictures: %s", n, text)
	}
}

func TestPicturesArePublished(t *testing.T) {
	fleet := pictured(t)
	box, lever := stems(t, fleet["pictures/box.jpg"].Data), stems(t, fleet["pictures/lever.jpg"].Data)
	tree := files(t, publishFleet(t, fleet))
	var names []string
	for name, data := range tree {
		if strings.Contains(data, "CANARY-3PQ") || strings.Contains(name, "nobody") {
			t.Errorf("%s is not to be published", name)
		}
		if strings.HasPrefix(name, "hirers/pictures/") {
			names = append(names, name)
		}
	}
	if len(names) != 8 {
		t.Errorf("%d pictures, want two sizes of each in two formats: %v", len(names), names)
	}
	for _, code := range []string{"AA", "BB"} {
		name := "hirers/" + code + "/L1/index.html"
		text := tree[name]
		for _, load := range parsePage(t, name, text).loads {
			checkLoad(t, tree, name, load)
		}
		for _, want := range []string{
			`alt="Box &#34;B&#34; &lt;closed&gt; &amp; dry"`, `alt="Pull &#34;this&#34;"`,
			`width="960" height="640"`, `width="700" height="1000"`, ` 480w, ../../pictures/` + box.jpeg, `loading="lazy"`,
			`<picture><source type="image/webp" srcset="../../pictures/` + box.webp, `.webp 480w, ../../pictures/` + box.webp, `.webp 960w" sizes="(min-width: 47em) 45em, calc(100vw - 2em)"><img src="../../pictures/` + box.jpeg,
			// a mark at an edge stays whole
			`<svg viewBox="0 0 700 1000" aria-hidden="true"><circle cx="175" cy="500" r="38"/><text x="175" y="500" dy="17" font-size="47">1</text><circle cx="662" cy="38" r="38"/>`,
			`<ol><li>Push &lt;here&gt;</li><li>The hinge</li></ol>`,
		} {
			if strings.Count(text, want) == 0 {
				t.Errorf("%s: no %s", name, want)
			}
		}
		if n := strings.Count(text, "<ol><li>Push"); n != 1 || strings.Count(text, "<circle cx=\"175\"") != 1 {
			t.Errorf("%s: %d lists of marks, want that of the one picture that has some", name, n)
		}
		if n := strings.Count(text, "<figure class=\"picture"); n != 2 {
			t.Errorf("%s: %d pictures, want each once", name, n)
		}
		if strings.Index(text, box.jpeg) > strings.Index(text, "Open it") || strings.Index(text, lever.jpeg) < strings.Index(text, "Open it") {
			t.Errorf("%s: pictures are not where they belong", name)
		}
	}
}

// Marks lie on the picture, however wide it is shown.
func TestMarksLieOnThePicture(t *testing.T) {
	server := serve(t, publishFleet(t, pictured(t)))
	for _, width := range []int{320, 390, 1280} {
		b := newBrowser(t, width, 844)
		b.run(t, chromedp.Navigate(server.URL+"/AA/L1/"))
		if apart := ask(t, b, chromedp.Evaluate[float64](`(() => {
			const figure = document.querySelector(".marked");
			const [a, b] = ["img", "svg"].map((what) => figure.querySelector(what).getBoundingClientRect());
			return a.width < 100 ? 1000 : Math.max(...["left", "top", "width", "height"].map((side) => Math.abs(a[side] - b[side])));
		})()`)); apart > 1 {
			t.Errorf("%d pixels wide: the marks are off by %.1f pixels", width, apart)
		}
		if mark := ask(t, b, chromedp.Evaluate[float64](`document.querySelector(".marked circle").getBoundingClientRect().width`)); mark < 20 || mark > 60 {
			t.Errorf("%d pixels wide: a mark is %.0f pixels", width, mark)
		}
		if text := ask(t, b, chromedp.Evaluate[string](`[...document.querySelectorAll(".picture ol li")].map((li) => li.innerText).join()`)); text != "Push <here>,The hinge" {
			t.Errorf("%d pixels wide: the words are %q", width, text)
		}
	}
}

// A picture that only a build sheet lists and that cannot be made is an error of a
// publish too, and one that was picked up by its name is none.
func TestPicturesThatCannotBeMade(t *testing.T) {
	for name, c := range map[string]struct {
		list, file string
		severity   problem.Severity
	}{
		"listed by a build sheet":       {"pictures = [{ file = \"bad.jpg\", alt = \"Box\" }]\n", "pictures/bad.jpg", problem.Error},
		"in the folder of the van":      {"", "pictures/VAAA/bikes the lid.jpg", problem.Warning},
		"in the folder of build sheets": {"", "pictures/batch-0/bikes the lid.jpg", problem.Warning},
	} {
		t.Run(name, func(t *testing.T) {
			lib, _ := theLibrary()
			files := sample.Many(lib, 2, 1)
			bikeBox(files)
			sheet := string(files["builds/batch-0.toml"].Data) + "[fitted.bikes]\nsystem = \"living/bike-box\"\nat = { side = \"rear\" }\n" + c.list
			files["builds/batch-0.toml"], files[c.file] = file(sheet), file("GIF89a")
			target := filepath.Join(t.TempDir(), "site")
			for range 2 { // the second time from the ledger
				made, found, err := publishFiles(files, target, nil)
				if err != nil {
					t.Fatal(err)
				}
				told := slices.DeleteFunc(found, func(p problem.Problem) bool { return p.Code != "bad-picture" })
				if len(told) != 1 || told[0].Severity != c.severity || (made.Vans == 2) == (c.severity == problem.Error) {
					t.Errorf("%+v: %v", made, told)
				}
			}
		})
	}
}

// What lies in the folders and is not shown stands in the staff's list of pictures,
// for those who put it there, also after a publish to which nothing was new.
func TestStaffSeeWhatIsNotShown(t *testing.T) {
	lib, _ := theLibrary()
	fleet := sample.Many(lib, 2, 1)
	good, code := photo(t, 40, 30, 40), sample.Code(0)
	for name, data := range map[string]string{
		code + "/body 1.jpg": good, code + "/bdoy behind.jpg": good, code + "/body ahead.jpg": "GIF89a", code + "/body shown.jpg": good,
		code + "/old/body.jpg": good, "batch-1/body IMG_7.jpg": good, "VXX/body.jpg": good,
	} {
		fleet["pictures/"+name] = file(data)
	}
	target := filepath.Join(t.TempDir(), "site")
	for _, edit := range []string{"", "# seen\n"} {
		fleet["vans/van-0001.toml"] = file(string(fleet["vans/van-0001.toml"].Data) + edit)
		if _, found, err := publishFiles(fleet, target, nil); err != nil || found.HasErrors() {
			t.Fatal(err, found)
		}
		text := readingText(t, files(t, target)["staff/pictures/index.html"])
		for name, why := range map[string]string{
			code + "/body 1.jpg": "its name does not say", code + "/bdoy behind.jpg": "after nothing that is fitted", code + "/body ahead.jpg": "cannot be read",
			code + "/old/": "no photograph in its van", "batch-1/body IMG_7.jpg": "its name does not say", "VXX": "no van and no build sheet",
		} {
			if !slices.ContainsFunc(strings.Split(text, "\n"), func(line string) bool { return strings.Contains(line, name) && strings.Contains(line, why) }) {
				t.Errorf("no line says that %s is not shown: %s", name, why)
			}
		}
		if strings.Contains(text, "body shown.jpg") {
			t.Error("a picture that is shown is told as one that is not")
		}
	}
}

// A picture is made once, whatever else of its van or of the fleet is edited: also
// where the program that read it has gone since. Another file, another program or
// the wish that all be made anew make it anew, and so does a picture of the site
// that is not as it was written.
func TestPicturesAreMadeOnce(t *testing.T) {
	heic, err := os.ReadFile("../pictures/testdata/located.heic")
	if err != nil {
		t.Fatal(err)
	}
	lib, _ := theLibrary()
	fleet := sample.Many(lib, 2, 1)
	name := "pictures/" + sample.Code(0) + "/body from the left.heic"
	fleet[name] = &fstest.MapFile{Data: heic}
	target := filepath.Join(t.TempDir(), "site")
	if _, found, err := publishFiles(fleet, target, nil); err != nil || found.HasErrors() {
		t.Fatal(err, found)
	}
	shown := func() (all []string) {
		for name := range files(t, target) {
			if strings.HasPrefix(name, "hirers/pictures/") {
				all = append(all, name)
			}
		}
		slices.Sort(all)
		return all
	}
	was := shown()
	t.Setenv("PATH", t.TempDir()) // whatever has to be made anew from here on cannot be
	edit := func(name, old, new string) {
		fleet[name] = file(strings.Replace(string(fleet[name].Data), old, new, 1))
	}
	for _, step := range []struct {
		what string
		do   func()
		more func(*publication.Job)
		lost bool
	}{
		{"van edited", func() { edit("vans/van-0000.toml", "name = \"", "name = \"The ") }, nil, false},
		{"fleet edited", func() { edit("fleet.toml", "112", "999") }, nil, false},
		{"another picture beside it", func() {
			fleet["pictures/"+sample.Code(0)+"/body from the right.jpg"] = file(photo(t, 40, 30, 40))
		}, nil, false},
		{"that one gone", func() { delete(fleet, "pictures/"+sample.Code(0)+"/body from the right.jpg") }, nil, false},
		{"spoilt", func() {
			if err := os.Truncate(filepath.Join(target, was[0]), 10); err != nil {
				t.Fatal(err)
			}
		}, nil, true},
	} {
		step.do()
		made, found, err := publishFiles(fleet, target, step.more)
		if err != nil || found.HasErrors() || made.Written == 0 {
			t.Fatal(step.what, made, err, found)
		}
		is := slices.DeleteFunc(shown(), func(name string) bool { return strings.Contains(name, "-40.") }) // the other one's width
		if lost := !slices.Equal(is, was); lost != step.lost {
			t.Errorf("%s: the site shows %v, and had %v", step.what, is, was)
		}
	}
}

// What makes a picture anew although its file is the same.
func TestPicturesAreMadeAnew(t *testing.T) {
	heic, err := os.ReadFile("../pictures/testdata/located.heic")
	if err != nil {
		t.Fatal(err)
	}
	path := os.Getenv("PATH")
	for what, c := range map[string]struct {
		more func(*publication.Job)
		edit func(data []byte) []byte
	}{
		"all":             {func(job *publication.Job) { job.All = true }, nil},
		"another program": {func(job *publication.Job) { job.Version = "another" }, nil},
		"another file":    {nil, func(data []byte) []byte { return append(slices.Clone(data), 0) }},
	} {
		t.Run(what, func(t *testing.T) {
			t.Setenv("PATH", path)
			lib, _ := theLibrary()
			fleet := sample.Many(lib, 1, 1)
			name := "pictures/" + sample.Code(0) + "/body from the left.heic"
			fleet[name] = &fstest.MapFile{Data: heic}
			target := filepath.Join(t.TempDir(), "site")
			if _, found, err := publishFiles(fleet, target, nil); err != nil || found.HasErrors() {
				t.Fatal(err, found)
			}
			t.Setenv("PATH", t.TempDir())
			if c.edit != nil {
				fleet[name] = &fstest.MapFile{Data: c.edit(heic)}
			}
			_, found, err := publishFiles(fleet, target, c.more)
			if err != nil || !slices.ContainsFunc(found, func(p problem.Problem) bool { return p.Code == spec.NeedsProgram }) {
				t.Errorf("it was not made anew: %v %v", err, found)
			}
		})
	}
}

// A HEIC keeps nothing from being published where no program reads it, and is shown
// as soon as one does.
func TestHEICOnceItCanBeRead(t *testing.T) {
	heic, err := os.ReadFile("../pictures/testdata/located.heic")
	if err != nil {
		t.Fatal(err)
	}
	lib, _ := theLibrary()
	files := sample.Many(lib, 2, 1)
	name := "pictures/" + sample.Code(0) + "/body from the left.jpg" // as phones call it
	files[name] = &fstest.MapFile{Data: heic}
	target := filepath.Join(t.TempDir(), "site")
	path := os.Getenv("PATH")
	for _, c := range []struct {
		path    string
		written int
		told    bool
	}{{t.TempDir(), 2, true}, {t.TempDir(), 0, true}, {path, 1, false}, {path, 0, false}} {
		t.Setenv("PATH", c.path)
		made, found, err := publishFiles(files, target, nil)
		if err != nil || found.HasErrors() {
			t.Fatal(err, found)
		}
		told := slices.ContainsFunc(found, func(p problem.Problem) bool { return p.Code == spec.NeedsProgram && p.File == name })
		if made.Written != c.written || told != c.told {
			t.Errorf("%d vans written, want %d; told of the program: %v, want %v", made.Written, c.written, told, c.told)
		}
		shown, err := filepath.Glob(filepath.Join(target, "hirers/pictures/*"))
		if err != nil || (len(shown) == 0) != c.told {
			t.Errorf("%d files of the picture, %v", len(shown), err)
		}
	}
}
