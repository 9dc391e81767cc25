package publication_test

import (
	"context"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// The ticks of a routine outlive a reload and a lost connection, belong to one
// van and one routine, are counted, and go with one button.
func TestTicksOfARoutine(t *testing.T) {
	server := serve(t, publishDemo(t))
	b := newBrowser(t, 320, 640)
	left := func() string {
		return ask(t, b, chromedp.Evaluate[string](`document.querySelector(".tally").textContent`))
	}
	ticked := func() int {
		return ask(t, b, chromedp.Evaluate[int](`document.querySelectorAll(".steps input:checked").length`))
	}
	open := func(page string) { b.run(t, chromedp.Navigate(server.URL+"/"+page)) }
	open("RW/do/arriving/index.html")
	all := ask(t, b, chromedp.Evaluate[int](`document.querySelectorAll(".steps input").length`))
	if size := ask(t, b, chromedp.Evaluate[float64](`document.querySelector(".step").getBoundingClientRect().height`)); size < 44 {
		t.Errorf("a box is %g pixels high to tap", size)
	}
	b.run(t, chromedp.Click(`.steps li:nth-child(2) .step`), chromedp.Click(`.steps li:nth-child(3) .step`))
	if got := left(); !strings.HasPrefix(got, strconv.Itoa(all-2)+" ") || ticked() != 2 {
		t.Fatalf("%q of %d after two ticks", got, all)
	}
	b.run(t, chromedp.Reload())
	if got := left(); !strings.HasPrefix(got, strconv.Itoa(all-2)+" ") || ticked() != 2 {
		t.Errorf("%q after a reload, %d ticked", got, ticked())
	}
	// Without a connection the page goes on counting and keeping.
	b.run(t, connected(false))
	b.run(t, chromedp.Click(`.steps li:nth-child(4) .step`))
	b.run(t, connected(true))
	b.run(t, chromedp.Reload())
	if ticked() != 3 {
		t.Errorf("%d ticked after a lost connection", ticked())
	}
	for _, other := range []string{"RW/do/before-driving/index.html", "HZ/do/arriving/index.html"} {
		if open(other); ticked() != 0 {
			t.Errorf("%s shows ticks of another list", other)
		}
	}
	open("RW/do/arriving/index.html")
	b.run(t, chromedp.Click(`.steps~.button`))
	if b.run(t, chromedp.Reload()); ticked() != 0 || !strings.HasPrefix(left(), strconv.Itoa(all)+" ") {
		t.Errorf("%d ticked after clearing, %q", ticked(), left())
	}
	if wide := ask(t, b, chromedp.Evaluate[bool](`document.documentElement.scrollWidth > innerWidth`)); wide {
		t.Error("the page is wider than a small phone")
	}
	b.quiet(t)
}

// connected takes the network away from the browser, or gives it back.
func connected(yes bool) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
			MatchedNetworkConditions: []*network.Conditions{{Offline: !yes, DownloadThroughput: -1, UploadThroughput: -1}},
		})
		return err
	})
}
