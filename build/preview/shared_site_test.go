package preview_test

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"doorpocket/build/site"
)

// state is what open pages are told.
type state struct {
	Site  int
	Wrong string
}

// states listens to what the pages of a preview are told.
func states(t *testing.T, address string) <-chan state {
	t.Helper()
	answer, err := http.Get(address + "/-preview/events")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = answer.Body.Close() })
	all := make(chan state, 1000)
	go func() {
		for lines := bufio.NewScanner(answer.Body); lines.Scan(); {
			var s state
			if text, ok := strings.CutPrefix(lines.Text(), "data: "); ok && json.Unmarshal([]byte(text), &s) == nil {
				all <- s
			}
		}
	}()
	return all
}

// until waits for a state.
func until(t *testing.T, all <-chan state, what string, is func(state) bool) state {
	t.Helper()
	for late := time.After(time.Minute); ; {
		select {
		case s := <-all:
			if is(s) {
				return s
			}
		case <-late:
			t.Fatalf("%s: no page is told of that", what)
		}
	}
}

// While a publish is writing the site of a preview, pages say so; when it is done
// the preview goes on by itself.
func TestPreviewWaitsForAPublish(t *testing.T) {
	t.Parallel()
	root, target := someFleet(t, 1), filepath.Join(t.TempDir(), "site")
	busy, err := site.Open(target)
	if err != nil {
		t.Fatal(err)
	}
	pages := states(t, show(t, root, target))
	until(t, pages, "busy", func(s state) bool { return strings.Contains(s.Wrong, "another publish") })
	if err := busy.Close(); err != nil {
		t.Fatal(err)
	}
	until(t, pages, "free again", func(s state) bool { return s.Wrong == "" && s.Site == 1 })
}

// Two previews of one fleet share a site: the pages of both follow every edit,
// whichever of them publishes it.
func TestTwoPreviewsOfOneFleet(t *testing.T) {
	t.Parallel()
	root, target := someFleet(t, 1), filepath.Join(t.TempDir(), "site")
	spec := filepath.Join(root, "vans/van-0000.toml")
	good, err := os.ReadFile(spec)
	if err != nil {
		t.Fatal(err)
	}
	addresses := []string{show(t, root, target), show(t, root, target)}
	var all []<-chan state
	for _, address := range addresses {
		all = append(all, states(t, address))
	}
	seen := make([]int, len(all))
	for i := range all {
		seen[i] = until(t, all[i], "begun", func(s state) bool { return s.Wrong == "" && s.Site > 0 }).Site
	}
	for n := range 6 {
		name := fmt.Sprintf("Edit %d", n)
		if err := os.WriteFile(spec, []byte(strings.Replace(string(good), `"Van 0"`, fmt.Sprintf("%q", name), 1)), 0o644); err != nil {
			t.Fatal(err)
		}
		for i := range all {
			seen[i] = until(t, all[i], name, func(s state) bool { return s.Wrong == "" && s.Site > seen[i] }).Site
			answer, err := http.Get(addresses[i] + "/hirers/VAAA/")
			if err != nil {
				t.Fatal(err)
			}
			page, err := io.ReadAll(answer.Body)
			if err := answer.Body.Close(); err != nil {
				t.Fatal(err)
			}
			if err != nil || !strings.Contains(string(page), name) {
				t.Errorf("%s: the page is not that of the edited fleet, %v", name, err)
			}
		}
	}
}
