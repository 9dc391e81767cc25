package publication_test

import (
	"bytes"
	"fmt"
	"html"
	"image"
	"image/png"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// sheet is one sheet of a page that was printed: its words in reading order, and
// those in the margin at its foot.
type sheet struct{ text, foot string }

// footMargin is the margin at the foot of a sheet, in points.
const footMargin = 20 / 25.4 * 72

var (
	sheetOf = regexp.MustCompile(`(?s)<page width="[\d.]+" height="([\d.]+)">(.*?)</page>`)
	wordOf  = regexp.MustCompile(`<word xMin="[\d.]+" yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">(.*?)</word>`)
)

// paper prints the page that is open on A4, with grounds as those who ask for
// them get them, and gives its sheets and the name of the file.
func paper(t *testing.T, b *browser) ([]sheet, string) {
	t.Helper()
	name := filepath.Join(t.TempDir(), "page.pdf")
	data := ask(t, b, chromedp.PrintToPDF(chromedp.PDFPaper(chromedp.PaperA4), chromedp.PDFPrintBackground()))
	if err := os.WriteFile(name, data, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", "-bbox", name, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	var all []sheet
	for _, page := range sheetOf.FindAllStringSubmatch(string(out), -1) {
		height, err := strconv.ParseFloat(page[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		var text, foot []string
		for _, word := range wordOf.FindAllStringSubmatch(page[2], -1) {
			lowest, err := strconv.ParseFloat(word[2], 64)
			if err != nil {
				t.Fatal(err)
			}
			if lowest > height-footMargin+2 { // letters reach a little below their line
				foot = append(foot, html.UnescapeString(word[3]))
			} else {
				text = append(text, html.UnescapeString(word[3]))
			}
		}
		all = append(all, sheet{strings.Join(text, " "), strings.Join(foot, " ")})
	}
	if len(all) == 0 {
		t.Fatalf("nothing is printed: %s", out)
	}
	return all, name
}

// white is the part of the first sheet of a file that is white, and what its
// corners are.
func white(t *testing.T, file string) (part float64, corners bool) {
	t.Helper()
	out, err := exec.Command("pdftoppm", "-r", "20", "-f", "1", "-l", "1", "-png", file).Output()
	if err != nil {
		t.Fatal(err)
	}
	m, err := png.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	is := func(x, y int) bool {
		r, g, b, _ := m.At(x, y).RGBA()
		return r > 0xf000 && g > 0xf000 && b > 0xf000
	}
	r, n := m.Bounds(), 0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			if is(x, y) {
				n++
			}
		}
	}
	far := r.Max.Sub(image.Pt(1, 1))
	return float64(n) / float64(r.Dx()*r.Dy()), is(0, 0) && is(far.X, 0) && is(0, far.Y) && is(far.X, far.Y)
}

// whole serves both trees of a site.
func whole(t *testing.T, site string) *httptest.Server {
	t.Helper()
	server := httptest.NewServer(http.FileServer(http.Dir(site)))
	t.Cleanup(server.Close)
	return server
}

// chrome is what a page has for a screen and not for paper.
var chrome = []string{"Night colours", "Skip to", "What are you looking for", "Show the new one", "Clear all ticks", "Something broken", "Tap a plate"}

// A page of every kind prints in black on white, whatever the phone's colours,
// without what is there to be tapped. Every sheet says at its foot where the
// page is, which van and revision it is of, and which sheet of how many it is;
// nothing else stands there.
func TestPaper(t *testing.T) {
	server := whole(t, demoSite(t))
	const fleet, van = "Lanternfold Campers", "RW Rowan"
	for i, page := range []struct{ path, where, whose string }{
		{"hirers/", "guide.lanternfold.example/", fleet},
		{"hirers/RW/", "guide.lanternfold.example/RW/", van},
		{"hirers/RW/G1/", "guide.lanternfold.example/RW/G1/", van},
		{"hirers/RW/K7/", "guide.lanternfold.example/RW/K7/", van}, // its thing is gone
		{"hirers/WR/", "guide.lanternfold.example/WR/", "WR Wren"}, // the van is gone
		{"hirers/RW/do/arriving/", "guide.lanternfold.example/RW/do/arriving/", van},
		{"hirers/RW/wrong/gas-smell/", "guide.lanternfold.example/RW/wrong/gas-smell/", van},
		{"hirers/RW/read/first-evening/", "guide.lanternfold.example/RW/read/first-evening/", van},
		{"staff/", "For staff only · staff/", "Staff"},
		{"staff/RW/", "For staff only · staff/RW/", van},
		{"staff/RW/do/check-in/", "For staff only · staff/RW/do/check-in/", van},
		{"staff/due/", "For staff only · staff/due/", "What falls due"},
		{"staff/labels/", "For staff only · staff/labels/", "Label register"},
	} {
		t.Run(page.path, func(t *testing.T) {
			t.Parallel()
			b := newBrowser(t, 390, 844)
			b.run(t, emulateScheme([]string{"dark", "light"}[i%2]), chromedp.Navigate(server.URL+"/"+page.path))
			ask(t, b, chromedp.Evaluate[bool](`document.documentElement.classList.toggle("night", `+strconv.FormatBool(i%3 == 0)+`), true`))
			sheets, file := paper(t, b)
			revision := ""
			for n, s := range sheets {
				if m := regexp.MustCompile(`revision ([2-9A-HJ-NP-Z]{6})`).FindStringSubmatch(s.foot); m != nil {
					revision = m[1]
				}
				if revision == "" {
					t.Fatalf("%s, sheet %d: no revision at the foot: %q", page.path, n+1, s.foot)
				}
				want := fmt.Sprintf("%s %s · revision %s sheet %d of %d", page.where, page.whose, revision, n+1, len(sheets))
				if got := inOrder(s.foot); got != inOrder(want) {
					t.Errorf("%s, sheet %d: at the foot stands %q, not %q", page.path, n+1, s.foot, want)
				}
				for _, words := range chrome {
					if strings.Contains(s.text, words) {
						t.Errorf("%s, sheet %d: %q is no use on paper", page.path, n+1, words)
					}
				}
			}
			if part, corners := white(t, file); part < 0.7 || !corners {
				t.Errorf("%s: %.0f %% of the first sheet are white, its corners: %v", page.path, 100*part, corners)
			}
		})
	}
}

// inOrder puts the words of a text into the order of the alphabet: those of two
// lines side by side come in no certain one.
func inOrder(text string) string {
	words := strings.Fields(text)
	slices.Sort(words)
	return strings.Join(words, " ")
}

// longTable makes the first table of a page longer than a sheet: its rows are
// made tall and say where they begin and end.
const longTable = `(() => {
  const body = document.querySelector("figure.table tbody");
  const row = body.rows[0];
  body.replaceChildren(...Array.from({ length: 40 }, (_, i) => {
    const copy = row.cloneNode(true);
    copy.cells[0].textContent = "begin" + i + " and something more to read ".repeat(1 + i % 7 * 3) + " end" + i;
    return copy;
  }));
  return document.querySelector("figure.table thead").textContent.trim().split(/\s+/)[0];
})()`

// No row of a table is cut where a sheet ends, and each sheet with rows has the
// heads of the columns.
func TestTablesOnPaper(t *testing.T) {
	server := whole(t, demoSite(t))
	b := newBrowser(t, 390, 844)
	b.run(t, chromedp.Navigate(server.URL+"/hirers/RW/G1/"))
	head := ask(t, b, chromedp.Evaluate[string](longTable))
	sheets, _ := paper(t, b)
	rows, across := 0, 0
	for n, s := range sheets {
		begun := regexp.MustCompile(`\bbegin(\d+)\b`).FindAllStringSubmatch(s.text, -1)
		for _, m := range begun {
			if !strings.Contains(s.text+" ", " end"+m[1]+" ") {
				t.Errorf("sheet %d: row %s is cut", n+1, m[1])
			}
		}
		if rows += len(begun); len(begun) > 0 {
			across++
			if !strings.Contains(s.text, head) {
				t.Errorf("sheet %d: no heads over its rows", n+1)
			}
		}
	}
	if rows != 40 || across < 2 {
		t.Errorf("%d rows on %d sheets: this says nothing about where a sheet ends", rows, across)
	}
}

// stepsWithCautions gives the steps of a routine that a caution stands before:
// what it says to avoid, and the step. It makes the cautions of several heights
// first, so that some would end where a sheet does.
const stepsWithCautions = `[...document.querySelectorAll(".steps > li")].filter((li) => li.querySelector(".caution")).map((li, i) => {
  li.querySelector(".caution div p:not(.signs)").style.paddingBottom = i % 5 * 40 + "px";
  return [".caution div b", ".step span"].map((what) => li.querySelector(what).textContent.trim().split(/\s+/).join(" "));
})`

// On paper a caution stands on the sheet of its step.
func TestCautionsStayWithTheirSteps(t *testing.T) {
	server := whole(t, demoSite(t))
	b := newBrowser(t, 390, 844)
	b.run(t, chromedp.Navigate(server.URL+"/hirers/RW/do/before-driving/"))
	steps := ask(t, b, chromedp.Evaluate[[][]string](stepsWithCautions))
	sheets, _ := paper(t, b)
	if len(steps) < 10 || len(sheets) < 4 {
		t.Fatalf("%d steps with cautions on %d sheets", len(steps), len(sheets))
	}
	for _, step := range steps {
		if !slices.ContainsFunc(sheets, func(s sheet) bool { return strings.Contains(s.text, step[0]) && strings.Contains(s.text, step[1]) }) {
			t.Errorf("%q is not on one sheet with %q", step[0], step[1])
		}
	}
}
