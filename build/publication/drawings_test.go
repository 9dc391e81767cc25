package publication_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
)

var (
	drawing = regexp.MustCompile(`(?s)<svg class="(?:plan|view|plan route)".*?</svg>`)
	plateAt = regexp.MustCompile(`<rect x="([0-9.-]+)" y="([0-9.-]+)" width="([0-9.]+)" height="([0-9.]+)" rx="[46]"/>`)
	dotsAt  = regexp.MustCompile(`class="stops" d="([^"]*)"`)
	dotAt   = regexp.MustCompile(`M([0-9.-]+) ([0-9.-]+)h0`)
)

type rectangle struct{ x, y, wide, high float64 }

// labels are the plates and numbered dots of a drawing.
func labels(t *testing.T, svg string) []rectangle {
	t.Helper()
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	var all []rectangle
	for _, m := range plateAt.FindAllStringSubmatch(svg, -1) {
		all = append(all, rectangle{number(m[1]), number(m[2]), number(m[3]), number(m[4])})
	}
	for _, path := range dotsAt.FindAllStringSubmatch(svg, -1) {
		for _, m := range dotAt.FindAllStringSubmatch(path[1], -1) {
			all = append(all, rectangle{number(m[1]) - 9, number(m[2]) - 9, 18, 18})
		}
	}
	return all
}

// On no drawing of a demonstration van does a label cover another: neither on
// the plans, nor on the ways of the routines, nor on the views for staff.
func TestNoLabelsOverlapOnTheDemonstrationVans(t *testing.T) {
	kinds := map[string]int{}
	for name, page := range files(t, publishDemo(t)) {
		if !strings.HasSuffix(name, ".html") {
			continue
		}
		for _, svg := range drawing.FindAllString(page, -1) {
			all := labels(t, svg)
			kinds[svg[:strings.IndexByte(svg[12:], '"')+12]] += len(all)
			for i, a := range all {
				for _, b := range all[:i] {
					if a.x < b.x+b.wide && b.x < a.x+a.wide && a.y < b.y+b.high && b.y < a.y+a.high {
						t.Errorf("%s: two labels overlap at %g, %g", name, a.x, a.y)
					}
				}
			}
		}
	}
	if len(kinds) != 3 {
		t.Errorf("drawings of %d kinds were looked at: %v", len(kinds), kinds)
	}
	for kind, count := range kinds {
		if count < 100 {
			t.Errorf("%d labels on all drawings of kind %s", count, kind)
		}
	}
}
