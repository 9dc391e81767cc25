package compare_test

import (
	"maps"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/compare"
	"doorpocket/build/guide"
	"doorpocket/build/render"
	"doorpocket/build/sample"
	"doorpocket/build/sheets"
	"doorpocket/build/spec"
	"doorpocket/layouts"
)

// aside is what of a page tells nothing to its reader: its style, which follows
// from the rest, its revision.
var aside = regexp.MustCompile(`(?s)<style>.*?</style>|<footer>.*?</footer>|<head>.*?</head>`)

// written are the pages of a van as they are published, by their paths.
func written(t *testing.T, r *render.Renderer, files fstest.MapFS) map[string]string {
	t.Helper()
	lib, _ := library()
	fleet, found := spec.Load(files, "", lib)
	if found.HasErrors() {
		return nil
	}
	g, found := guide.NewKit(&fleet.Operator, "en").Build(fleet.Vans[0])
	if found.HasErrors() {
		return nil
	}
	pages, err := r.Van(g)
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	for _, p := range pages {
		if path, ok := strings.CutSuffix(strings.TrimPrefix(p.Path, "EV/"), "index.html"); ok && path != "" {
			all[path] = aside.ReplaceAllString(string(p.Data), "")
		}
	}
	return all
}

// After a change of any one line of a spec with everything, the pages that are said
// to be new, changed and gone are those that are published otherwise, and no
// others.
func TestPagesAreThoseThatArePublished(t *testing.T) {
	lib, _ := library()
	r, err := render.New(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	one, other := sample.Everything(lib, 0), sample.Everything(lib, 1)
	lines := strings.Split(string(one["vans/ev.toml"].Data), "\n")
	others := strings.Split(string(other["vans/ev.toml"].Data), "\n")
	was := written(t, r, one)
	old := side(t, "old", one, nil)
	body := slices.IndexFunc(lines, func(l string) bool { return strings.HasPrefix(l, "[fitted.") })
	random := rand.New(rand.NewPCG(9, 5))
	for tried := 0; tried < 6; {
		i := body + random.IntN(len(lines)-body)
		changed := slices.Clone(lines)
		switch {
		case lines[i] != others[i]:
			changed[i] = others[i]
		case strings.HasPrefix(lines[i], "system = ") && random.IntN(4) == 0:
			changed[i] += "\nnote = \"Look twice.\""
		case strings.HasPrefix(lines[i], "at = ") && random.IntN(4) == 0:
			changed[i] = `at = { side = "rear", up = "1.1 m" }`
		case strings.HasPrefix(lines[i], "label = ") && random.IntN(4) == 0:
			changed[i] = "label = \"" + string(lines[i][9]) + "99\""
		default:
			continue
		}
		files := maps.Clone(one)
		files["vans/ev.toml"] = &fstest.MapFile{Data: []byte(strings.Join(changed, "\n"))}
		now := written(t, r, files)
		if now == nil {
			continue // some facts do not go with others
		}
		tried++
		report, found := compare.Make(old, side(t, "new", files, nil), "en", voice(t), sheets.Compared)
		if report == nil {
			t.Fatal(found)
		}
		said := map[string]bool{}
		for _, g := range report.Groups {
			for _, c := range g.Hirers {
				if strings.HasPrefix(string(c.Kind), "page-") {
					said[c.Path] = true
				}
			}
		}
		published := map[string]bool{}
		for path := range was {
			published[path] = now[path] != was[path]
		}
		for path := range now {
			published[path] = now[path] != was[path]
		}
		for path, is := range published {
			if is != said[path] {
				t.Errorf("%s, then %s: %s is published otherwise: %v, said: %v", lines[i], changed[i], path, is, said[path])
			}
		}
	}
}
