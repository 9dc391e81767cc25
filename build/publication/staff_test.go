package publication_test

import (
	"encoding/csv"
	"fmt"
	"net/http"
	"net/http/httptest"
	"path"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/google/go-cmp/cmp"

	"doorpocket/build/spec"
)

// Every kind of page of the staff tree that axe looks at is one of its pages, and
// there is none of another kind.
func TestStaffKinds(t *testing.T) {
	kind := func(name string) string {
		parts := strings.Split(name, "/")
		for _, v := range demoFleet(t).Vans {
			if parts[0] == v.Code {
				parts[0] = "VAN"
			}
		}
		if len(parts) > 2 && parts[1] != "facts" {
			parts[len(parts)-2] = "NAME"
		}
		return path.Join(parts...)
	}
	known := map[string]bool{}
	for _, page := range staffKinds {
		known[kind(page+"index.html")] = true
	}
	for name := range files(t, demoSite(t)) {
		if page, ok := strings.CutPrefix(name, "staff/"); ok && strings.HasSuffix(page, ".html") && !known[kind(page)] {
			t.Errorf("a page of a kind that is not looked at: %s", page)
		}
	}
}

// The file of the whole fleet and the pages of its families say of every van what
// is fitted, under which label.
func TestSystemsAgainstVans(t *testing.T) {
	tree := files(t, demoSite(t))
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(tree["staff/systems/systems.csv"], "\ufeff"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	fleet := demoFleet(t)
	if len(rows) != 1+len(fleet.Vans) {
		t.Fatalf("%d rows", len(rows))
	}
	for i, v := range fleet.Vans {
		want, got := map[string]string{}, map[string]string{}
		for _, f := range v.Fitted {
			if !f.Automatic {
				want[f.System.ID] = strings.TrimSpace(want[f.System.ID] + " " + orYes(f))
			}
		}
		for column, head := range rows[0] {
			if cell := rows[i+1][column]; strings.Contains(head, "/") && cell != "" {
				got[head] = cell
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s:\n%s", v.Code, diff)
		}
		if rows[i+1][0] != v.Code || rows[i+1][5] != fmt.Sprint(len(v.Fitted)) {
			t.Errorf("%v", rows[i+1][:8])
		}
	}
	if page := tree["staff/systems/gas/index.html"]; strings.Count(page, "<td>G6</td>") != 1 || !strings.Contains(page, "Outside gas point <small>1</small>") {
		t.Error("Rowan alone has an outside gas point, under G6")
	}
}

func orYes(f *spec.Fitted) string {
	if f.Label == "" {
		return "yes"
	}
	return f.Label
}

// Tables of the staff tree can be sifted and sorted; without script they are all
// rows in order.
func TestSift(t *testing.T) {
	server := httptest.NewServer(http.FileServer(http.Dir(demoSite(t))))
	t.Cleanup(server.Close)
	b := newBrowser(t, 1280, 800)
	// A page that still glides to where the mouse is wanted takes a click elsewhere.
	b.see(t, 1280, map[string]string{"prefers-reduced-motion": "reduce"})
	shown := func() string {
		return strings.Join(ask(t, b, chromedp.Evaluate[[]string](`[...document.querySelectorAll("tbody tr")].filter((r) => r.checkVisibility()).map((r) => r.querySelector(".tag").textContent)`)), " ")
	}
	b.run(t, chromedp.Navigate(server.URL+"/staff/index.html"))
	want := func(what, codes string) {
		t.Helper()
		if got := shown(); got != codes {
			t.Errorf("%s: %s, want %s", what, got, codes)
		}
	}
	want("at first", "AD DP HZ LT RW SK")
	b.run(t, chromedp.SendKeys("input[type=search]", "ridge"))
	want("sifted", "HZ RW")
	if told := ask(t, b, chromedp.Text(".sift [role=status]")); told != "2 rows" {
		t.Errorf("told %q", told)
	}
	ask(t, b, chromedp.Evaluate[bool](`{ const f = document.querySelector(".sift input"); f.value = ""; f.dispatchEvent(new Event("input")) }; true`))
	b.run(t, chromedp.Click("thead th:nth-child(4) button"))
	want("by day of the spec", "AD HZ RW LT SK DP")
	b.run(t, chromedp.Click("thead th:nth-child(5) button"))
	first := shown()
	b.run(t, chromedp.Click("thead th:nth-child(5) button"))
	if last := shown(); first == last || !strings.HasSuffix(first, last[:2]) {
		t.Errorf("by number of systems: %s, then %s", first, last)
	}
	if state := ask(t, b, chromedp.Evaluate[string](`[...document.querySelectorAll("thead th")].map((h) => h.getAttribute("aria-sort") || "-").join(" ")`)); state != "- - - - descending - - - -" {
		t.Errorf("state of the heads: %s", state)
	}
	b.run(t, chromedp.Navigate(server.URL+"/staff/RW/facts/index.html"), chromedp.SendKeys("input[type=search]", "outside-gas-point"))
	if groups := ask(t, b, chromedp.Evaluate[int](`[...document.querySelectorAll("tbody")].filter((g) => g.checkVisibility() && g.offsetHeight > 0).length`)); groups != 1 {
		t.Errorf("%d groups of facts are shown", groups)
	}
	b.quiet(t)
}
