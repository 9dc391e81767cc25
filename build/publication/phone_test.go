package publication_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

var figureOfTable = regexp.MustCompile(`(?s)<figure class="table".*?</figure>`)

// tablesOf gathers the tables of all pages of a van as they are written there,
// each once.
func tablesOf(t *testing.T, folder string) []string {
	t.Helper()
	var all []string
	seen := map[string]bool{}
	err := filepath.WalkDir(folder, func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(file, ".html") {
			return err
		}
		data, err := os.ReadFile(file)
		for _, figure := range figureOfTable.FindAllString(string(data), -1) {
			if !seen[figure] {
				seen[figure] = true
				all = append(all, figure)
			}
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// wide puts tables into a page in place of its own words and names those that
// are wider than their place, with the pixels that they stick out.
const wide = `((figures) => {
	document.querySelector("main").innerHTML = figures.join("");
	return [...document.querySelectorAll("main .scroll")].filter(e => e.scrollWidth > e.clientWidth)
		.map(e => e.parentElement.id + " by " + (e.scrollWidth - e.clientWidth) + " px");
})`

// Every table fits a phone held upright: nothing has to be pushed sideways.
func TestTablesFitAPhone(t *testing.T) {
	site := publishDemo(t)
	server := serve(t, site)
	b := newBrowser(t, 390, 844)
	fleet, _ := demo()
	for _, v := range fleet.Vans {
		figures := tablesOf(t, filepath.Join(site, "hirers", v.Code))
		if len(figures) == 0 {
			t.Errorf("%s has no table", v.Name)
			continue
		}
		data, err := json.Marshal(figures)
		if err != nil {
			t.Fatal(err)
		}
		page := v.Fitted[0].Label
		for _, f := range v.Fitted {
			if f.Label != "" {
				page = f.Label
			}
		}
		b.run(t, chromedp.Navigate(server.URL+"/"+v.Code+"/"+page+"/"))
		for _, found := range ask(t, b, chromedp.Evaluate[[]string](wide+"("+string(data)+")")) {
			t.Errorf("%s: %s is wider than the phone", v.Name, found)
		}
	}
}
