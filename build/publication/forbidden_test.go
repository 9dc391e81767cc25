package publication_test

import (
	"context"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// before runs a script in every page before its own.
func (b *browser) before(t *testing.T, script string) {
	t.Helper()
	b.run(t, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, cdppage.AddScriptToEvaluateOnNewDocument, cdppage.AddScriptToEvaluateOnNewDocumentParams{Source: script})
		return err
	}))
}

// throws is a script after which a property of something throws as browsers do
// where somebody forbade storage.
func throws(of, property string) string {
	return `Object.defineProperty(` + of + `, "` + property + `", { get() { throw new DOMException("forbidden", "SecurityError"); } });`
}

// Where a browser keeps nothing, by settings or in a private window, a page does
// all that it can do without, and nothing complains.
func TestStorageForbidden(t *testing.T) {
	server := serve(t, demoSite(t))
	for name, script := range map[string]string{
		"storage throws": throws("window", "localStorage") + throws("window", "caches") +
			`navigator.serviceWorker.register = () => Promise.reject(new DOMException("forbidden", "SecurityError"));`,
		"writing throws": `Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
			window.localStorage = new Proxy(localStorage, { set() { throw new DOMException("full", "QuotaExceededError"); } });` + throws("Navigator.prototype", "serviceWorker"),
		"no workers": `delete Navigator.prototype.serviceWorker;`,
	} {
		t.Run(name, func(t *testing.T) {
			b := newBrowser(t, 390, 844)
			b.before(t, script)
			b.run(t, chromedp.Navigate(server.URL+"/RW/"), chromedp.WaitVisible("#night"), chromedp.Click("#night"))
			if got := ask(t, b, chromedp.Evaluate[string](`getComputedStyle(document.body).backgroundColor`)); got != "rgb(18, 11, 6)" {
				t.Errorf("in the night the page is %s", got)
			}
			if got := b.search(t, "gas bottle"); !strings.HasPrefix(got, "G") {
				t.Errorf("search finds %q", got)
			}
			b.run(t, chromedp.Navigate(server.URL+"/RW/do/arriving/"), chromedp.Click(`.steps li:nth-child(2) .step`))
			if got := ask(t, b, chromedp.Evaluate[string](`document.querySelector(".tally").textContent`)); !strings.Contains(got, " left") {
				t.Errorf("a tick is counted as %q", got)
			}
			if !ask(t, b, chromedp.Evaluate[bool](`document.getElementById("kept").hidden`)) {
				t.Error("the page says that the guide is on the phone")
			}
			b.quiet(t)
		})
	}
}

// Where the worker is let in but may keep nothing, pages come from the network.
func TestWorkerThatMayKeepNothing(t *testing.T) {
	site := publishFleet(t, pictured(t))
	h := newHost(t, site)
	h.instead(func(w http.ResponseWriter, r *http.Request) bool {
		if r.URL.Path != "/AA/kept.js" {
			return false
		}
		script, err := os.ReadFile(filepath.Join(site, "hirers", "AA", "kept.js"))
		if err != nil {
			t.Error(err)
		}
		w.Header().Set("Content-Type", "text/javascript")
		_, _ = w.Write([]byte(throws("self", "caches") + string(script)))
		return true
	})
	b := newBrowser(t, 390, 844)
	b.run(t, chromedp.Navigate(h.URL+"/AA/L1/"))
	wait(t, b, "the worker controls the page", "navigator.serviceWorker.controller")
	for path, want := range map[string]string{"/AA/": "AA", "/AA/L1/": "Bike box", "/AA/L1": "Bike box", "/AA/about/fire/": "Fire"} {
		if got := visit(t, b, h.URL+path); got != want {
			t.Errorf("%s shows %q, want %q", path, got, want)
		}
	}
	if !ask(t, b, chromedp.Evaluate[bool](`document.getElementById("kept").hidden`)) {
		t.Error("the page says that the guide is on the phone")
	}
	b.quiet(t)
}
