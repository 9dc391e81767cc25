package preview_test

import (
	"context"
	"net"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"doorpocket/build/preview"
	"doorpocket/build/publication"
	"doorpocket/build/sample"
	"doorpocket/components"
)

// A page that is open follows the fleet's files: it is loaded again where the
// reader was; an error stands over it with the line of the file, and goes away
// when that is mended.
func TestOpenPageFollows(t *testing.T) {
	root := someFleet(t, 20)
	address := show(t, root, filepath.Join(t.TempDir(), "site"))
	spec := filepath.Join(root, "vans/van-0000.toml")
	good, err := os.ReadFile(spec)
	if err != nil {
		t.Fatal(err)
	}
	save := func(text string) { // as many editors do: a new file, renamed over the old one
		t.Helper()
		if err := os.WriteFile(spec+"~", []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		if err := os.Rename(spec+"~", spec); err != nil {
			t.Fatal(err)
		}
	}
	ctx := browser(t)
	run := func(actions ...chromedp.Action[chromedp.Void]) {
		t.Helper()
		if err := chromedp.Do(ctx, actions...); err != nil {
			t.Fatal(err)
		}
	}
	read := func(script string) string {
		t.Helper()
		text, err := chromedp.Run(ctx, chromedp.Evaluate[string](script))
		if err != nil {
			t.Fatal(err)
		}
		return text
	}
	until := func(script, want string) {
		t.Helper()
		for end := time.Now().Add(time.Minute); ; time.Sleep(50 * time.Millisecond) {
			got, err := chromedp.Run(ctx, chromedp.Evaluate[string](script)) // an error where the page is just being loaded again
			if err == nil && strings.Contains(got, want) {
				return
			}
			if time.Now().After(end) {
				t.Fatalf("%s gives %q, want %q: %v", script, got, want, err)
			}
		}
	}
	const heading = `(document.querySelector("h1") || {textContent: "none"}).textContent`
	const wrong = `(document.getElementById("preview-wrong") || {textContent: "none"}).textContent`

	run(chromedp.Navigate(address + "/hirers/" + sample.Code(0) + "/"))
	until(heading, "Van 0")
	read(`scrollTo({top: 700, behavior: "instant"}); String(scrollY)`)
	save(strings.Replace(string(good), `"Van 0"`, `"Other name"`, 1))
	until(heading, "Other name")
	// Something above may have grown: the browser then keeps what is read in place.
	until(`String(scrollY > 600 && scrollY < 800)`, "true")
	if got := read(wrong); got != "none" {
		t.Errorf("over a good page stands %q", got)
	}

	save(strings.Replace(string(good), `"Van 0"`, `Van 0`, 1))
	until(wrong, "vans/van-0000.toml:2:")
	until(wrong, "name = Van 0")
	if got := read(heading); got != "Other name" {
		t.Errorf("the page under the error is not the last good one: %q", got)
	}
	if got := read(`String(document.getElementById("preview-wrong").getBoundingClientRect().height > 40)`); got != "true" {
		t.Error("the error cannot be seen")
	}
	save(strings.Replace(string(good), `"Van 0"`, `"Mended"`, 1))
	until(heading, "Mended")
	until(wrong, "none")
}

// someFleet writes a fleet of one van with so many systems and gives its folder.
func someFleet(t *testing.T, systems int) string {
	t.Helper()
	root := filepath.Join(t.TempDir(), "fleet")
	lib, _ := components.Load(components.Embedded())
	err := sample.Write(sample.Many(lib, 1, systems), func(name string, data []byte) error {
		name = filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			return err
		}
		return os.WriteFile(name, data, 0o644)
	})
	if err != nil {
		t.Fatal(err)
	}
	return root
}

// show runs a preview of a folder until the test ends, and then wants it to end
// cleanly.
func show(t *testing.T, root, site string) string {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ready := make(chan struct{})
	var once sync.Once
	p := preview.Preview{Folder: root, Site: site,
		Publish: func(ctx context.Context) preview.Result {
			made, found, err := publication.Run(publication.Job{Files: os.DirFS(root), Target: site, Version: "test", Abandoned: ctx.Done()})
			return preview.Result{Made: made, Problems: found, Err: err}
		},
		Told:    func(preview.Result) { once.Do(func() { close(ready) }) },
		Polling: func(err error) { t.Log("polling:", err) },
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- p.Run(ctx, listener) }()
	t.Cleanup(func() {
		stop()
		select {
		case err := <-ended:
			if err != nil {
				t.Error(err)
			}
		case <-time.After(time.Minute):
			t.Error("the preview does not end")
		}
	})
	<-ready
	return "http://" + listener.Addr().String()
}

func browser(t *testing.T) context.Context {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.NoSandbox, chromedp.DisableGPU, chromedp.WindowSize(390, 844),
		chromedp.Flag("disable-quic", true), chromedp.UserDataDir(t.TempDir()), chromedp.Flag("disable-component-update", true))
	alloc, stopAlloc := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, stop := chromedp.NewContext(alloc)
	ctx, cancel := context.WithTimeout(ctx, 4*time.Minute)
	t.Cleanup(func() { cancel(); stop(); stopAlloc() })
	return ctx
}
