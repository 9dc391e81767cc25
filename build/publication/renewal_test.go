package publication_test

import (
	"context"
	"net/http"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
)

// changedFleet publishes the pictured fleet with one text in one file replaced.
func changedFleet(t *testing.T, file, before, after string) string {
	t.Helper()
	files := pictured(t)
	text := string(files[file].Data)
	if !strings.Contains(text, before) {
		t.Fatalf("%s holds no %q", file, before)
	}
	files[file] = &fstest.MapFile{Data: []byte(strings.Replace(text, before, after, 1))}
	return publishFleet(t, files)
}

const (
	bikePage = "systems/living/bike-box/page.en.md"
	shown    = `document.getElementById("newer").checkVisibility()`
	newWords = `document.body.textContent.includes("Good evening.")`
	helpline = `document.body.textContent.includes("+44 1632 960999")`
)

// What is on the phone is shown at once; where the guide changed a quiet line
// says so and brings the new one when it is tapped.
func TestNewGuideIsOffered(t *testing.T) {
	h := newHost(t, publishFleet(t, pictured(t)))
	b := newBrowser(t, 390, 844)
	scan(t, b, h.URL+"/AA/L1/")
	h.put("/", changedFleet(t, bikePage, "Hello.", "Good evening."))
	visit(t, b, h.URL+"/AA/L1/")
	if ask(t, b, chromedp.Evaluate[bool](newWords)) {
		t.Error("the page comes from the network, not from the phone")
	}
	wait(t, b, "the new guide is offered", shown)
	if ask(t, b, chromedp.Evaluate[bool](newWords)) {
		t.Error("the new guide pushed itself in")
	}
	b.run(t, chromedp.Click("#newer button"))
	wait(t, b, "the new guide is shown", newWords)
	h.stop()
	visit(t, b, h.URL+"/AA/L1/")
	if !wait(t, b, "", newWords) {
		t.Error("the new guide is not on the phone")
	}
}

// A change of what keeps people safe is shown as soon as it is on the phone.
func TestSafetyIsReplacedAtOnce(t *testing.T) {
	h := newHost(t, publishFleet(t, pictured(t)))
	b := newBrowser(t, 390, 844)
	scan(t, b, h.URL+"/AA/L1/")
	h.put("/", changedFleet(t, "fleet.toml", "+44 1632 960111", "+44 1632 960999"))
	visit(t, b, h.URL+"/AA/L1/")
	wait(t, b, "the new number is shown without a tap", helpline)
}

// While a deploy is half-way, whichever half came first, the guide on the phone
// stays the old one, whole; once the deploy is through the new one comes.
func TestHalfADeployChangesNothing(t *testing.T) {
	before := publishFleet(t, pictured(t))
	after := changedFleet(t, "fleet.toml", "+44 1632 960111", "+44 1632 960999")
	for _, workerFirst := range []bool{true, false} {
		h := newHost(t, before)
		b := newBrowser(t, 390, 844)
		scan(t, b, h.URL+"/AA/L1/")
		h.instead(func(w http.ResponseWriter, r *http.Request) bool {
			if strings.HasSuffix(r.URL.Path, "/kept.js") != workerFirst {
				return false
			}
			http.FileServer(http.Dir(after+"/hirers")).ServeHTTP(w, r)
			return true
		})
		visit(t, b, h.URL+"/AA/L1/")
		wait(t, b, "the phone has looked for a new guide", `(await navigator.serviceWorker.getRegistration()).update().then(() => true, () => true)`)
		for _, page := range []string{"/AA/L1/", "/AA/", "/AA/about/fire/"} {
			visit(t, b, h.URL+page)
			if ask(t, b, chromedp.Evaluate[bool](helpline)) {
				t.Errorf("%s is of the new guide", page)
			}
		}
		h.instead(nil)
		h.put("/", after)
		visit(t, b, h.URL+"/AA/L1/")
		wait(t, b, "the new guide comes after all", helpline)
	}
}

// One file that cannot be had spoils nothing else, and is fetched later. What
// is no page of the guide is never kept: an error page, a redirect to a login, a
// captive portal.
func TestOnlyWhatWasPublishedIsKept(t *testing.T) {
	site := publishFleet(t, pictured(t))
	bad := map[string]func(http.ResponseWriter, *http.Request){
		"an error page": func(w http.ResponseWriter, r *http.Request) {
			http.Error(w, "<h1>Out of order</h1>", http.StatusBadGateway)
		},
		"a redirect": func(w http.ResponseWriter, r *http.Request) { http.Redirect(w, r, "/login", http.StatusFound) },
		"a portal": func(w http.ResponseWriter, r *http.Request) {
			w.Header().Set("Content-Type", "text/html")
			_, _ = w.Write([]byte("<h1>Welcome to the hotspot</h1>"))
		},
	}
	for name, answer := range bad {
		h := newHost(t, site)
		h.instead(func(w http.ResponseWriter, r *http.Request) bool {
			if r.URL.Path == "/login" {
				_, _ = w.Write([]byte("<h1>Log in</h1>"))
				return true
			}
			if r.URL.Path != "/AA/about/fire/" {
				return false
			}
			answer(w, r)
			return true
		})
		b := newBrowser(t, 390, 844)
		b.run(t, chromedp.Navigate(h.URL+"/AA/L1/"))
		wait(t, b, "the worker controls the page", "navigator.serviceWorker.controller")
		kept := ask(t, b, chromedp.Evaluate[[]string](`(async () => {
			const bodies = [];
			for (const name of await caches.keys()) {
				const shelf = await caches.open(name);
				for (const request of await shelf.keys()) bodies.push(await (await shelf.match(request)).text());
			}
			return bodies;
		})()`, chromedp.EvalAwaitPromise))
		if len(kept) < 10 {
			t.Errorf("%s: %d files kept, one missing file spoilt the rest", name, len(kept))
		}
		for _, body := range kept {
			if strings.Contains(body, "Out of order") || strings.Contains(body, "Log in") || strings.Contains(body, "hotspot") {
				t.Errorf("%s is kept", name)
			}
		}
		h.instead(nil)
		visit(t, b, h.URL+"/AA/")
		wait(t, b, "the missing file came later", controls)
		h.stop()
		if got := visit(t, b, h.URL+"/AA/about/fire/"); got != "Fire" {
			t.Errorf("after %s the page shows %q", name, got)
		}
	}
}

// A van that left the fleet leaves the phone: its worker and all it kept. That
// the list of vans cannot be had, or is something else, says nothing.
func TestRetiredVanLeavesThePhone(t *testing.T) {
	files := pictured(t)
	h := newHost(t, publishFleet(t, files))
	delete(files, "vans/a.toml")
	after := publishFleet(t, files)
	b := newBrowser(t, 390, 844)
	scan(t, b, h.URL+"/AA/L1/")
	h.instead(func(w http.ResponseWriter, r *http.Request) bool {
		if r.URL.Path == "/vans.json" {
			http.Error(w, "<h1>Out of order</h1>", http.StatusNotFound)
			return true
		}
		return false
	})
	h.put("/", after)
	visit(t, b, h.URL+"/AA/L1/")
	if !wait(t, b, "", `document.body.textContent.includes("Hello.") && navigator.serviceWorker.controller`) {
		t.Error("a missing answer made the van go")
	}
	h.instead(nil)
	visit(t, b, h.URL+"/AA/L1/")
	wait(t, b, "the worker is gone", `(await navigator.serviceWorker.getRegistrations()).length === 0 && (await caches.keys()).length === 0`)
	wait(t, b, "the page is gone", `!document.body.textContent.includes("Hello.")`)
}

// Two fleets under two paths of one host, each with a van AA, leave each other
// alone: also when the van of one goes.
func TestTwoFleetsOnOneHost(t *testing.T) {
	north := publishFleet(t, pictured(t))
	south := changedFleet(t, bikePage, "Hello.", "Good evening.")
	files := pictured(t)
	delete(files, "vans/a.toml")
	without := publishFleet(t, files)
	again(t, func() {
		h := newHost(t, north)
		h.put("/north/", north)
		h.put("/south/", south)
		b := newBrowser(t, 390, 844)
		b.bears = true
		scan(t, b, h.URL+"/north/AA/L1/")
		scan(t, b, h.URL+"/south/AA/L1/")
		h.put("/north/", without)
		visit(t, b, h.URL+"/north/AA/L1/")
		wait(t, b, "the northern van is gone", `(await navigator.serviceWorker.getRegistrations()).length === 1 && (await caches.keys()).length === 1`)
		h.stop()
		visit(t, b, h.URL+"/south/AA/L1")
		if !wait(t, b, "", newWords) {
			t.Error("the southern van went with it")
		}
	})
}

// A phone without room shows pages from the network as before.
func TestStorageFull(t *testing.T) {
	h := newHost(t, publishFleet(t, pictured(t)))
	b := newBrowser(t, 390, 844)
	quota := 40_000.0
	b.run(t, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{Origin: h.URL, QuotaSize: &quota})
		return err
	}), chromedp.Navigate(h.URL+"/AA/L1/"))
	wait(t, b, "the worker controls the page", "navigator.serviceWorker.controller")
	for _, page := range []string{"/AA/", "/AA/L1/", "/AA/about/fire/", "/AA/do/before-driving/"} {
		if got := visit(t, b, h.URL+page); got == "" || strings.Contains(got, "not on your phone") {
			t.Errorf("%s shows %q", page, got)
		}
	}
	if wait(t, b, "", `document.getElementById("kept").hidden`) != true {
		t.Error("the page says that the guide is on the phone")
	}
}
