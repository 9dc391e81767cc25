package paper

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// said writes segments short: points to a tenth.
func said(path []segment) string {
	var parts []string
	for _, s := range path {
		text := string(s.op)
		n := map[byte]int{'M': 1, 'L': 1, 'C': 3}[s.op]
		for _, p := range s.pts[:n] {
			text += fmt.Sprintf(" %g,%g", tenth(p.x), tenth(p.y))
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, " ")
}

func tenth(v float64) float64 { return math.Round(v*10)/10 + 0 }

func TestParsePath(t *testing.T) {
	for data, want := range map[string]string{
		"M1 2L3 4z":                    "M 1,2 L 3,4 Z",
		"m1 2 3 4":                     "M 1,2 L 4,6",
		"M1 2h3v-1H0V0":                "M 1,2 L 4,2 L 4,1 L 0,1 L 0,0",
		"M0 0c1 0 2 1 2 2s1 2 2 2":     "M 0,0 C 1,0 2,1 2,2 C 2,3 3,4 4,4",
		"M0 0q3 0 3 3t3 3":             "M 0,0 C 2,0 3,1 3,3 C 3,5 4,6 6,6",
		"M.5.5l-.5.5":                  "M 0.5,0.5 L 0,1",
		"M1 1zm2 2h1":                  "M 1,1 Z M 3,3 L 4,3",
		"M10 0A10 10 0 0 1 0 10":       "M 10,0 C 10,5.5 5.5,10 0,10",
		"M10 0a10 10 0 0 0 10 10":      "M 10,0 C 10,5.5 14.5,10 20,10",
		"M0 0a5 5 0 1 1 0 .1":          "M 0,0 C 0,-2.8 2.3,-5 5,-4.9 C 7.8,-4.9 10,-2.7 10,0.1",
		"M0 0A1 1 0 0 1 0 0":           "M 0,0",
		"M0 0A0 1 0 0 1 4 0":           "M 0,0 L 4,0",
		"M 0,0 L 10,-10 20 -20 L30-30": "M 0,0 L 10,-10 L 20,-20 L 30,-30",
	} {
		got, err := parsePath(data)
		if err != nil {
			t.Errorf("%q: %v", data, err)
		}
		if text := said(got); !strings.HasPrefix(text, want) {
			t.Errorf("%q: %s, wanted %s", data, text, want)
		}
	}
	for _, bad := range []string{"M1", "X1 2", "M1 2A1 1 0 2 0 3 3", "L", "M1 1 L two"} {
		if _, err := parsePath(bad); err == nil {
			t.Errorf("%q is let through", bad)
		}
	}
}

// An arc ends where it should and keeps its distance from its middle.
func TestArcIsRound(t *testing.T) {
	path, err := parsePath("M20 10A10 10 0 1 1 10 0")
	if err != nil {
		t.Fatal(err)
	}
	at := path[0].pts[0]
	for _, s := range path[1:] {
		for i := range 11 {
			u := float64(i) / 10
			v := 1 - u
			x := v*v*v*at.x + 3*v*v*u*s.pts[0].x + 3*v*u*u*s.pts[1].x + u*u*u*s.pts[2].x
			y := v*v*v*at.y + 3*v*v*u*s.pts[0].y + 3*v*u*u*s.pts[1].y + u*u*u*s.pts[2].y
			if r := math.Hypot(x-10, y-10); math.Abs(r-10) > 0.01 {
				t.Errorf("%g from the middle at %g, %g", r, x, y)
			}
		}
		at = s.pts[2]
	}
	if at != (point{10, 0}) {
		t.Errorf("ends at %v", at)
	}
}

func FuzzParsePath(f *testing.F) {
	f.Add("M1 2c3 4 5 6 7 8a1 1 0 01.5.5z")
	f.Fuzz(func(t *testing.T, data string) {
		path, err := parsePath(data)
		if err == nil && len(path) > len(data)*4 {
			t.Errorf("%d pieces of %d bytes", len(path), len(data))
		}
	})
}

// A drawing takes its looks from classes, and what paper cannot show is an
// error.
func TestParseDrawing(t *testing.T) {
	g, err := ParseDrawing(`<svg viewBox="0 0 10 20"><g class="plate" transform="translate(1 2) rotate(90)"><rect x="0" y="0" width="2" height="1"/><text x="1" y="1">G1</text></g></svg>`,
		Styles{"plate rect": {"fill": "#fff", "stroke": "#102030", "stroke-width": "2"}})
	if err != nil {
		t.Fatal(err)
	}
	rect, text := g.shapes[0], g.shapes[1]
	if *rect.paint.fill != White || *rect.paint.stroke != (Colour{16, 32, 48}) || rect.paint.width != 2 {
		t.Errorf("paint %+v", rect.paint)
	}
	if p := rect.m.apply(point{2, 0}); math.Abs(p.x-1) > 1e-9 || math.Abs(p.y-4) > 1e-9 {
		t.Errorf("turned to %v", p)
	}
	if text.text != "G1" || g.Height != 20 {
		t.Errorf("text %q, height %g", text.text, g.Height)
	}
	for _, bad := range []string{
		`<svg viewBox="0 0 1 1"><image/></svg>`, `<svg><path d="M0 0"/></svg>`,
		`<svg viewBox="0 0 1 1"><g transform="scale(2)"/></svg>`, `<svg viewBox="0 0 1 1"><path d="M0"/></svg>`, `<svg viewBox="0 0 1 1"><g>`,
	} {
		if _, err := ParseDrawing(bad, nil); err == nil {
			t.Errorf("%s is let through", bad)
		}
	}
}

func FuzzParseDrawing(f *testing.F) {
	f.Add(`<svg viewBox="0 0 10 20"><g transform="rotate(9)"><rect width="2" height="1"/><text x="1">G1</text></g></svg>`)
	f.Fuzz(func(t *testing.T, data string) {
		if g, err := ParseDrawing(data, nil); err == nil && g == nil {
			t.Error("neither a drawing nor an error")
		}
	})
}
