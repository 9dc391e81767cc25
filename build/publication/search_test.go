package publication_test

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// everyWord types each search word of each system into the page's own search
// and gives those that do not lead to it among the first three results. Where
// a system is fitted several times, one of them will do; where all three have
// the very same words, the words are no use to tell them apart.
const everyWord = `(() => {
  const input = document.getElementById("query"), misses = [];
  const wordsOf = new Map(guideDocuments.documents.map((d) => [d.path, d.words]));
  let typed = 0;
  for (const d of guideDocuments.documents) {
    if (d.kind !== "page") continue;
    for (const phrase of d.words.split(" \u00b7 ")) {
      if (!phrase) continue;
      typed++;
      input.value = phrase;
      input.dispatchEvent(new Event("input"));
      const found = [...document.querySelectorAll("#found a")].slice(0, 3).map((a) => a.getAttribute("href"));
      const claims = (path) => wordsOf.get(path).split(" \u00b7 ").includes(phrase);
      if (!found.some((path) => wordsOf.get(path) === d.words) && !found.every(claims)) misses.push(d.title + ": " + phrase + " -> " + found.join(" "));
    }
  }
  return [String(typed), ...misses];
})()`

// On every van of the demonstration fleet, which together have the whole
// library, each search word of each system leads to it among the first three
// results.
func TestSearchWordsLeadToTheirSystem(t *testing.T) {
	server := serve(t, demoSite(t))
	b := newBrowser(t, 390, 844)
	for _, v := range demoFleet(t).Vans {
		b.run(t, chromedp.Navigate(server.URL+"/"+v.Code+"/"), chromedp.WaitVisible("#query"))
		b.searchReady(t)
		misses := ask(t, b, chromedp.Evaluate[[]string](everyWord))
		t.Logf("%s: %s words typed, %d lead elsewhere", v.Code, misses[0], len(misses)-1)
		for _, miss := range misses[1:] {
			t.Errorf("%s: %s", v.Code, strings.ReplaceAll(miss, "/index.html", ""))
		}
	}
}
