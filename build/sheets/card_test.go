package sheets_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"doorpocket/build/guide"
	"doorpocket/build/label"
	"doorpocket/build/sheets"
)

// A card leads to the start of its van and says whom to call, how high and
// wide the van is as the guide's own table has it, and what it runs on.
func TestCards(t *testing.T) {
	kit := guide.NewKit(&demo().Operator, "en")
	var guides []*guide.Guide
	for _, v := range demo().Vans {
		g, _ := kit.Build(v)
		guides = append(guides, g)
	}
	var b bytes.Buffer
	if err := sheets.Cards(stock(t), words(t), guides, &b); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "cards.pdf")
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	run(t, "qpdf", "--check", file)
	pages := rendered(t, file, 150, 1, len(guides))
	one, two := zbar(t, pages), second(pages)
	texts := strings.Split(run(t, "pdftotext", "-raw", file, "-"), "\f")
	for i, g := range guides {
		want := demo().Address.To(label.Path(g.Van.Code, ""))
		if one[i] != want || two[i] != want {
			t.Errorf("%s: read %q and %q, wanted %q", g.Van.Name, one[i], two[i], want)
		}
		said := []string{g.Van.Name, g.Van.Code, demo().Call.Helpline, demo().Call.Emergency, "Say this code: " + g.Van.Code, "Fuel diesel", g.SpecDate()}
		rows := 0
		for _, p := range g.Pages {
			table := p.Tables["vehicle/dimensions"]
			if table == nil {
				continue
			}
			for _, row := range table.Rows {
				if what := row[0].Text; what == "Height" || strings.HasPrefix(what, "Width") {
					said = append(said, what+" "+row[1].Text+" "+row[2].Text)
					rows++
				}
			}
		}
		if rows < 3 {
			t.Errorf("%s: %d heights and widths in the guide", g.Van.Name, rows)
		}
		text := strings.Join(strings.Fields(texts[i]), " ")
		for _, s := range said {
			if s = strings.Join(strings.Fields(s), " "); !strings.Contains(text, s) {
				t.Errorf("the card of %s does not say %q:\n%s", g.Van.Name, s, text)
			}
		}
	}
}
