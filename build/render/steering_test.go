package render_test

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"doorpocket/build/guide"
	"doorpocket/build/render"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/layouts"
)

var plateForm = regexp.MustCompile(`<a class="plate[^"]*" href="([A-Z][0-9]+)/[^>]*><title>[^<]*</title><rect x="([0-9.]+)"`)

// The nearside is on the left of the plan where one steers on the right, and on
// the right where one steers on the left; front is up in both.
func TestSidesFollowTheSteering(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	for steering, nearsideLeft := range map[string]bool{"right": true, "left": false} {
		t.Run(steering, func(t *testing.T) {
			files := sample.Everything(lib, 0)
			van := files["vans/ev.toml"]
			van.Data = []byte(strings.Replace(string(van.Data), `steering = "right"`, fmt.Sprintf("steering = %q", steering), 1))
			fleet, found := spec.Load(files, "", lib)
			if found.HasErrors() {
				t.Fatal(found)
			}
			xs := plates(t, fleet)
			beside := 0
			for _, f := range fleet.Vans[0].Fitted {
				x, ok := xs[f.Label]
				if !ok || f.Place.Side != "nearside" && f.Place.Side != "offside" {
					continue
				}
				beside++
				if left := x < 60; left != ((f.Place.Side == "nearside") == nearsideLeft) {
					t.Errorf("%s on the %s is drawn at %v", f.Label, f.Place.Side, x)
				}
			}
			if beside < 4 {
				t.Errorf("only %d plates beside the van: the test proves nothing", beside)
			}
		})
	}
}

// plates gives the left edge of every plate on the van's start page, by code.
func plates(t *testing.T, fleet *spec.Fleet) map[string]float64 {
	t.Helper()
	r, err := render.New(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	g, found := guide.NewKit(&fleet.Operator, "en").Build(fleet.Vans[0])
	if found.HasErrors() {
		t.Fatal(found)
	}
	pages, err := r.Van(g)
	if err != nil {
		t.Fatal(err)
	}
	xs := map[string]float64{}
	for _, p := range pages {
		if p.Path != "EV/index.html" {
			continue
		}
		for _, m := range plateForm.FindAllStringSubmatch(string(p.Data), -1) {
			x, err := strconv.ParseFloat(m[2], 64)
			if err != nil {
				t.Fatal(err)
			}
			xs[m[1]] = x
		}
	}
	return xs
}
