package publication_test

import (
	"context"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"testing"

	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// staffKinds are pages of every kind of the staff tree.
var staffKinds = []string{"", "fleet/", "fleet/gas/", "builds/", "due/", "labels/", "RW/", "RW/facts/", "RW/do/handover/"}

func serveStaff(t *testing.T) *httptest.Server {
	t.Helper()
	server := httptest.NewServer(http.FileServer(http.Dir(filepath.Join(demoSite(t), "staff"))))
	t.Cleanup(server.Close)
	return server
}

// axe finds nothing on the staff's pages, light and dark, and none is wider than
// a phone: what is wider scrolls by itself.
func TestStaffAccess(t *testing.T) {
	server := serveStaff(t)
	axe, err := os.ReadFile(filepath.Join(npmPackage(t, "axe-core"), "axe.min.js"))
	if err != nil {
		t.Fatal(err)
	}
	b := newBrowser(t, 390, 844)
	b.run(t, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error { // axe is no part of the page
		_, err := chromedp.Call(ctx, cdppage.SetBypassCSP, cdppage.SetBypassCSPParams{Enabled: true})
		return err
	}))
	for i, page := range staffKinds {
		scheme := []string{"light", "dark"}[i%2]
		b.run(t, emulateScheme(scheme), chromedp.Navigate(server.URL+"/"+page))
		ask(t, b, chromedp.Evaluate[bool](string(axe)+";true"))
		for _, fault := range ask(t, b, chromedp.Evaluate[[]string](faults, chromedp.EvalAwaitPromise)) {
			t.Errorf("%s, staff/%s: %s", scheme, page, fault)
		}
		if ask(t, b, chromedp.Evaluate[bool](`document.documentElement.scrollWidth > innerWidth`)) {
			t.Errorf("staff/%s is wider than the screen", page)
		}
	}
}

// A tap on a heading sorts a table of the fleet, numbers as numbers; the field
// above it leaves the rows in which every word stands.
func TestStaffTablesSortAndFilter(t *testing.T) {
	server := serveStaff(t)
	b := newBrowser(t, 1280, 800)
	b.run(t, chromedp.Navigate(server.URL+"/"))
	codes := func() string {
		return ask(t, b, chromedp.Evaluate[string](`[...document.querySelector("table").tBodies[0].rows].filter((r) => !r.hidden).map((r) => r.querySelector(".tag").textContent).join(" ")`))
	}
	sort := func(column string) {
		b.run(t, chromedp.Click(`table:first-of-type th:nth-child(`+column+`) .sort`))
	}
	if got := codes(); got != "AD DP HZ LT RW SK" {
		t.Fatalf("at first %s", got)
	}
	for _, c := range []struct{ column, want string }{
		{"5", "DP LT RW HZ SK AD"}, // 79, 80, 96, 100, 102, 103 systems
		{"5", "AD SK HZ RW LT DP"}, // and the other way
		{"4", "AD HZ RW LT SK DP"}, // days of specs
		{"1", "AD DP HZ LT RW SK"},
	} {
		if sort(c.column); codes() != c.want {
			t.Errorf("by column %s: %s, not %s", c.column, codes(), c.want)
		}
	}
	b.run(t, chromedp.SendKeys(".filter input", "MOOR-700 alder"))
	if got := codes(); got != "AD" {
		t.Errorf("filtered: %s", got)
	}
	if got := ask(t, b, chromedp.Text(".filter output")); got != "1/6" {
		t.Errorf("%q", got)
	}
	b.quiet(t)
}
