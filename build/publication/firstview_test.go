package publication_test

import (
	"compress/gzip"
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

type zipped struct {
	http.ResponseWriter
	io.Writer
}

func (z zipped) Write(p []byte) (int, error) { return z.Writer.Write(p) }

// scriptsLate is how long a script is held back: long enough for the whole page
// to stand before it, so that what a script moves is told from a page that is
// still coming in.
const scriptsLate = 1500 * time.Millisecond

// compressing serves a site as hosts do, with its scripts held back.
func compressing(t *testing.T, site string) *httptest.Server {
	t.Helper()
	files := http.FileServer(http.Dir(filepath.Join(site, "hirers")))
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		r.Header.Del("Range")
		if !strings.HasSuffix(r.URL.Path, "/") && !strings.HasSuffix(r.URL.Path, ".js") {
			files.ServeHTTP(w, r)
			return
		}
		if strings.HasSuffix(r.URL.Path, ".js") {
			time.Sleep(scriptsLate)
		}
		w.Header().Set("Content-Encoding", "gzip")
		z := gzip.NewWriter(w)
		files.ServeHTTP(zipped{w, z}, r)
		_ = z.Close()
	}))
	t.Cleanup(server.Close)
	return server
}

// What a page costs on a phone with a slow processor (4 times) and a weak signal
// (1.6 Mbit/s, 150 ms), printed by "make lab". Nothing moves once it is shown.
func TestFirstView(t *testing.T) {
	server := compressing(t, demoSite(t))
	for name, page := range map[string]string{"start": "RW/", "system": "RW/G1/", "routine": "RW/do/arriving/", "symptom": "RW/wrong/no-hot-water/", "search": "RW/#find"} {
		b := newBrowser(t, 390, 844)
		b.run(t, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
			if _, err := chromedp.Call(ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: 4}); err != nil {
				return err
			}
			_, err := chromedp.Call(ctx, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
				MatchedNetworkConditions: []*network.Conditions{{Latency: 150, DownloadThroughput: 200_000, UploadThroughput: 95_000}},
			})
			return err
		}), chromedp.Navigate(server.URL+"/"+page))
		found := ask(t, b, chromedp.Evaluate[[]float64](`new Promise((done) => {
			let moved = 0;
			const stands = performance.getEntriesByType("navigation")[0].domInteractive + 1000;
			new PerformanceObserver((list) => { for (const e of list.getEntries()) if (e.startTime > stands) moved += e.value; }).observe({ type: "layout-shift", buffered: true });
			setTimeout(() => {
				const paint = performance.getEntriesByName("first-contentful-paint")[0].startTime;
				const all = performance.getEntriesByType("resource");
				done([performance.getEntriesByType("navigation")[0].encodedBodySize, 1 + all.filter((e) => e.responseEnd < paint).length, 1 + all.length, paint, moved]);
			}, 1500);
		})`, chromedp.EvalAwaitPromise))
		t.Logf("%-8s %6.0f bytes, first view after %.0f ms and %.0f of %.0f requests", name, found[0], found[3], found[1], found[2])
		if found[4] > 0 {
			t.Errorf("%s: things move by %v once it is shown", name, found[4])
		}
	}
}
