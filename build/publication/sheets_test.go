package publication_test

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"golang.org/x/net/html"

	"doorpocket/build/guide"
	"doorpocket/build/render"
	"doorpocket/layouts"
)

// The sheets of the staff tree come out of a browser's printer on A4 with the
// van and the revision on every page, all their words in order and none in the
// margin, and with boxes that a pen fits into.
func TestSheetsPrint(t *testing.T) {
	site := demoSite(t)
	b := newBrowser(t, 1280, 800)
	r, err := render.New(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	fleet := demoFleet(t)
	kit := guide.NewKit(&fleet.Operator, "en")
	for _, read := range fleet.Reads() {
		g, _ := kit.Build(read.Van)
		routines, _ := kit.StaffRoutines(g, fleet.StaffRoutines, read.Staff.Added)
		sheets, err := r.SaidSheets(g, g.Sheets(routines, read))
		if err != nil || len(sheets) < 4 {
			t.Fatal(len(sheets), err)
		}
		if read.Van.Code != "RW" {
			sheets = sheets[:1] // the longest, of the others
		}
		for _, sheet := range sheets {
			pdf := b.print(t, filepath.Join(site, "staff", sheet.Code, "sheets", sheet.ID, "index.html"))
			pages := pagesOf(t, pdf)
			looksWhole(t, sheet, pages)
			inMargins(t, sheet.Code+" "+sheet.ID, pdf)
		}
	}
	if small := ask(t, b, chromedp.Evaluate[int](`[...document.querySelectorAll(".pen")].filter((e) => e.getBoundingClientRect().width < 5 / 25.4 * 96 || e.getBoundingClientRect().height < 5 / 25.4 * 96).length`)); small > 0 {
		t.Errorf("%d boxes are smaller than 5 mm", small)
	}
	if none := ask(t, b, chromedp.Evaluate[int](`document.querySelectorAll(".pen").length`)); none == 0 {
		t.Error("no boxes")
	}
	b.quiet(t)
}

// print opens a file and prints it, on the paper that it asks for.
func (b *browser) print(t *testing.T, file string) string {
	t.Helper()
	file, err := filepath.Abs(file)
	if err != nil {
		t.Fatal(err)
	}
	yes := true
	b.run(t, chromedp.Navigate("file://"+file))
	var result cdppage.PrintToPDFResult
	b.run(t, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) (err error) {
		result, err = chromedp.Call(ctx, cdppage.PrintToPDF, cdppage.PrintToPDFParams{PreferCSSPageSize: &yes, PrintBackground: &yes})
		return err
	}))
	out := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(out, result.Data, 0o644); err != nil {
		t.Fatal(err)
	}
	return out
}

// pagesOf are the words of each page as they stand on it.
func pagesOf(t *testing.T, pdf string) []string {
	t.Helper()
	out, err := exec.Command("pdftotext", "-layout", pdf, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	var pages []string
	for page := range strings.SplitSeq(strings.TrimSuffix(string(out), "\f"), "\f") {
		pages = append(pages, page)
	}
	return pages
}

// looksWhole looks at the ends of every page and for every step.
func looksWhole(t *testing.T, sheet render.SaidSheet, pages []string) {
	t.Helper()
	for n, page := range pages {
		text := strings.Join(strings.Fields(page), "")
		for _, want := range []string{
			sheet.Code + " " + sheet.Name + " · " + sheet.Registration, sheet.Spec + " · revision " + sheet.Revision, fmt.Sprintf("page %d of %d", n+1, len(pages)),
		} {
			if !strings.Contains(text, strings.ReplaceAll(want, " ", "")) {
				t.Errorf("%s %s: page %d of %d does not say %q", sheet.Code, sheet.ID, n+1, len(pages), want)
			}
		}
		if sheet.Hirer && strings.Contains(text, "Forstaffonly") {
			t.Errorf("%s %s: page %d says that it is for staff, but a hirer signs it", sheet.Code, sheet.ID, n+1)
		}
	}
	if len(pages) > 18 {
		t.Errorf("%s %s: %d pages", sheet.Code, sheet.ID, len(pages))
	}
	// In columns, so the first words of each step are looked for, in order.
	rest := strings.Join(pages, "\n")
	steps := 0
	for _, leg := range sheet.Walk {
		for _, step := range leg.Steps {
			steps++
			words := strings.Fields(step.Text)
			begin := strconv.Itoa(step.Number) + " +" + regexp.QuoteMeta(words[0]) + " " + regexp.QuoteMeta(words[min(1, len(words)-1)])
			at := regexp.MustCompile(begin).FindStringIndex(rest)
			if at == nil {
				t.Errorf("%s %s: step %d is not where it should be: %q", sheet.Code, sheet.ID, step.Number, step.Text)
				continue
			}
			rest = rest[at[1]:]
		}
	}
	if steps == 0 || strings.Count(rest, sheet.Fill[1]) != len(sheet.Sign) {
		t.Errorf("%s %s: %d steps, and not %d to sign after them", sheet.Code, sheet.ID, steps, len(sheet.Sign))
	}
}

var (
	printedPage = regexp.MustCompile(`<page width="([0-9.]+)" height="([0-9.]+)">`)
	printedWord = regexp.MustCompile(`<word xMin="([0-9.-]+)" yMin="([0-9.-]+)" xMax="([0-9.-]+)" yMax="([0-9.-]+)">(.*?)</word>`)
)

// inMargins looks that no word stands where printers do not reach.
func inMargins(t *testing.T, name, pdf string) {
	t.Helper()
	const point, margin = 25.4 / 72, 5.0
	out, err := exec.Command("pdftotext", "-bbox", pdf, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	mm := func(text string) float64 {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v * point
	}
	for _, size := range printedPage.FindAllStringSubmatch(string(out), -1) {
		if w, h := mm(size[1]), mm(size[2]); w < 209 || w > 211 || h < 296 || h > 298 {
			t.Fatalf("%s: printed on %.0f x %.0f mm", name, w, h)
		}
	}
	words := printedWord.FindAllStringSubmatch(string(out), -1)
	for _, m := range words {
		if mm(m[1]) < margin || mm(m[3]) > 210-margin || mm(m[2]) < margin || mm(m[4]) > 297-margin {
			t.Errorf("%s: %q stands in the margin", name, html.UnescapeString(m[5]))
		}
	}
	if len(words) < 100 {
		t.Errorf("%s: %d words", name, len(words))
	}
}
