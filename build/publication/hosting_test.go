package publication_test

import (
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/google/go-cmp/cmp"

	"doorpocket/build/publication"
	"doorpocket/build/sample"
)

const hostingNotes = "../../HOSTING.md"

// example gives the first block of code in a language from the hosting notes.
func example(t *testing.T, language string) string {
	t.Helper()
	data, err := os.ReadFile(hostingNotes)
	if err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(string(data), "```"+language+"\n")
	block, _, closed := strings.Cut(rest, "```")
	if !ok || !closed {
		t.Fatalf("%s has no example in %s", hostingNotes, language)
	}
	return block
}

// hosted publishes a small fleet for a path of a host.
func hosted(t *testing.T, vans int) (fstest.MapFS, string) {
	t.Helper()
	lib, _ := theLibrary()
	fleet := sample.Many(lib, vans, 8)
	fleet["fleet.toml"] = file(strings.Replace(sample.FleetTOML, "https://guide.sample.example", "https://guide.heathside.example/vans", 1))
	site := filepath.Join(t.TempDir(), "site")
	if _, found, err := publishFiles(fleet, site, nil); err != nil || found.HasErrors() {
		t.Fatal(err, found)
	}
	return fleet, site
}

// withNginx serves a site with the example of the hosting notes until the test
// ends.
func withNginx(t *testing.T, site string) string {
	t.Helper()
	dir := t.TempDir()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	address := listener.Addr().String()
	if err := listener.Close(); err != nil {
		t.Fatal(err)
	}
	conf := strings.NewReplacer("listen 80;", "listen "+address+";", "/srv/guides/hirers/", filepath.Join(site, "hirers")+"/").Replace(example(t, "nginx"))
	main := fmt.Sprintf(`daemon off; master_process off; pid %[1]s/pid; error_log %[1]s/errors;
events {}
http {
    include /etc/nginx/mime.types; access_log off;
    client_body_temp_path %[1]s/a; proxy_temp_path %[1]s/b; fastcgi_temp_path %[1]s/c; uwsgi_temp_path %[1]s/d; scgi_temp_path %[1]s/e;
%[2]s}
`, dir, conf)
	name := filepath.Join(dir, "nginx.conf")
	if err := os.WriteFile(name, []byte(main), 0o644); err != nil {
		t.Fatal(err)
	}
	program, err := exec.LookPath("nginx")
	if err != nil {
		program = "/usr/sbin/nginx" // which is not on everybody's path
	}
	if out, err := exec.Command(program, "-t", "-e", filepath.Join(dir, "errors"), "-c", name).CombinedOutput(); err != nil {
		t.Fatalf("nginx -t: %v\n%s", err, out)
	}
	cmd := exec.Command(program, "-e", filepath.Join(dir, "errors"), "-c", name)
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = cmd.Process.Kill() // which is the end of it
		_ = cmd.Wait()
	})
	for range 600 {
		if conn, err := net.Dial("tcp", address); err == nil {
			_ = conn.Close()
			return "http://" + address
		}
		time.Sleep(50 * time.Millisecond)
	}
	t.Fatal("nginx does not answer")
	return ""
}

// The example for nginx serves the guides under a path: pages to be asked for
// again, scripts for good, and the page for lost addresses with its status.
func TestNginx(t *testing.T) {
	_, site := hosted(t, 2)
	address := withNginx(t, site)
	scripts, err := filepath.Glob(filepath.Join(site, "hirers/parts/*.js"))
	if err != nil || len(scripts) == 0 {
		t.Fatal(err)
	}
	van := sample.Code(0)
	client := &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	for _, tt := range []struct {
		path   string
		status int
		cache  string
		want   string
	}{
		{"/vans", 301, "", ""},
		{"/vans/", 200, "no-cache", "Van 1"},
		{"/vans/" + van, 301, "no-cache", ""},
		{"/vans/" + van + "/", 200, "no-cache", "Van 0"},
		{"/vans/parts/" + filepath.Base(scripts[0]), 200, "public, max-age=31536000, immutable", ""},
		{"/vans/" + van + "/G99/", 404, "no-cache", "Van 1"},
		{"/vans/parts/gone.js", 404, "no-cache", "Van 1"},
		{"/vans/../staff/", 404, "", ""},
		{"/staff/", 404, "", ""},
		{"/vans/../ledger/fleet.json", 404, "", ""},
	} {
		r, err := client.Get(address + tt.path)
		if err != nil {
			t.Fatal(err)
		}
		body, err := io.ReadAll(r.Body)
		if err != nil {
			t.Fatal(err)
		}
		_ = r.Body.Close() // it has been read to its end
		if r.StatusCode != tt.status || r.Header.Get("Cache-Control") != tt.cache || !strings.Contains(string(body), tt.want) {
			t.Errorf("%s: %d, %q, want %d, %q, %q", tt.path, r.StatusCode, r.Header.Get("Cache-Control"), tt.status, tt.cache, tt.want)
		}
		if to := r.Header.Get("Location"); tt.status == 301 && !strings.HasSuffix(to, tt.path+"/") {
			t.Errorf("%s leads to %q", tt.path, to)
		}
	}
}

// The page for lost addresses finds the codes nearest to the one typed.
func TestLostPageFindsCodes(t *testing.T) {
	_, site := hosted(t, 30)
	address := withNginx(t, site)
	b := newBrowser(t, 390, 844)
	van := sample.Code(0)
	entries, err := os.ReadDir(filepath.Join(site, "hirers", van))
	if err != nil {
		t.Fatal(err)
	}
	var label string
	for _, e := range entries {
		if len(e.Name()) == 2 && e.Name()[1] == '1' {
			label = e.Name()
		}
	}
	if label == "" {
		t.Fatal("the van has no label")
	}
	for typed, want := range map[string]string{
		van + "/" + label + "0/":                              van + "/" + label + "/",
		strings.ToLower(van + "/" + label + "/"):              van + "/" + label + "/",
		van + "/" + strings.Replace(label, "1", "I", 1) + "/": van + "/" + label + "/",
		strings.Replace(van, "V", "W", 1) + "/":               van + "/",
	} {
		b.run(t, chromedp.Navigate(address+"/vans/"+typed))
		first := ""
		for range 400 { // until the codes of the van have been loaded
			if first = ask(t, b, chromedp.Evaluate[string](`(document.querySelector("#near:not([hidden]) a") || {href: ""}).href`)); first != "" {
				break
			}
			time.Sleep(50 * time.Millisecond)
		}
		if first == "" {
			t.Fatalf("%s: nothing is offered", typed)
		}
		if got := strings.TrimSuffix(strings.TrimPrefix(first, address+"/vans/"), "index.html"); got != want {
			t.Errorf("%s: offers %s, want %s", typed, got, want)
		}
		if r, err := http.Get(first); err != nil {
			t.Fatal(err)
		} else if r.StatusCode != http.StatusOK {
			t.Errorf("%s: offers what is not there: %d", typed, r.StatusCode)
		}
	}
	b.run(t, chromedp.Navigate(address+"/vans/nothing/of/the/kind/"))
	if ask(t, b, chromedp.Evaluate[bool](`document.getElementById("near").hidden`)) != true {
		t.Error("something is offered for nonsense")
	}
}

// The example for rsync sends the files whose content changed, and no others.
func TestUploadOfWhatChanged(t *testing.T) {
	fleet, site := hosted(t, 3)
	host := filepath.Join(t.TempDir(), "hirers")
	var words []string
	for line := range strings.Lines(example(t, "sh")) {
		if strings.HasPrefix(line, "rsync ") {
			words = strings.Fields(line)
		}
	}
	if len(words) < 4 {
		t.Fatal("the hosting notes have no rsync")
	}
	upload := func() []string {
		args := append(slices.Clone(words[1:len(words)-2]), "-i", filepath.Join(site, "hirers")+"/", host+"/")
		out, err := exec.Command("rsync", args...).CombinedOutput()
		if err != nil {
			t.Fatalf("rsync: %v\n%s", err, out)
		}
		var sent []string
		for line := range strings.Lines(string(out)) {
			if what, path, ok := strings.Cut(strings.TrimSpace(line), " "); ok && strings.HasPrefix(what, ">f") || strings.HasPrefix(what, "*deleting") && !strings.HasSuffix(path, "/") {
				sent = append(sent, strings.TrimSpace(path))
			}
		}
		slices.Sort(sent)
		return sent
	}
	upload()
	for name, edit := range map[string]func(){
		"nothing":    func() {},
		"a note":     func() { fleet["vans/van-0001.toml"] = file(string(fleet["vans/van-0001.toml"].Data) + "# seen\n") },
		"a van less": func() { delete(fleet, "vans/van-0002.toml") },
		"another day": func() {
			fleet["vans/van-0001.toml"] = file(strings.Replace(string(fleet["vans/van-0001.toml"].Data), "2026-10", "2026-11", 1))
		},
	} {
		before := files(t, filepath.Join(site, "hirers"))
		edit()
		if _, _, err := publishFiles(fleet, site, func(j *publication.Job) { j.All = name == "nothing" }); err != nil {
			t.Fatal(err)
		}
		after := files(t, filepath.Join(site, "hirers"))
		var changed []string
		for path, data := range after {
			if was, ok := before[path]; !ok || was != data {
				changed = append(changed, path)
			}
		}
		for path := range before {
			if _, ok := after[path]; !ok {
				changed = append(changed, path)
			}
		}
		slices.Sort(changed)
		if diff := cmp.Diff(changed, upload()); diff != "" {
			t.Errorf("%s:\n%s", name, diff)
		}
		if diff := cmp.Diff(after, files(t, host)); diff != "" {
			t.Errorf("%s: the host has another site", name)
		}
	}
}
