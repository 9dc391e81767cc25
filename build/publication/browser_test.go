package publication_test

import (
	"context"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// browser is a headless Chromium that remembers what went wrong in pages.
type browser struct {
	ctx    context.Context
	mu     sync.Mutex
	errors []string
	bears  bool // that it ends: see again
}

// browserEnded is what a test panics with whose browser has ended, where that is borne.
type browserEnded struct{ error }

// again does a test of which one knows that browsers have a bug of their own that ends
// them in it now and then: once more with a new browser, twice at most. Its windows bear
// that they end. What the test finds out about the guide fails it at once.
func again(t *testing.T, test func()) {
	t.Helper()
	for range 3 {
		ended := func() (ended error) {
			defer func() {
				why := recover()
				if err, is := why.(browserEnded); is {
					ended = err
				} else if why != nil {
					panic(why)
				}
			}()
			test()
			return nil
		}()
		if ended == nil {
			return
		}
		t.Logf("%v in the middle of this test", ended)
	}
	t.Fatal("three browsers have ended in this test, which says nothing about the guide")
}

// newBrowser opens a window that shares nothing with others.
func newBrowser(t *testing.T, width, height int) *browser {
	t.Helper()
	parent, err := chromium.running()
	if err != nil {
		t.Fatal(err)
	}
	b := &browser{}
	ctx, stop := chromedp.NewContext(parent, chromedp.WithNewBrowserContext(), chromedp.WithListener(b.listen))
	ctx, cancel := context.WithTimeout(ctx, 10*time.Minute)
	b.ctx = ctx
	t.Cleanup(func() { cancel(); stop() })
	b.run(t, chromedp.EmulateViewport(int64(width), int64(height)))
	return b
}

// listen notes whatever a page complains of.
func (b *browser) listen(event any) {
	switch e := event.(type) {
	case *log.EventEntryAdded:
		b.note(e.Entry.Level.String() + ": " + e.Entry.Text + " " + e.Entry.URL)
	case *runtime.EventExceptionThrown:
		b.note("exception: " + e.ExceptionDetails.Text)
	case *runtime.EventConsoleAPICalled:
		b.note("console: " + e.Type.String())
	}
}

func (b *browser) note(text string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.errors = append(b.errors, text)
}

func (b *browser) run(t *testing.T, steps ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.stopIfGone(t)
		t.Fatal(err)
	}
}

// stopIfGone ends the test where its browser has ended.
func (b *browser) stopIfGone(t *testing.T) {
	t.Helper()
	if err := gone(b.ctx); err != nil {
		if b.bears {
			panic(browserEnded{err})
		}
		t.Fatalf("this says nothing about the guide: %v in the middle of this test", err)
	}
}

// ask gives what an action finds out.
func ask[T any](t *testing.T, b *browser, action chromedp.Action[T]) T {
	t.Helper()
	found, err := chromedp.Run(b.ctx, action)
	if err != nil {
		b.stopIfGone(t)
		t.Fatal(err)
	}
	return found
}

// quiet fails the test where a page complained.
func (b *browser) quiet(t *testing.T) {
	t.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, e := range b.errors {
		t.Error(e)
	}
}

func serve(t *testing.T, site string) *httptest.Server {
	t.Helper()
	server := httptest.NewServer(http.FileServer(http.Dir(filepath.Join(site, "hirers"))))
	t.Cleanup(server.Close)
	return server
}

// A hirer opens a van, taps a point of the plan, reads, goes back and searches,
// also after the network has gone; nothing complains.
func TestBrowser(t *testing.T) {
	site := demoSite(t)
	server := serve(t, site)
	b := newBrowser(t, 390, 844)
	van := rowan(t)

	b.run(t, chromedp.Navigate(server.URL+"/"+van.Code+"/"))
	title := ask(t, b, chromedp.Text("h1"))
	plate := ask(t, b, chromedp.Evaluate[string](`document.querySelector(".plan a.plate text").textContent`))
	b.run(t, chromedp.Click(".plan a.plate"), chromedp.WaitVisible(".heading h1"))
	heading := ask(t, b, chromedp.Text(".heading h1"))
	code := ask(t, b, chromedp.Text(".heading .code"))
	if title != van.Name {
		t.Errorf("the van's start is headed %q, not %q", title, van.Name)
	}
	if code == "" || code != plate || heading == "" {
		t.Errorf("plate %q leads to page %q %q", plate, code, heading)
	}

	b.run(t, chromedp.Click(".top .find"), chromedp.WaitVisible("#query"))
	b.searchReady(t)
	server.Close() // the phone has no signal from here on
	for _, query := range []struct{ typed, want string }{
		{"gas bottle", "G"}, {"gas botle", "G"}, {"loo", "T"}, {"hookup", "E"}, {"hook up", "E"}, {"no hot water", "wrong/no-hot-water/"},
		{"psi", "V"}, {"smell of gas", "wrong/gas-smell/"}, {strings.ToLower(code), code + "/"},
		{"k7", "K7/"}, {"microwave", "K7/"}, // what Rowan no longer has
	} {
		if got := b.search(t, query.typed); !strings.HasPrefix(got, query.want) {
			t.Errorf("%q finds %q first, not %s", query.typed, got, query.want)
		}
	}
	if got := b.search(t, "zzzzqqq"); got != "" {
		t.Errorf("nonsense finds %q", got)
	}
	b.quiet(t)
}

// searchReady puts the cursor into the search field and waits until search has
// loaded.
func (b *browser) searchReady(t *testing.T) {
	t.Helper()
	b.run(t, chromedp.Focus("#query"))
	wait(t, b, "search has loaded", `document.getElementById("find").dataset.ready`)
}

// search types a query and gives the address of the first result.
func (b *browser) search(t *testing.T, query string) string {
	t.Helper()
	b.searchReady(t)
	ask(t, b, chromedp.Evaluate[bool](`document.getElementById("query").value = "", true`))
	b.run(t, chromedp.SendKeys("#query", query))
	return ask(t, b, chromedp.Evaluate[string](`(document.querySelector("#found a")||{getAttribute:()=>""}).getAttribute("href")`))
}

// zbar reads the QR symbol in the screenshot of every kind of page, light and
// dark, and gets the address of that very page.
func TestScan(t *testing.T) {
	site := demoSite(t)
	server := serve(t, site)
	fleet := demoFleet(t)
	van := rowan(t)
	var label string
	for _, f := range van.Fitted {
		if f.Label != "" {
			label = f.Label
			break
		}
	}
	for _, scheme := range []string{"light", "dark"} {
		b := newBrowser(t, 390, 844)
		for _, page := range []string{van.Code + "/", van.Code + "/" + label + "/", van.Code + "/do/arriving/", van.Code + "/about/masses/"} {
			b.run(t, emulateScheme(scheme), chromedp.Navigate(server.URL+"/"+page))
			ask(t, b, chromedp.Evaluate[bool](`document.querySelector(".mark").scrollIntoView({behavior: "instant", block: "center"}), true`))
			picture := ask(t, b, chromedp.CaptureScreenshot())
			file := filepath.Join(t.TempDir(), "page.png")
			if err := os.WriteFile(file, picture, 0o600); err != nil {
				t.Fatal(err)
			}
			out, err := exec.Command("zbarimg", "--raw", "-q", file).Output()
			if err != nil {
				t.Fatalf("zbarimg on %s (%s): %v", page, scheme, err)
			}
			if got, want := strings.TrimSpace(string(out)), fleet.Address.To(page); got != want {
				t.Errorf("%s (%s): scanned %q, want %q", page, scheme, got, want)
			}
		}
	}
}

// tickRow ticks the row of a table whose name holds a text, and reads the panel
// that adds the rows up.
func tickRow(t *testing.T, b *browser, row string) string {
	t.Helper()
	return ask(t, b, chromedp.Evaluate[string](`(() => {
		const label = [...document.querySelectorAll(".tick")].find((l) => l.textContent.includes("`+row+`"));
		label.querySelector("input").click();
		return document.querySelector(".sum").textContent;
	})()`))
}

// Ticking what goes into the van says what is left of its limit and of both
// axles, in red words where it is too much; full water takes the place of some.
func tickPayload(t *testing.T, b *browser, site string) {
	t.Helper()
	b.run(t, chromedp.Navigate(site+"/AD/about/masses/")) // 282.4 kg are left with a full tank of fuel
	for _, c := range []struct {
		row  string
		want []string
	}{
		{"beside the driver", []string{"Together: 75\u00a0kg", "The whole van: 207\u00a0kg left", "Front axle: ", "Rear axle: "}},
		{"allowed on the road", []string{"Together: 95\u00a0kg", "The whole van: 187\u00a0kg left"}},
		{"Fresh water, tank full", []string{"Together: 195\u00a0kg", "The whole van: 87\u00a0kg left"}},
		{"third", []string{"The whole van: 12\u00a0kg left. That is close"}},
		{"fourth", []string{"Together: 345\u00a0kg", "The whole van: 63\u00a0kg too much. Do not drive"}},
	} {
		got := tickRow(t, b, c.row)
		for _, want := range c.want {
			if !strings.Contains(got, want) {
				t.Errorf("after %q: %q, expected %q in it", c.row, got, want)
			}
		}
	}
	if got := ask(t, b, chromedp.Evaluate[string](`document.querySelector(".sum .bad").textContent`)); !strings.Contains(got, "too much") {
		t.Errorf("in red: %q", got)
	}
}

// Ticking rows of a table adds them up and says what the pitch makes of it; of
// one appliance's settings only one can be on.
func TestTickRows(t *testing.T) {
	server := serve(t, demoSite(t))
	b := newBrowser(t, 390, 844)
	var label string
	for _, f := range rowan(t).Fitted {
		if f.System.ID == "electrics/hook-up-inlet" {
			label = f.Label
		}
	}
	b.run(t, chromedp.Navigate(server.URL+"/RW/"+label+"/"))
	tick := func(row string) string { return tickRow(t, b, row) }
	if got := tick("high setting"); !strings.Contains(got, "1,800") {
		t.Errorf("the heater alone: %q", got)
	}
	if got := tick("low setting"); !strings.Contains(got, "900") || strings.Contains(got, "2,700") {
		t.Errorf("the low setting in place of the high one: %q", got)
	}
	got := tick("Kettle")
	if !strings.Contains(got, "1,900") || !strings.Contains(got, "6") || !strings.Contains(got, "trip") {
		t.Errorf("with the kettle: %q", got)
	}
	tickPayload(t, b, server.URL)
	b.quiet(t)
}
