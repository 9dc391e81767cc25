package publication_test

import (
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/chromedp/chromedp"

	"doorpocket/build/guide"
	"doorpocket/build/offline"
	"doorpocket/build/render"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/content"
	"doorpocket/layouts"
)

// arabic are words of a language that runs from right to left, in place of those
// of the English files; what is not among them stays English.
var arabic = map[string]string{
	`find            = "Find"`:                       `find            = "بحث"`,
	`call_us         = "Call us"`:                    `call_us         = "اتصل بنا"`,
	`call            = "Who to call"`:                `call            = "بمن تتصل"`,
	`"Call {$name}"`:                                 `"اتصل بـ {$name}"`,
	`"{$count} steps, in this order"`:                `"{$count} خطوات بهذا الترتيب"`,
	`title = "Gas cylinders"`:                        `title = "أسطوانات الغاز"`,
	`along           = ", {$length} from the front"`: `along           = "، {$length} من المقدمة"`,
	"This locker holds the gas":                      "تحمل كل أسطوانة {$net} من الغاز. This locker holds the gas",
}

// inArabic gives files and, beside each that is in English, the same for "ar".
func inArabic(t *testing.T, files fs.FS) fs.FS {
	t.Helper()
	all := fstest.MapFS{}
	err := fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(files, name)
		all[name] = &fstest.MapFile{Data: data}
		if strings.Contains(name, ".en.") {
			text := string(data)
			for english, words := range arabic {
				text = strings.ReplaceAll(text, english, words)
			}
			all[strings.Replace(name, ".en.", ".ar.", 1)] = &fstest.MapFile{Data: []byte(text)}
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// arabicGuide writes the guide of one demonstration van in Arabic, and gives the
// folder.
func arabicGuide(t *testing.T) string {
	t.Helper()
	lib, found := components.Load(inArabic(t, components.Embedded()))
	files := inArabic(t, content.Fleet()).(fstest.MapFS)
	files["fleet.toml"].Data = []byte(strings.Replace(string(files["fleet.toml"].Data), `["en"]`, `["ar"]`, 1))
	maps.DeleteFunc(files, func(name string, _ *fstest.MapFile) bool {
		return strings.HasPrefix(name, "pages/") && strings.Contains(name, ".en.")
	})
	fleet, more := spec.Load(files, "", lib)
	if found.Add(more...); found.HasErrors() {
		t.Fatal(found)
	}
	r, err := render.New(inArabic(t, layouts.Files()))
	if err != nil {
		t.Fatal(err)
	}
	g, problems := guide.NewKit(&fleet.Operator, "ar").Build(fleet.Vans[slices.IndexFunc(fleet.Vans, func(v *spec.Van) bool { return v.Code == "RW" })])
	if problems.HasErrors() {
		t.Fatal(problems)
	}
	pages, err := r.Van(g)
	if err != nil {
		t.Fatal(err)
	}
	var listed []offline.File
	for _, p := range pages {
		listed = append(listed, offline.File{Path: p.Path, Sum: offline.Sum(p.Data)})
	}
	worker, err := r.Worker([]*guide.Guide{g}, listed, nil)
	if err != nil {
		t.Fatal(err)
	}
	pages = append(pages, worker)
	site := t.TempDir()
	for _, s := range append(r.Shared(), render.Roots([]spec.Summary{{Code: "RW", Name: "Rowan"}})...) {
		pages = append(pages, render.File(s))
	}
	for _, made := range fleet.Pictures {
		for _, v := range made.All() {
			pages = append(pages, render.File{Path: render.PictureFolder + v.Name, Data: v.Data})
		}
	}
	for _, p := range pages {
		name := filepath.Join(site, "hirers", p.Path)
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, p.Data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return site
}

// order tells whether a text on the page runs from left to right: its first
// letter stands before its last.
const order = `((wanted) => {
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node; (node = walker.nextNode()); ) {
    const at = node.data.indexOf(wanted);
    if (at < 0 || !node.parentElement.checkVisibility()) continue;
    const place = (i) => { const range = document.createRange(); range.setStart(node, at + i); range.setEnd(node, at + i + 1); return range.getBoundingClientRect(); };
    const first = place(0), last = place(wanted.length - 1);
    return first.left < last.left ? "from left to right" : "from right to left";
  }
  return "nowhere";
})`

// A guide in a language that runs from right to left is laid out from the
// right: numbers of steps, pictures of places, tables, bars. Figures with their
// units, phone numbers, codes and addresses keep their order.
func TestRightToLeft(t *testing.T) {
	server := serve(t, arabicGuide(t))
	b := newBrowser(t, 390, 844)
	at := func(selector, side string) float64 {
		return ask(t, b, chromedp.Evaluate[float64](`document.querySelector("`+selector+`").getBoundingClientRect().`+side))
	}
	for _, page := range []string{"", "G1/", "E1/", "do/before-driving/", "wrong/gas-smell/", "about/masses/"} {
		b.run(t, chromedp.Navigate(server.URL+"/RW/"+page))
		if got := ask(t, b, chromedp.Evaluate[string](`getComputedStyle(document.body).direction`)); got != "rtl" {
			t.Errorf("/RW/%s runs %s", page, got)
		}
		if ask(t, b, chromedp.Evaluate[bool](`document.documentElement.scrollWidth > innerWidth`)) {
			t.Errorf("/RW/%s is wider than the screen", page)
		}
		if van, call := at(".bar a:first-child", "left"), at(".bar a:last-child", "left"); van < call {
			t.Errorf("/RW/%s: the bar begins at %v and ends at %v", page, van, call)
		}
		for _, text := range []string{"+44 1632 960178", "guide.lanternfold.example/RW/" + page} {
			if got := ask(t, b, chromedp.Evaluate[string](order+`("`+text+`")`)); got != "from left to right" {
				t.Errorf("/RW/%s: %s stands %s", page, text, got)
			}
		}
	}
	b.run(t, chromedp.Navigate(server.URL+"/RW/G1/"))
	for text, want := range map[string]string{"٦ kg": "from left to right", "٤٫١٥ m": "from left to right", "أسطوانات": "from right to left"} {
		text = strings.ReplaceAll(text, " ", "\u00a0")
		if got := ask(t, b, chromedp.Evaluate[string](order+`("`+text+`")`)); got != want {
			t.Errorf("%q stands %s, want %s", text, got, want)
		}
	}
	if where, text := at(".where", "left"), at(".intro p", "right"); where > 195 || text < 300 {
		t.Errorf("the drawing of the place begins at %v, the text ends at %v", where, text)
	}
	if head, number := at("figure.table thead th:first-child", "left"), at("figure.table thead th:last-child", "left"); head < number {
		t.Errorf("the first column begins at %v, the last at %v", head, number)
	}
	b.run(t, chromedp.Navigate(server.URL+"/RW/do/before-driving/"))
	if step, list := at(".steps > li .step", "right"), at(".steps", "right"); list-step < 30 {
		t.Errorf("there is no room on the right for the numbers of steps: %v, %v", step, list)
	}
	b.quiet(t)
}
