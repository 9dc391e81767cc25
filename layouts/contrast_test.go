package layouts

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// contrast is the ratio of WCAG 2: (L1 + 0.05) / (L2 + 0.05) with the relative
// luminance of sRGB.
func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	la, lb := luminance(t, a), luminance(t, b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func luminance(t *testing.T, colour string) float64 {
	t.Helper()
	hex := strings.TrimPrefix(colour, "#")
	if len(hex) == 3 {
		hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
	}
	n, err := strconv.ParseUint(hex, 16, 32)
	if err != nil || len(hex) != 6 {
		t.Fatalf("%q is no colour", colour)
	}
	linear := func(c uint64) float64 {
		v := float64(c&0xff) / 255
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(n>>16) + 0.7152*linear(n>>8) + 0.0722*linear(n)
}

// Published ratios: WCAG contrast of the ISO 3864 colours, computed from their
// sRGB values by others.
func TestContrastFormula(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{
		{"#000000", "#F9A800", 10.63}, {"#2B2B2C", "#F9A800", 7.16}, {"#FFFFFF", "#9B2423", 7.86},
		{"#fff", "#005387", 8.12}, {"#000", "#D05D29", 5.28}, {"#fff", "#000", 21},
	} {
		if got := contrast(t, c.a, c.b); math.Abs(got-c.want) > 0.005 {
			t.Errorf("%s on %s: %.3f, want %.2f", c.a, c.b, got, c.want)
		}
	}
}

var rootBlock = regexp.MustCompile(`:root\{([^}]*)\}`)

// nightSignal is the colour of signal words in the night.
const nightSignal = "#f0d2b4"

var nightBlock = regexp.MustCompile(`\.night\{([^}]*)\}`)
var variable = regexp.MustCompile(`--([a-z-]+):(#[0-9a-fA-F]{3,6})`)

// palettes are the colours of the style sheets in light and dark.
func palettes(t *testing.T) map[string]map[string]string {
	t.Helper()
	light, dark := map[string]string{}, map[string]string{}
	for _, name := range []string{"styles/page.css", "styles/staff.css"} {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		sheet, _, _ := strings.Cut(string(data), "@media print")
		blocks := rootBlock.FindAllStringSubmatch(sheet, -1)
		if len(blocks) != 2 {
			t.Fatalf("%s: %d palettes, want light and dark", name, len(blocks))
		}
		for i, palette := range []map[string]string{light, dark} {
			for _, v := range variable.FindAllStringSubmatch(blocks[i][1], -1) {
				palette[v[1]] = v[2]
			}
		}
	}
	night := map[string]string{}
	page, err := os.ReadFile("styles/page.css")
	if err != nil {
		t.Fatal(err)
	}
	block := nightBlock.FindSubmatch(page)
	if block == nil {
		t.Fatal("no palette for the night")
	}
	for _, v := range variable.FindAllStringSubmatch(string(block[1]), -1) {
		night[v[1]] = v[2]
	}
	for name, colour := range light { // dark changes some and keeps the rest
		if _, changed := dark[name]; !changed {
			dark[name] = colour
		}
	}
	for name, colour := range dark { // the staff tree has no night
		if _, own := night[name]; !own {
			night[name] = colour
		}
	}
	return map[string]map[string]string{"light": light, "dark": dark, "night": night}
}

// Text has at least 4.5:1 in light and in dark (WCAG 2.2, 1.4.3), lines of
// controls and drawings at least 3:1 (1.4.11).
func TestContrastOfStyles(t *testing.T) {
	type pair struct {
		front, back string
		least       float64
	}
	pairs := []pair{
		{"paper", "tap", 4.5}, {"rule", "paper", 3}, {"rule", "plate", 3},
	}
	for _, front := range []string{"ink", "soft", "tap", "bad", "good", "doubt", "t-key", "t-text", "t-number", "t-note"} {
		for _, back := range []string{"paper", "plate"} {
			pairs = append(pairs, pair{front, back, 4.5})
		}
	}
	for _, front := range []string{"ink", "t-key", "t-text", "t-number", "t-note"} { // lines of a difference
		pairs = append(pairs, pair{front, "d-new", 4.5}, pair{front, "d-old", 4.5})
	}
	pairs = append(pairs, pair{"ink", "tint", 4.5}, pair{"soft", "tint", 4.5})
	for scheme, palette := range palettes(t) {
		palette["white"], palette["black"] = "#fff", "#000"
		if scheme == "night" {
			palette["white"], palette["black"] = nightSignal, nightSignal
		}
		for _, p := range append(pairs, pair{"white", "red", 4.5}, pair{"black", "orange", 4.5}, pair{"black", "yellow", 4.5}, pair{"white", "blue", 4.5}) {
			front, back := palette[p.front], palette[p.back]
			if front == "" || back == "" {
				t.Fatalf("%s: no colour %s or %s", scheme, p.front, p.back)
			}
			if got := contrast(t, front, back); got < p.least {
				t.Errorf("%s: %s on %s is %s, want %.1f:1", scheme, p.front, p.back, fmt.Sprintf("%.2f:1", got), p.least)
			}
		}
	}
}
