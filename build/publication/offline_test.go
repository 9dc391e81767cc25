package publication_test

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// The first scan of any label puts the whole guide of that van on the phone:
// with the host gone every file of every demonstration van opens, and is what
// was written, at the printed address with and without its last slash and with
// what a scanner adds.
func TestWholeGuideOpensOffline(t *testing.T) {
	site := demoSite(t)
	tree := files(t, site)
	for _, v := range demoFleet(t).Vans {
		t.Run(v.Code, func(t *testing.T) {
			t.Parallel()
			h := newHost(t, site)
			b := newBrowser(t, 390, 844)
			began := time.Now()
			scan(t, b, h.URL+"/"+v.Code+"/E1/")
			ready := time.Since(began)
			own := map[string]string{}
			bytes := 0
			for name, text := range tree {
				name = strings.TrimPrefix(name, "hirers/")
				if strings.HasPrefix(name, v.Code+"/") && !strings.HasSuffix(name, "kept.js") || strings.HasPrefix(name, "parts/") {
					sum := sha256.Sum256([]byte(text))
					own["/"+strings.TrimSuffix(name, "index.html")] = hex.EncodeToString(sum[:])
					bytes += len(text)
				}
			}
			for _, name := range keptPicturesOf(t, tree["hirers/"+v.Code+"/kept.js"]) {
				sum := sha256.Sum256([]byte(tree["hirers/"+name]))
				own["/"+name] = hex.EncodeToString(sum[:])
				bytes += len(tree["hirers/"+name])
			}
			h.stop()
			t.Logf("%d files, %d kB, on the phone after %d ms", len(own), bytes/1000, ready.Milliseconds())
			for _, wrong := range differing(t, b, own) {
				t.Errorf("%s", wrong)
			}
			start := v.Name
			label := visit(t, b, h.URL+"/"+v.Code+"/E1/")
			if label == "" {
				t.Error("the page of a label does not open")
			}
			for address, want := range map[string]string{
				"/" + v.Code + "/":                          start,
				"/" + v.Code:                                start,
				"/" + v.Code + "?from=scanner":              start,
				"/" + v.Code + "/index.html":                start,
				"/" + v.Code + "/E1":                        label,
				"/" + v.Code + "/E1?utm=1&x=2":              label,
				"/" + v.Code + "/E1/?utm=1":                 label,
				"/" + v.Code + "/E1/index.html#x-call":      label,
				"/" + v.Code + "/e1":                        label,
				"/" + v.Code + "/do/before-driving":         "Before you drive",
				"/" + v.Code + "/wrong/alarm-sounds/?q=%20": "An alarm sounds",
			} {
				if got := visit(t, b, h.URL+address); got != want {
					t.Errorf("%s shows %q, want %q", address, got, want)
				}
			}
			if got := visit(t, b, h.URL+"/"+v.Code+"/Z99/"); got != "This page is not on your phone yet" {
				t.Errorf("a page that is not there shows %q", got)
			}
			b.run(t, chromedp.Navigate(h.URL+"/"+v.Code+"/E1/"), chromedp.Click(".top .find"), chromedp.WaitVisible("#query"))
			if got := b.search(t, "alarm sounds"); !strings.HasPrefix(got, "wrong/alarm-sounds/") {
				t.Errorf("search without a network finds %q", got)
			}
		})
	}
}

// keptPicturesOf lists the pictures that a van's script keeps on phones.
func keptPicturesOf(t *testing.T, script string) []string {
	t.Helper()
	var list struct{ Files [][2]string }
	head, _, _ := strings.Cut(strings.TrimPrefix(script, "const guide = "), ";\n")
	if err := json.Unmarshal([]byte(head), &list); err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, file := range list.Files {
		if strings.HasPrefix(file[0], "pictures/") {
			all = append(all, file[0])
		}
	}
	return all
}

// differing fetches paths in the page and tells those that do not give the
// content with the sum wanted.
func differing(t *testing.T, b *browser, sums map[string]string) []string {
	t.Helper()
	list, err := json.Marshal(sums)
	if err != nil {
		t.Fatal(err)
	}
	return ask(t, b, chromedp.Evaluate[[]string](`(async () => {
		const wrong = [];
		for (const [path, sum] of Object.entries(`+string(list)+`)) {
			try {
				const data = await (await fetch(path)).arrayBuffer();
				const hex = [...new Uint8Array(await crypto.subtle.digest("SHA-256", data))].map((x) => x.toString(16).padStart(2, "0")).join("");
				if (hex !== sum) wrong.push(path + " is not what was written");
			} catch (error) { wrong.push(path + ": " + error); }
		}
		return wrong;
	})()`, chromedp.EvalAwaitPromise))
}

// The tests above prove something: with a worker that keeps everything but
// answers nothing, no page opens once the host is gone.
func TestNothingOpensWithoutTheWorkersAnswers(t *testing.T) {
	site := publishFleet(t, pictured(t))
	h := newHost(t, site)
	h.instead(func(w http.ResponseWriter, r *http.Request) bool {
		if r.URL.Path != "/AA/kept.js" {
			return false
		}
		script, err := os.ReadFile(filepath.Join(site, "hirers", "AA", "kept.js"))
		if err != nil || !strings.Contains(string(script), `addEventListener("fetch"`) {
			t.Error("no worker that answers", err)
		}
		w.Header().Set("Content-Type", "text/javascript")
		_, _ = w.Write([]byte(strings.Replace(string(script), `addEventListener("fetch"`, `addEventListener("nothing"`, 1)))
		return true
	})
	b := newBrowser(t, 390, 844)
	scan(t, b, h.URL+"/AA/L1/")
	h.stop()
	for _, address := range []string{"/AA/", "/AA/L1/", "/AA/L1"} {
		if got := visit(t, b, h.URL+address); got != "" {
			t.Errorf("%s shows %q", address, got)
		}
	}
}
