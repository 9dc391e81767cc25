package publication_test

import (
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"doorpocket/build/label"
	"doorpocket/build/publication"
)

// Every label that was ever registered leads to a page that helps: that of its
// thing, or one that says what became of it, with the way on and the helpline.
func TestEveryRegisteredLabelLeadsSomewhere(t *testing.T) {
	fleet := demoFleet(t)
	tree := files(t, publishDemo(t))
	fates := map[label.Fate]int{}
	for _, e := range fleet.Register.All() {
		name := "hirers/" + e.Path() + "index.html"
		text, ok := tree[name]
		if !ok {
			t.Errorf("%s leads nowhere", e.Ref)
			continue
		}
		if !strings.Contains(text, "960178") {
			t.Errorf("the page of %s lacks the helpline", e.Ref)
		}
		links := map[string]bool{}
		for _, to := range parsePage(t, name, text).links {
			links[path.Join(path.Dir(name), to)] = true
		}
		if !links["hirers/"+e.Van+"/index.html"] {
			t.Errorf("the page of %s does not lead to the start of %s", e.Ref, e.Van)
		}
		fate := e.Became
		if fate == label.Stands {
			fate = fleet.Register.Van(e.Van).Became
		}
		fates[fate]++
		if (fate != label.Stands) != strings.Contains(text, e.Ref.String()+" was for:") {
			t.Errorf("%s, which %q, has the wrong page", e.Ref, fate)
		}
		if e.Now != (label.Ref{}) && !links["hirers/"+fleet.Register.Last(e).Path()+"index.html"] {
			t.Errorf("the page of %s does not lead to %s", e.Ref, e.Now)
		}
	}
	for _, fate := range []label.Fate{label.Stands, label.Removed, label.Replaced, label.Moved, label.Sold} {
		if fates[fate] == 0 {
			t.Errorf("no label of the demonstration fleet is %q", fate)
		}
	}
}

// A register that knows a label of which no page is made stops the publish, and
// the last site stays.
func TestPublishFailsWhereALabelLeadsNowhere(t *testing.T) {
	broken := *demoFleet(t)
	broken.Vans = broken.Vans[:1]
	target := filepath.Join(t.TempDir(), "site")
	_, err := publication.Publish(&broken, target, "test")
	if err == nil || !strings.Contains(err.Error(), "would lead nowhere") {
		t.Errorf("%v", err)
	}
	if _, err := os.Stat(target); !os.IsNotExist(err) {
		t.Error("something was published")
	}
}

// QR symbols are dark on light, also where the reader's phone is set to dark.
func TestSymbolOnAPageIsReadInTheDark(t *testing.T) {
	site := publishDemo(t)
	page := filepath.Join(site, "hirers/WR/index.html")
	if _, err := os.Stat(page); err != nil {
		t.Fatal(err)
	}
	for _, scheme := range []string{"0", "1"} {
		shot := filepath.Join(t.TempDir(), "page.png")
		cmd := exec.Command("chromium", "--no-sandbox", "--headless", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
			"--disable-component-update", "--disable-sync", "--user-data-dir="+t.TempDir(), "--blink-settings=preferredColorScheme="+scheme,
			"--window-size=390,3000", "--force-device-scale-factor=2", "--screenshot="+shot, "file://"+filepath.Join(site, "hirers/RW/K7/index.html"))
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		out, err := exec.Command("zbarimg", "--quiet", "--raw", shot).Output()
		if want := "HTTPS://GUIDE.LANTERNFOLD.EXAMPLE/RW/K7/"; err != nil || strings.TrimSpace(string(out)) != want {
			t.Errorf("colour scheme %s: read %q, not %q (%v)", scheme, out, want, err)
		}
	}
}
