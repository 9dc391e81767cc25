package publication_test

import (
	"strings"
	"testing"
)

// What the trade knows to go wrong has a page on every demonstration van that
// has the thing, and the fleet as a whole has a page for each.
var knownTroubles = []string{
	"no-hot-water", "heater-fault", "no-heating", "no-mains", "something-trips", "no-12-v", "battery-flat", "no-water", "pump-will-not-stop",
	"water-under-van", "gas-smell", "alarm-sounds", "fridge-warm", "gas-appliance-will-not-light", "toilet-will-not-flush", "toilet-smells",
	"waste-backs-up", "roof-light-will-not-close", "step-will-not-go-in", "will-not-open", "tv-no-picture", "van-will-not-start", "warning-lamp",
	"tyre-flat", "rain-gets-in", "stuck-on-grass",
}

// A page of a danger begins with what to do and whom to call, before any check;
// every check says where to read on.
func TestPagesOfTroubles(t *testing.T) {
	tree := files(t, publishDemo(t))
	urgent := map[string]bool{"gas-smell": true, "alarm-sounds": true}
	for _, id := range knownTroubles {
		pages := 0
		for name, page := range tree {
			if !strings.HasPrefix(name, "hirers/") || !strings.HasSuffix(name, "/wrong/"+id+"/index.html") {
				continue
			}
			pages++
			before, checks, ok := strings.Cut(page, `id="x-checks"`)
			if !ok || !strings.Contains(checks, `<p class="ask">`) {
				t.Errorf("%s: nothing to look at", name)
				continue
			}
			checks, _, _ = strings.Cut(checks, "</ol>")
			for _, check := range strings.Split(checks, `<p class="ask">`)[1:] {
				if !strings.Contains(check, "<a href=") {
					t.Errorf("%s: a check leads nowhere: %s", name, check)
				}
			}
			grave := strings.Contains(before, `class="first danger"`)
			if grave && (!strings.Contains(before, `href="tel:112"`) || !strings.Contains(before, `id="x-first"`)) {
				t.Errorf("%s: a danger that does not say first whom to call", name)
			}
			if urgent[id] && (!grave || !strings.Contains(before, "Get everybody out")) {
				t.Errorf("%s: does not begin with getting out", name)
			}
		}
		if pages == 0 {
			t.Errorf("no van has a page for %s", id)
		}
	}
}
