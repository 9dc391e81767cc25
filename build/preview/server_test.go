package preview

import (
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"doorpocket/build/publication"
)

func testServer(t *testing.T) (*server, string) {
	t.Helper()
	parent := t.TempDir()
	site := filepath.Join(parent, "site")
	for name, text := range map[string]string{
		"site/hirers/index.html": "<p>start</p></body>", "site/hirers/RW/index.html": "<p>rowan</p></body>", "site/hirers/404.html": "<p>lost</p></body>",
		"site/hirers/parts/a.js": "a", "site/staff/index.html": "<p>staff</p></body>", "site/ledger/fleet.json": "secret", "outside.html": "outside",
	} {
		name = filepath.Join(parent, name)
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, link := range []string{"../../outside.html", filepath.Join(parent, "outside.html"), ".."} {
		if err := os.Symlink(link, filepath.Join(site, "hirers", "link"+strings.ReplaceAll(link, "/", "-"))); err != nil {
			t.Fatal(err)
		}
	}
	addr := &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: 8637}
	return &server{site: site, board: newBoard(), hosts: hostsOf(addr)}, parent
}

func TestServer(t *testing.T) {
	s, parent := testServer(t)
	absolute := "/hirers/link" + strings.ReplaceAll(filepath.Join(parent, "outside.html"), "/", "-")
	for _, tt := range []struct {
		method, host, path string
		status             int
		want               string
	}{
		{"GET", "127.0.0.1:8637", "/", 302, ""},
		{"GET", "127.0.0.1:8637", "/hirers/", 200, "start"},
		{"GET", "localhost:8637", "/hirers/index.html", 200, "reload.js"},
		{"GET", "LOCALHOST:8637", "/hirers/RW/", 200, "rowan"},
		{"GET", "[::1]:8637", "/hirers/RW", 302, ""},
		{"HEAD", "localhost:8637", "/hirers/RW/", 200, ""},
		{"GET", "localhost:8637", "/staff/", 200, "staff"},
		{"GET", "localhost:8637", "/hirers/parts/a.js", 200, "a"},
		{"GET", "localhost:8637", "/-preview/reload.js", 200, "EventSource"},
		{"GET", "localhost:8637", "/hirers/XX/", 404, "lost"},
		{"GET", "localhost:8637", "/ledger/fleet.json", 404, "lost"},
		{"GET", "localhost:8637", "/hirers/../ledger/fleet.json", 404, "lost"},
		{"GET", "localhost:8637", "/hirers/../../outside.html", 404, "lost"},
		{"GET", "localhost:8637", "/hirers/%2e%2e/%2e%2e/outside.html", 404, "lost"},
		{"GET", "localhost:8637", "/hirers/..%2f..%2foutside.html", 404, "lost"},
		{"GET", "localhost:8637", `/hirers/..%5c..%5coutside.html`, 404, "lost"},
		{"GET", "localhost:8637", "/hirers/link..-..-outside.html", 404, "lost"},
		{"GET", "localhost:8637", absolute, 404, "lost"},
		{"GET", "localhost:8637", "/hirersX/index.html", 404, "lost"},
		{"GET", "localhost:8637", "/hirers/index.html%00.js", 404, "lost"},
		{"GET", "guide.example", "/hirers/", 421, "localhost"},
		{"GET", "guide.example:8637", "/hirers/", 421, "localhost"},
		{"GET", "localhost:9999", "/hirers/", 421, "localhost"},
		{"GET", "localhost", "/hirers/", 421, "localhost"},
		{"GET", "guide.example:8637", "/-preview/events", 421, "localhost"},
		{"POST", "localhost:8637", "/hirers/", 405, ""},
		{"DELETE", "localhost:8637", "/hirers/index.html", 405, ""},
	} {
		r := httptest.NewRequest(tt.method, "http://x"+tt.path, nil)
		r.Host = tt.host
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		body, err := io.ReadAll(w.Result().Body)
		if err != nil {
			t.Fatal(err)
		}
		if w.Code != tt.status || !strings.Contains(string(body), tt.want) || strings.Contains(string(body), "outside") || strings.Contains(string(body), "secret") {
			t.Errorf("%s %s%s: %d %q, want %d %q", tt.method, tt.host, tt.path, w.Code, body, tt.status, tt.want)
		}
		if w.Header().Get("Cache-Control") != "no-store" {
			t.Errorf("%s may be kept", tt.path)
		}
	}
}

// A worker that keeps pages would show old ones.
func TestNoServiceWorker(t *testing.T) {
	s, _ := testServer(t)
	r := httptest.NewRequest("GET", "http://localhost:8637/hirers/parts/a.js", nil)
	r.Header.Set("Service-Worker", "script")
	w := httptest.NewRecorder()
	s.ServeHTTP(w, r)
	if w.Code != http.StatusNotFound {
		t.Errorf("status %d", w.Code)
	}
}

// The number of the site goes up only when something new is to be seen.
func TestBoard(t *testing.T) {
	b := newBoard()
	for _, tt := range []struct {
		r     Result
		state string
		site  int
	}{
		{Result{Made: publication.Made{Files: 3}}, "a", 1}, {Result{}, "a", 1}, {Result{Err: io.EOF}, "a", 1}, {Result{Made: publication.Made{Files: 1}}, "b", 2},
		{Result{}, "c", 3}, {Result{Err: io.EOF}, "d", 3}, {Result{}, "d", 4}, {Result{}, "d", 4}, // somebody else published
	} {
		b.put(tt.r, tt.state)
		if state, _, _ := b.get(); state.Site != tt.site || (state.Wrong != "") != (tt.r.Err != nil) {
			t.Errorf("%+v: %+v", tt.r, state)
		}
	}
}
