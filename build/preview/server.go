package preview

import (
	"bytes"
	_ "embed"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path"
	"strconv"
	"strings"
	"time"
)

// own is where the preview's own files are, outside both trees.
const own = "/-preview/"

//go:embed reload.js
var reloadScript []byte

// server shows the two trees of a site to this computer.
type server struct {
	site  string
	board *board
	hosts []string
}

// hostsOf are the names under which this computer reaches itself. Any other
// name in a request is that of a foreign page which has been led here.
func hostsOf(addr net.Addr) []string {
	_, port, err := net.SplitHostPort(addr.String())
	if err != nil {
		return nil
	}
	return []string{"127.0.0.1:" + port, "localhost:" + port, "[::1]:" + port}
}

func (s *server) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Cache-Control", "no-store")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	switch {
	case !s.known(r.Host):
		http.Error(w, "This preview answers only to localhost.", http.StatusMisdirectedRequest)
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		h.Set("Allow", "GET, HEAD")
		http.Error(w, "A preview can only be read.", http.StatusMethodNotAllowed)
	case r.Header.Get("Service-Worker") != "":
		// It would keep pages of which new ones are wanted.
		http.Error(w, "A preview is never kept for later.", http.StatusNotFound)
	case r.URL.Path == own+"events":
		s.events(w, r)
	case r.URL.Path == own+"reload.js":
		h.Set("Content-Type", "text/javascript; charset=utf-8")
		_, _ = w.Write(reloadScript) // a reader who has gone needs no answer
	case r.URL.Path == "/":
		http.Redirect(w, r, "/hirers/", http.StatusFound)
	default:
		s.file(w, r)
	}
}

func (s *server) known(host string) bool {
	for _, h := range s.hosts {
		if strings.EqualFold(h, host) {
			return true
		}
	}
	return false
}

// file sends a file of one of the trees.
func (s *server) file(w http.ResponseWriter, r *http.Request) {
	name := path.Clean("/" + r.URL.Path)
	if !strings.HasPrefix(name+"/", "/hirers/") && !strings.HasPrefix(name+"/", "/staff/") || strings.Contains(r.URL.Path, `\`) {
		s.lost(w)
		return
	}
	data, when, err := s.read(name)
	if err == errFolder {
		if !strings.HasSuffix(r.URL.Path, "/") {
			http.Redirect(w, r, name+"/", http.StatusFound)
			return
		}
		name += "/index.html"
		data, when, err = s.read(name)
	}
	if err != nil {
		s.lost(w)
		return
	}
	if path.Ext(name) == ".html" {
		data = s.withScript(data)
	}
	http.ServeContent(w, r, path.Base(name), when, bytes.NewReader(data))
}

// lost sends the page for addresses that lead nowhere.
func (s *server) lost(w http.ResponseWriter) {
	data, _, err := s.read("/hirers/404.html")
	if err != nil {
		data = []byte("<!doctype html><title>Nothing here yet</title><body><p>Nothing here yet.</p></body>")
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(http.StatusNotFound)
	_, _ = w.Write(s.withScript(data))
}

var errFolder = fmt.Errorf("a folder")

// read reads a file below the site and never one outside, wherever links lead.
// The site may be swapped at any moment, so it is opened anew for each.
func (s *server) read(name string) ([]byte, time.Time, error) {
	root, err := os.OpenRoot(s.site)
	if err != nil {
		return nil, time.Time{}, err
	}
	defer root.Close()
	file, err := root.Open(strings.TrimPrefix(name, "/"))
	if err != nil {
		return nil, time.Time{}, err
	}
	defer file.Close()
	info, err := file.Stat()
	if err != nil {
		return nil, time.Time{}, err
	}
	if info.IsDir() {
		return nil, time.Time{}, errFolder
	}
	data, err := io.ReadAll(file)
	return data, info.ModTime(), err
}

// withScript adds the script that loads a page again when there is a new one.
func (s *server) withScript(page []byte) []byte {
	state, _, _ := s.board.get()
	tag := []byte(`<script src="` + own + `reload.js" data-site="` + strconv.Itoa(state.Site) + `" defer></script></body>`)
	return bytes.Replace(page, []byte("</body>"), tag, 1)
}

// events tells a page of every change, as long as it listens.
func (s *server) events(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/event-stream")
	control := http.NewResponseController(w)
	for {
		_, data, next := s.board.get()
		if _, err := fmt.Fprintf(w, "data: %s\n\n", data); err != nil {
			return
		}
		if err := control.Flush(); err != nil {
			return
		}
		select {
		case <-r.Context().Done():
			return
		case <-next:
		}
	}
}
