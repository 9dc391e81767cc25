package publication_test

import (
	"net/url"
	"path"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// page is what a test wants to know of one HTML file.
type page struct {
	ids    map[string]int
	links  []string // href of a elements, SVG ones too
	loads  []string // what the browser fetches by itself
	titles []string // headings in order: "h1", "h2", ...
	lang   string
}

func parsePage(t *testing.T, name, text string) page {
	t.Helper()
	root, err := html.Parse(strings.NewReader(text))
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	p := page{ids: map[string]int{}}
	for n := range root.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		if len(n.Data) == 2 && n.Data[0] == 'h' && n.Data[1] >= '1' && n.Data[1] <= '6' {
			p.titles = append(p.titles, n.Data)
		}
		for _, a := range n.Attr {
			switch {
			case a.Key == "id":
				p.ids[a.Val]++
			case a.Key == "lang" && n.Data == "html":
				p.lang = a.Val
			case a.Key == "href" && n.Data == "a":
				p.links = append(p.links, a.Val)
			case a.Key == "src", a.Key == "srcset", a.Key == "href":
				p.loads = append(p.loads, a.Val)
			}
		}
	}
	return p
}

// Over the whole output: no dead link, no id twice, every page of a van can be
// reached from its start, headings in order, nothing fetched from elsewhere. Of a
// label whose thing is gone only the sticker leads to the page.
func TestLinks(t *testing.T) {
	tree := files(t, demoSite(t))
	pages := map[string]page{}
	for name, text := range tree {
		if strings.HasSuffix(name, ".html") {
			pages[name] = parsePage(t, name, text)
		}
	}
	reach := map[string][]string{}
	for name, p := range pages {
		for id, n := range p.ids {
			if n > 1 {
				t.Errorf("%s: id %q stands %d times", name, id, n)
			}
		}
		checkHeadings(t, name, p)
		for _, load := range p.loads {
			checkLoad(t, tree, name, load)
		}
		for _, link := range p.links {
			if to := checkLink(t, tree, pages, name, link); to != "" {
				reach[name] = append(reach[name], to)
			}
		}
	}
	for _, v := range demoFleet(t).Vans {
		gone := map[string]bool{}
		for _, g := range v.Gone {
			gone["hirers/"+v.Code+"/"+g.Code+"/index.html"] = true
		}
		start := "hirers/" + v.Code + "/index.html"
		seen := map[string]bool{start: true}
		for queue := []string{start}; len(queue) > 0; queue = queue[1:] {
			for _, to := range reach[queue[0]] {
				if !seen[to] {
					seen[to] = true
					queue = append(queue, to)
				}
			}
		}
		for name := range pages {
			if strings.HasPrefix(name, "hirers/"+v.Code+"/") && !seen[name] && !gone[name] {
				t.Errorf("%s cannot be reached from %s", name, start)
			}
		}
	}
}

func checkHeadings(t *testing.T, name string, p page) {
	t.Helper()
	if p.lang == "" {
		t.Errorf("%s: no language", name)
	}
	if len(p.titles) == 0 || p.titles[0] != "h1" {
		t.Errorf("%s: does not begin with an h1: %v", name, p.titles)
	}
	for i := 1; i < len(p.titles); i++ {
		if p.titles[i] == "h1" || p.titles[i][1] > p.titles[i-1][1]+1 {
			t.Errorf("%s: headings out of order: %v", name, p.titles)
			return
		}
	}
}

func checkLoad(t *testing.T, tree map[string]string, name, load string) {
	t.Helper()
	u, err := url.Parse(load)
	if err != nil {
		t.Errorf("%s: %v", name, err)
		return
	}
	if u.Scheme == "data" {
		return
	}
	if u.Path == "" && u.Fragment != "" { // a sign that is drawn once
		if !strings.Contains(tree[name], `id="`+u.Fragment+`"`) {
			t.Errorf("%s has no %s", name, load)
		}
		return
	}
	if u.IsAbs() || u.Host != "" {
		t.Errorf("%s fetches %s from elsewhere", name, load)
		return
	}
	for part := range strings.SplitSeq(load, ",") {
		file := strings.Fields(part)[0]
		if _, ok := tree[path.Join(path.Dir(name), file)]; !ok {
			t.Errorf("%s fetches %s, which is not there", name, file)
		}
	}
}

// checkLink gives the page of the site that a link leads to, "" for others.
func checkLink(t *testing.T, tree map[string]string, pages map[string]page, name, link string) string {
	t.Helper()
	u, err := url.Parse(link)
	if err != nil {
		t.Errorf("%s: link %q: %v", name, link, err)
		return ""
	}
	switch u.Scheme {
	case "tel", "mailto", "https":
		return ""
	case "":
	default:
		t.Errorf("%s: link %q has a scheme that pages do not use", name, link)
		return ""
	}
	to := name
	switch {
	case strings.HasPrefix(u.Path, "/"): // the page for lost addresses, from the root
		to = path.Join("hirers", u.Path)
	case u.Path != "":
		to = path.Join(path.Dir(name), u.Path)
	}
	if _, ok := tree[to]; !ok {
		t.Errorf("%s: dead link %q (%s)", name, link, to)
		return ""
	}
	if u.Fragment != "" && pages[to].ids[u.Fragment] == 0 {
		t.Errorf("%s: link %q leads to a place that is not on the page", name, link)
	}
	if strings.HasPrefix(name, "hirers/") && strings.HasPrefix(to, "staff/") {
		t.Errorf("%s: a hirer's page links to the staff tree", name)
	}
	return to
}
