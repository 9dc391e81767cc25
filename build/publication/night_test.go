package publication_test

import (
	"net/url"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// Night colours are chosen by a tap and stay on every page, from before it is
// drawn; another tap takes them off again.
func TestNightColours(t *testing.T) {
	server := serve(t, demoSite(t))
	b := newBrowser(t, 390, 844)
	paper := `getComputedStyle(document.body).backgroundColor`
	night := "rgb(18, 11, 6)"
	b.run(t, chromedp.Navigate(server.URL+"/RW/"), chromedp.WaitVisible("#night"))
	if got := ask(t, b, chromedp.Evaluate[string](paper)); got == night {
		t.Error("it is night before anybody asked")
	}
	b.run(t, chromedp.Click("#night"))
	for _, page := range []string{"RW/", "RW/G1/", "RW/do/arriving/", "RW/wrong/gas-smell/", "AD/"} {
		b.run(t, chromedp.Navigate(server.URL+"/"+page), chromedp.WaitVisible("#night"))
		if got := ask(t, b, chromedp.Evaluate[string](paper)); got != night {
			t.Errorf("%s is %s in the night", page, got)
		}
		if got := ask(t, b, chromedp.Evaluate[string](`document.getElementById("night").getAttribute("aria-pressed")`)); got != "true" {
			t.Errorf("%s: the button is pressed: %s", page, got)
		}
	}
	b.run(t, chromedp.Click("#night"), chromedp.Navigate(server.URL+"/RW/G1/"), chromedp.WaitVisible("#night"))
	if got := ask(t, b, chromedp.Evaluate[string](paper)); got == night {
		t.Error("the night does not end")
	}
	b.quiet(t)
}

// The link that tells of a fault opens a mail with the van, the label, the page
// and the revision that stands on the page.
func TestReportOfAFault(t *testing.T) {
	page := files(t, demoSite(t))["hirers/RW/G1/index.html"]
	_, rest, _ := strings.Cut(page, `href="mailto:help@lanternfold.example?subject=`)
	address, _, ok := strings.Cut(rest, `"`)
	if !ok {
		t.Fatal("no such link")
	}
	said, err := url.QueryUnescape(strings.ReplaceAll(address, "&amp;body=", "\n"))
	if err != nil {
		t.Fatal(err)
	}
	_, revision, _ := strings.Cut(page, "revision ")
	for _, want := range []string{"Fault: RW G1 Gas cylinders\n", "Van RW Rowan.", "Label: G1.", "Page: Gas cylinders.", "Revision: " + revision[:6] + ".", "\r\n"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %q", want, said)
		}
	}
}
