package publication_test

import (
	"context"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

const npmFolder = "../../testdata/npm"

// npmPackage is the folder of a package of npm, all of which are installed first
// where they are not there yet.
func npmPackage(t *testing.T, name string) string {
	t.Helper()
	folder := filepath.Join(npmFolder, "node_modules", name)
	if _, err := os.Stat(folder); err != nil {
		cmd := exec.Command("npm", "ci", "--no-audit", "--no-fund")
		cmd.Dir = npmFolder
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("npm ci: %v\n%s", err, out)
		}
	}
	return folder
}

// kinds are pages of every kind.
var kinds = []string{"", "404.html", "RW/", "RW/G1/", "RW/E1/", "RW/do/before-driving/", "RW/wrong/gas-smell/", "RW/wrong/no-mains/", "RW/about/masses/", "RW/read/first-evening/"}

// staffKinds are pages of every kind in the staff tree.
var staffKinds = []string{"", "due/", "labels/", "systems/", "systems/gas/", "builds/", "builds/ridge-640/", "missing/", "guesses/", "pictures/", "unlabelled/", "booklets/", "reading/",
	"RW/", "RW/facts/", "RW/do/handover/", "RW/sheets/handover/"}

// see sets what a phone asks of pages.
func (b *browser) see(t *testing.T, width int64, features map[string]string) {
	t.Helper()
	var list []*emulation.MediaFeature
	for name, value := range features {
		list = append(list, &emulation.MediaFeature{Name: name, Value: value})
	}
	b.run(t, chromedp.EmulateViewport(width, 844), chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: list})
		return err
	}))
}

// faults runs axe on the page that is open, with all rules or with some.
const faults = `((options) => axe.run(document, options)
  .then((r) => r.violations.flatMap((v) => v.nodes.map((n) => v.id + ": " + n.html.slice(0, 120) + " " + n.failureSummary))))`

const (
	tags        = `runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]`
	allRules    = "{ " + tags + " }"
	shapeRules  = "{ " + tags + `, rules: { "color-contrast": { enabled: false } } }`
	colourRules = `{ runOnly: { type: "rule", values: ["color-contrast", "link-in-text-block"] } }`
)

// small gives what one can tap that is lower than 44 pixels: all but links in
// running text, to which WCAG 2.2 (2.5.8) leaves their height.
const small = `[...document.querySelectorAll("a, button, input, summary")]
  .filter((e) => e.checkVisibility() && !e.closest(".skip") && !(e.matches("a") && e.closest(".prose p, .prose li, .prose td, .caution, .checks p:not(.meta), .intro")))
  .map((e) => (e.closest("label") || e)).filter((e) => e.getBoundingClientRect().height < 43.9)
  .map((e) => Math.round(e.getBoundingClientRect().height) + " px: " + e.outerHTML.slice(0, 90))`

// look is a way in which phones show pages.
type look struct {
	name     string
	width    int64
	features map[string]string
	on, off  string // what a script does for it, and undoes
	rules    string // of shape or of colour alone where the rest is as in light
}

var looks = []look{
	{"light", 390, nil, "", "", allRules},
	{"narrow", 320, nil, "", "", shapeRules},
	{"large text", 390, nil, `document.documentElement.style.fontSize = "212.5%"`, `document.documentElement.style.fontSize = ""`, shapeRules},
	{"dark", 390, map[string]string{"prefers-color-scheme": "dark"}, "", "", colourRules},
	{"high contrast", 390, map[string]string{"forced-colors": "active", "prefers-contrast": "more"}, "", "", colourRules},
	{"night", 390, map[string]string{"prefers-color-scheme": "dark"}, `document.documentElement.classList.add("night")`, `document.documentElement.classList.remove("night")`, colourRules},
}

// axe finds nothing on pages of every kind, as phones show them in light, dark
// and high contrast, at night, on narrow screens and with text twice as large;
// nothing is wider than the screen or too low for a thumb.
func TestAccess(t *testing.T) {
	site := demoSite(t)
	server := serve(t, site)
	staff := httptest.NewServer(http.FileServer(http.Dir(site)))
	t.Cleanup(staff.Close)
	axe, err := os.ReadFile(filepath.Join(npmPackage(t, "axe-core"), "axe.min.js"))
	if err != nil {
		t.Fatal(err)
	}
	open := func(root, page string, looks []look) {
		t.Run(page, func(t *testing.T) {
			t.Parallel()
			b := newBrowser(t, 390, 844)
			b.trusting(t) // axe is no part of the page
			b.run(t, chromedp.Navigate(root+page))
			ask(t, b, chromedp.Evaluate[bool](string(axe)+";true"))
			for _, l := range looks {
				b.accessible(t, page, l)
			}
		})
	}
	for _, page := range kinds {
		open(server.URL+"/", page, looks)
	}
	for _, page := range staffKinds {
		open(staff.URL+"/", "staff/"+page, []look{looks[0], looks[2], looks[3]})
	}
}

// accessible looks for faults of the page that is open, shown in one way.
func (b *browser) accessible(t *testing.T, page string, l look) {
	t.Helper()
	b.see(t, l.width, l.features)
	ask(t, b, chromedp.Evaluate[bool](l.on+";true"))
	defer func() { ask(t, b, chromedp.Evaluate[bool](l.off+";true")) }()
	for _, fault := range ask(t, b, chromedp.Evaluate[[]string](faults+"("+l.rules+")", chromedp.EvalAwaitPromise)) {
		t.Errorf("%s, /%s: %s", l.name, page, fault)
	}
	for _, target := range ask(t, b, chromedp.Evaluate[[]string](small)) {
		t.Errorf("%s, /%s: too low, %s", l.name, page, target)
	}
	if ask(t, b, chromedp.Evaluate[bool](`document.documentElement.scrollWidth > innerWidth`)) {
		t.Errorf("%s, /%s is wider than the screen", l.name, page)
	}
}

// Every page of a van, of the fleet and of the staff is valid HTML; a page that
// is not is told.
func TestHTMLIsValid(t *testing.T) {
	site := demoSite(t)
	program := filepath.Join(npmPackage(t, "html-validate"), "bin", "html-validate.mjs")
	validate := func(paths ...string) (string, error) {
		out, err := exec.Command("node", append([]string{program, "--config", filepath.Join(npmFolder, "html-validate.json"), "--formatter", "text"}, paths...)...).CombinedOutput()
		return strings.TrimSpace(string(out)), err
	}
	bad := filepath.Join(t.TempDir(), "bad.html")
	if err := os.WriteFile(bad, []byte("<!doctype html><html lang=\"en\"><title>x</title><p><div></p><img></html>"), 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := validate(bad); err == nil || !strings.Contains(out, "bad.html") {
		t.Fatalf("a broken page passes: %v %s", err, out)
	}
	if out, err := validate(filepath.Join(site, "hirers", "RW"), filepath.Join(site, "hirers", "index.html"), filepath.Join(site, "hirers", "404.html"), filepath.Join(site, "staff")); err != nil || out != "" {
		lines := strings.Split(out, "\n")
		t.Errorf("%v, %d lines:\n%s", err, len(lines), strings.Join(lines[:min(20, len(lines))], "\n"))
	}
}
