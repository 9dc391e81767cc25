package sheets_test

import (
	"strings"
	"testing"

	"doorpocket/build/sheets"
)

const goodGrid = `page = "A4"
columns = 2
rows = 3
width = "90 mm"
height = "5 cm"
left = "12.5 mm"
top = "20 mm"
`

func TestParseGrid(t *testing.T) {
	g, found := sheets.ParseGrid("my/own.toml", []byte(goodGrid))
	if len(found) > 0 {
		t.Fatal(found)
	}
	if g.Name != "own" || g.Across != 90 || g.Down != 50 || g.Distance != 200 || g.PerPage() != 6 {
		t.Errorf("%+v", g)
	}
	if x, y := g.At(5); x != 102.5 || y != 120 {
		t.Errorf("the last label is at %g, %g", x, y)
	}
	in, found := sheets.ParseGrid("in.toml", []byte("page_width = \"8.5 in\"\npage_height = \"11 in\"\n"+strings.ReplaceAll(strings.Join(strings.Split(goodGrid, "\n")[1:], "\n"), "90 mm", "3.5 in")))
	if len(found) > 0 || in.Page.Width != 215.9 || in.Width != 88.9 {
		t.Errorf("%+v, %v", in, found)
	}
}

// What is wrong with a grid is told with its place and with numbers.
func TestBadGrids(t *testing.T) {
	for change, want := range map[string]string{
		`"A4" -> "A3"`:                              `Unknown choice "A3"`,
		`columns = 2 -> columns = 0`:                "columns",
		`columns = 2 -> columns = 3`:                "The columns end at 282.50 mm, the page at 210.00 mm",
		`rows = 3 -> rows = 6`:                      "The rows end at 320.00 mm, the page at 297.00 mm",
		`"90 mm" -> "9 mm"`:                         "It must be from 12 mm",
		`"90 mm" -> "90"`:                           "width",
		`"90 mm" -> "90 kg"`:                        "width",
		`left = -> lft =`:                           `Did you mean "left"`,
		`top = "20 mm" -> down = "40 mm"`:           `"top"`,
		`"20 mm" -> "20 mm"` + "\ndown = \"40 mm\"": "Labels of 50.00 mm every 40.00 mm overlap",
	} {
		before, after, _ := strings.Cut(change, " -> ")
		_, found := sheets.ParseGrid("own.toml", []byte(strings.Replace(goodGrid, before, after, 1)))
		text := ""
		for _, p := range found {
			text += p.String() + " " + p.Detail + "\n"
		}
		if !found.HasErrors() || !strings.Contains(text, want) {
			t.Errorf("%s: %q, wanted %q", change, text, want)
		}
	}
}

func FuzzParseGrid(f *testing.F) {
	f.Add([]byte(goodGrid))
	f.Fuzz(func(t *testing.T, data []byte) {
		g, found := sheets.ParseGrid("own.toml", data)
		if found.HasErrors() {
			return
		}
		x, y := g.At(g.PerPage() - 1)
		if x+g.Width > g.Page.Width+0.1 || y+g.Height > g.Page.Height+0.1 {
			t.Errorf("%+v: the last label is off the page", g)
		}
	})
}
