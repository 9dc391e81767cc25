package publication_test

import (
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// host is a web host that can be changed while phones use it: other files under
// a path, answers of its own, and gone for good.
type host struct {
	*httptest.Server
	mu     sync.Mutex
	sites  map[string]string // path with slashes at both ends -> folder of a site
	answer func(http.ResponseWriter, *http.Request) bool
}

// newHost serves the hirer tree of a site at its root.
func newHost(t *testing.T, site string) *host {
	t.Helper()
	h := &host{sites: map[string]string{"/": site}}
	h.Server = httptest.NewServer(h)
	t.Cleanup(h.Close)
	return h
}

func (h *host) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	// Two sites of a test may be of the same second, which a publish into one
	// folder never lets happen: nothing is called unchanged by its time.
	r.Header.Del("If-Modified-Since")
	h.mu.Lock()
	answer := h.answer
	mount := ""
	for path := range h.sites {
		if strings.HasPrefix(r.URL.Path, path) && len(path) > len(mount) {
			mount = path
		}
	}
	folder := h.sites[mount]
	h.mu.Unlock()
	if answer != nil && answer(w, r) {
		return
	}
	files := http.FileServer(http.Dir(filepath.Join(folder, "hirers")))
	http.StripPrefix(strings.TrimSuffix(mount, "/"), files).ServeHTTP(w, r)
}

// put serves another site at a path.
func (h *host) put(path, site string) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.sites[path] = site
}

// instead answers requests before the files do, where it says true.
func (h *host) instead(answer func(http.ResponseWriter, *http.Request) bool) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.answer = answer
}

// stop takes the host away: a browser's own offline switch would not reach a
// worker.
func (h *host) stop() {
	h.CloseClientConnections()
	h.Close()
}

// wait asks the page for an expression, which may be a promise, until it is true
// or too long has passed. A page that is just being left is asked again.
func wait(t *testing.T, b *browser, what, expression string) bool {
	t.Helper()
	for until := time.Now().Add(2 * time.Minute); time.Now().Before(until); time.Sleep(30 * time.Millisecond) {
		is, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](`(async () => { try { return Boolean(`+expression+`); } catch { return false; } })()`, chromedp.EvalAwaitPromise))
		if err == nil && is {
			return true
		}
		if err != nil {
			b.stopIfGone(t)
		}
	}
	if what != "" {
		shown, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](`(async () => JSON.stringify([location.href, document.body.textContent.slice(0, 200), await caches.keys(), (await navigator.serviceWorker.getRegistrations()).map((r) => r.scope)]))()`, chromedp.EvalAwaitPromise))
		t.Fatalf("never: %s; the page is %s %v", what, shown, err)
	}
	return false
}

const controls = `navigator.serviceWorker.controller && !document.getElementById("kept").hidden`

// scan opens an address as a phone does that scanned a label, and waits until
// the whole guide is on the phone.
func scan(t *testing.T, b *browser, address string) {
	t.Helper()
	b.run(t, chromedp.Navigate(address))
	wait(t, b, "the guide is on the phone", controls)
}

// visit opens an address and gives the heading it shows, "" where nothing opens.
func visit(t *testing.T, b *browser, address string) string {
	t.Helper()
	if err := chromedp.Do(b.ctx, chromedp.Navigate(address)); err != nil {
		b.stopIfGone(t)
		return ""
	}
	return ask(t, b, chromedp.Evaluate[string](`(document.querySelector("h1")||{textContent:""}).textContent`))
}
