package publication_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// keptPictures lists what a phone keeps of pictures: their types, in order.
const keptPictures = `(async () => {
	const types = [];
	for (const name of await caches.keys()) {
		const shelf = await caches.open(name);
		for (const request of await shelf.keys()) {
			const type = (await shelf.match(request)).headers.get("Content-Type");
			if (type && type.startsWith("image/")) types.push(type);
		}
	}
	return types.sort();
})()`

// A phone keeps one file of each picture, in the format that it shows, and with
// the host gone that stands in for all sizes.
func TestPicturesOffline(t *testing.T) {
	h := newHost(t, publishFleet(t, pictured(t)))
	b := newBrowser(t, 390, 844)
	scan(t, b, h.URL+"/AA/L1/")
	if types := ask(t, b, chromedp.Evaluate[[]string](keptPictures, chromedp.EvalAwaitPromise)); !slices.Equal(types, []string{"image/webp", "image/webp"}) {
		t.Errorf("the phone keeps %v, want one WebP of each of two pictures", types)
	}
	h.stop()
	b.run(t, chromedp.Navigate(h.URL+"/AA/L1/"))
	shown := ask(t, b, chromedp.Evaluate[[]string](`(async () => {
		const all = [...document.querySelectorAll(".picture img")];
		for (const img of all) { img.loading = "eager"; await img.decode().catch(() => {}); }
		return all.map((img) => img.naturalWidth + " " + img.currentSrc);
	})()`, chromedp.EvalAwaitPromise))
	for _, picture := range shown {
		if width, file, _ := strings.Cut(picture, " "); width == "0" || !strings.HasSuffix(file, ".webp") {
			t.Errorf("without the host a picture is %s", picture)
		}
	}
	if len(shown) != 2 {
		t.Errorf("%d pictures: %v", len(shown), shown)
	}
}

// A browser that asks for a JPEG where there is a WebP does not read that: then its
// phone keeps all pictures as JPEG too.
func TestPicturesOfOldBrowsersOffline(t *testing.T) {
	h := newHost(t, publishFleet(t, pictured(t)))
	b := newBrowser(t, 390, 844)
	scan(t, b, h.URL+"/AA/L1/")
	fetchAll := chromedp.Evaluate[[]string](`(async () => {
		const types = [];
		for (const img of document.querySelectorAll(".picture img")) {
			for (const file of [img.getAttribute("src"), ...img.srcset.split(", ").map((each) => each.split(" ")[0])]) {
				types.push(await fetch(file).then(async (got) => got.headers.get("Content-Type") + ((await got.blob()).size > 0 ? "" : " without content"), String));
			}
		}
		return types;
	})()`, chromedp.EvalAwaitPromise)
	ask(t, b, fetchAll)
	if !wait(t, b, "JPEG on the phone", `(await `+keptPictures+`).filter((type) => type === "image/jpeg").length === 2`) {
		t.Fatal("the phone does not keep the pictures as JPEG")
	}
	h.stop()
	b.run(t, chromedp.Navigate(h.URL+"/AA/L1/"))
	types := ask(t, b, fetchAll)
	if len(types) != 6 || slices.ContainsFunc(types, func(got string) bool { return got != "image/jpeg" }) {
		t.Errorf("without the host JPEG files are %v", types)
	}
}
