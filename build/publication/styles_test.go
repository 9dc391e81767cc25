package publication_test

import (
	"context"
	"encoding/json"
	"os"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// trusting lets scripts of a test do what the policy of a page forbids.
func (b *browser) trusting(t *testing.T) {
	t.Helper()
	b.run(t, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, cdppage.SetBypassCSP, cdppage.SetBypassCSPParams{Enabled: true})
		return err
	}))
}

// media shows pages as on a "screen" or as on paper ("print").
func (b *browser) media(t *testing.T, name string) {
	t.Helper()
	b.run(t, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: name})
		return err
	}))
}

// unlike puts a whole style sheet into the page instead of the part that it
// has, and back, and names the elements that look otherwise with all of it.
const unlike = `((sheet) => {
  const all = [...document.body.querySelectorAll("*")];
  const stated = (rules) => [...rules].flatMap((rule) => [...(rule.style || []), ...stated(rule.cssRules || [])]);
  const of = (style) => names.map((name) => style.getPropertyValue(name)).join("|");
  const look = () => all.map((e) => {
    const parts = ["::before", "::after"].map((part) => getComputedStyle(e, part)).filter((style) => style.content !== "none");
    return [getComputedStyle(e), ...parts].map(of).join();
  });
  const style = document.querySelector("style"), own = style.textContent;
  style.textContent = sheet;
  const names = [...new Set(stated(style.sheet.cssRules))].filter((name) => !name.startsWith("--"));
  style.textContent = own;
  const before = look();
  style.textContent = sheet;
  const after = look();
  style.textContent = own;
  return all.filter((e, i) => before[i] !== after[i]).map((e) => e.outerHTML.slice(0, 100));
})`

// sticking names blocks whose content sticks out at the bottom, over what
// follows.
const sticking = `[...document.querySelectorAll("main section, main ul, main ol, main div")]
  .filter((e) => e.checkVisibility() && getComputedStyle(e).overflowY === "visible" && e.scrollHeight > e.clientHeight + 2 && !e.closest("svg"))
  .map((e) => e.outerHTML.slice(0, 80) + " by " + (e.scrollHeight - e.clientHeight))`

// The part of the style sheet that a page gets is enough: with all of it no
// element looks otherwise, on a phone, on a desk and on paper, and also once the
// page's scripts have shown what they show.
func TestPagesHaveTheRulesTheyUse(t *testing.T) {
	server := serve(t, demoSite(t))
	sheet, err := os.ReadFile("../../layouts/styles/page.css")
	if err != nil {
		t.Fatal(err)
	}
	whole, err := json.Marshal(string(sheet))
	if err != nil {
		t.Fatal(err)
	}
	for _, page := range kinds {
		t.Run(page, func(t *testing.T) {
			t.Parallel()
			b := newBrowser(t, 390, 844)
			b.trusting(t)
			b.media(t, "screen")
			b.run(t, chromedp.Navigate(server.URL+"/"+page))
			switch page {
			case "RW/":
				b.search(t, "gas bottle")
			case "RW/E1/":
				tickRow(t, b, "high setting")
			}
			for _, look := range []struct {
				media string
				width int64
			}{{"screen", 390}, {"screen", 1280}, {"print", 700}} {
				b.media(t, look.media)
				b.run(t, chromedp.EmulateViewport(look.width, 844))
				for _, block := range ask(t, b, chromedp.Evaluate[[]string](sticking)) {
					t.Errorf("/%s, %s %d px: sticks out: %s", page, look.media, look.width, block)
				}
				for _, element := range ask(t, b, chromedp.Evaluate[[]string](unlike+"("+string(whole)+")")) {
					t.Errorf("/%s, %s %d px: %s", page, look.media, look.width, element)
				}
			}
		})
	}
}
