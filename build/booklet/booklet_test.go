package booklet_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"doorpocket/build/booklet"
	"doorpocket/build/guide"
	"doorpocket/build/paper"
	"doorpocket/build/render"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/content"
	"doorpocket/layouts"
)

func press(t *testing.T) booklet.Press {
	t.Helper()
	stock, err := paper.Open(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	r, err := render.New(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	return booklet.Press{Stock: stock, Render: r}
}

var demo = sync.OnceValue(func() *spec.Fleet {
	lib, _ := components.Load(components.Embedded())
	fleet, _ := spec.Load(content.Fleet(), "content/", lib)
	return fleet
})

func guideOf(t *testing.T, code string) *guide.Guide {
	t.Helper()
	for _, v := range demo().Vans {
		if v.Code == code {
			g, _ := guide.NewKit(&demo().Operator, "en").Build(v)
			return g
		}
	}
	t.Fatalf("no van %s", code)
	return nil
}

// squeezed is text with single spaces.
func squeezed(text string) string { return strings.Join(strings.Fields(text), " ") }

// read prints a booklet and reads the words of each page back.
func read(t *testing.T, g *guide.Guide) (pages []string, made booklet.Made) {
	t.Helper()
	var b bytes.Buffer
	made, err := press(t).Print(g, &b)
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "booklet.pdf")
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("qpdf", "--check", file).CombinedOutput(); err != nil {
		t.Errorf("qpdf: %v\n%s", err, out)
	}
	out, err := exec.Command("pdftotext", "-raw", file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	for page := range strings.SplitSeq(strings.TrimSuffix(string(out), "\f"), "\f") {
		pages = append(pages, squeezed(page))
	}
	return pages, made
}

// rowan is read once for all tests.
var (
	once  sync.Once
	pages []string
	made  booklet.Made
)

func rowan(t *testing.T) (*guide.Guide, []string, booklet.Made) {
	g := guideOf(t, "RW")
	once.Do(func() { pages, made = read(t, g) })
	if len(pages) == 0 {
		t.Fatal("no booklet")
	}
	return g, pages, made
}

// Every page but the cover says van, day of the spec, revision and its number.
func TestFootOfEveryPage(t *testing.T) {
	g, pages, made := rowan(t)
	if made.Pages != len(pages) || len(made.Revision) != 6 {
		t.Errorf("%+v, but %d pages", made, len(pages))
	}
	for n, text := range pages[1:] {
		want := fmt.Sprintf("Rowan RW · Spec of %s · revision %s page %d of %d", g.SpecDate(), made.Revision, n+2, len(pages))
		if !strings.Contains(text, want) {
			t.Errorf("page %d does not say %q", n+2, want)
		}
	}
	for _, want := range []string{"Rowan RW", demo().Call.Helpline, demo().Call.Emergency, "guide.lanternfold.example/RW/", made.Revision} {
		if !strings.Contains(pages[0], want) {
			t.Errorf("the cover does not say %q", want)
		}
	}
}

// The contents name every part of the guide with the page on which it begins.
func TestContentsAreRight(t *testing.T) {
	g, pages, _ := rowan(t)
	front := ""
	for _, text := range pages[1:6] {
		front += " " + text
	}
	look := func(title string) {
		m := regexp.MustCompile(regexp.QuoteMeta(title) + ` ([0-9]+)\b`).FindStringSubmatch(front)
		if m == nil {
			t.Errorf("the contents do not name %q", title)
			return
		}
		n, err := strconv.Atoi(m[1])
		if err != nil || n > len(pages) || !strings.Contains(pages[n-1], title) {
			t.Errorf("%q is not on page %s", title, m[1])
		}
	}
	for _, p := range g.Pages {
		look(p.Title)
	}
	for _, r := range g.Routines {
		look(r.Words.Title)
	}
	for _, s := range g.Symptoms {
		look(s.Words.Title)
	}
	for _, own := range g.Operator.Pages {
		look(own.Words["en"].Title)
	}
}

// Whatever the guide says is in the booklet: steps with the caution before
// them on the same page, checks, and the numbers of every table.
func TestNothingIsLost(t *testing.T) {
	g, pages, _ := rowan(t)
	all := strings.Join(pages, " ")
	has := func(what, text string) {
		if text = squeezed(text); text != "" && !strings.Contains(all, text) && !strings.Contains(strings.ReplaceAll(all, " ", ""), strings.ReplaceAll(text, " ", "")) {
			t.Errorf("%s is lost: %q", what, text)
		}
	}
	for _, r := range g.Routines {
		for _, s := range r.Steps {
			f := guide.Filler{Guide: g, Page: s.Page}
			if len(s.Words.Links()) > 0 {
				continue // a page number stands within it
			}
			step := squeezed(f.Text(s.Words))
			has(r.ID, step)
			if s.Caution == nil {
				continue
			}
			avoid := squeezed(f.Text(s.Caution.Words.Avoid))
			if len(s.Caution.Words.Avoid.Links()) == 0 && !together(pages, avoid, step) {
				t.Errorf("%s: the caution %q is on no page with %q", r.ID, avoid, step)
			}
		}
	}
	for _, p := range g.Pages {
		for _, table := range p.Tables {
			for _, row := range table.Rows {
				for _, cell := range row {
					has(table.ID, cell.Text)
				}
			}
		}
		for _, c := range p.Cautions {
			has(p.Title, guide.Filler{Guide: g, Page: p}.Text(c.Words.Hazard))
		}
	}
}

func together(pages []string, first, second string) bool {
	for _, page := range pages {
		// A long sentence may be broken at a hyphen of its own.
		i := strings.Index(page, first)
		if i >= 0 && strings.Contains(page[i:], second) {
			return true
		}
	}
	return false
}

// The same guide gives the same bytes.
func TestReproducible(t *testing.T) {
	p, g := press(t), guideOf(t, "LT")
	var first, second bytes.Buffer
	for _, b := range []*bytes.Buffer{&first, &second} {
		if _, err := p.Print(g, b); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("two booklets differ")
	}
}

// No word of the library needs a character that the font lacks.
func TestFontHasEveryWord(t *testing.T) {
	stock := press(t).Stock
	for _, v := range demo().Vans {
		g := guideOf(t, v.Code)
		for _, p := range g.Pages {
			f := guide.Filler{Guide: g, Page: p}
			for _, d := range p.Words.Page.Docs() {
				if r, ok := stock.Has(strings.ReplaceAll(f.Text(d), "\n", " ")); !ok {
					t.Errorf("%s: no glyph for %q", p.Fitted.System.ID, r)
				}
			}
		}
	}
}
