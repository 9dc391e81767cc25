package booklet

import (
	"strings"

	"doorpocket/build/guide"
	"doorpocket/build/label"
	"doorpocket/build/paper"
)

// entry is a line of the contents.
type entry struct {
	path, code, title string
	chapter           bool
}

// cover is the first page: which van, whom to call, where the guide is on a
// phone.
func (c *composer) cover() []paper.Block {
	g := c.guide
	call := g.Operator.Call
	big := paper.Type{Size: 34, Bold: true}
	number := paper.Type{Size: 16, Bold: true}
	return []paper.Block{
		plain(strong, g.Operator.Name),
		paper.Space(10),
		paper.Para{Type: big, Spans: paper.Plain(g.Van.Name), After: 1},
		plain(title, g.Van.Code),
		paper.Space(4),
		plain(heading, c.say("card_guide")),
		paper.Space(4),
		paper.Free{Height: 56, Draw: func(d *paper.Doc, x, y, _ float64) { d.QR(c.symbol, x-4, y, 54) }},
		plain(small, c.say("card_scan")),
		plain(small, c.say("card_type", "address", g.Operator.Address.Reading(label.Path(g.Van.Code, "")))),
		paper.Space(5),
		plain(body, c.say("card_call")),
		plain(number, call.Helpline),
		plain(small, call.Hours),
		paper.Space(2),
		plain(body, c.say("card_emergency")),
		plain(number, call.Emergency),
		paper.Space(4),
		plain(fine, strings.TrimSuffix(c.say("spec_of", "date", g.SpecDate())+" · "+c.revisionWords(), " · ")),
		paper.NewPage{},
	}
}

func (c *composer) revisionWords() string {
	if c.revision == "" {
		return ""
	}
	return c.say("revision", "revision", c.revision)
}

// contents lists chapters and pages with their numbers.
func (c *composer) contents() []paper.Block {
	all := []paper.Block{paper.Mark{ID: "contents", Title: c.say("booklet_contents")}, plain(title, c.say("booklet_contents"))}
	for _, e := range c.entries {
		t := body
		if e.chapter {
			t = strong
			all = append(all, paper.Space(1.5))
		}
		line := paper.Block(contentsLine(t, e, c.place(e.path)))
		if e.chapter {
			line = paper.WithNext{Block: line}
		}
		all = append(all, line)
	}
	return append(all, paper.NewPage{})
}

// contentsLine is a line with dots between the title and the number.
func contentsLine(t paper.Type, e entry, page int) paper.Block {
	return paper.Free{Height: t.Leading() * 1.02, Draw: func(d *paper.Doc, x, y, width float64) {
		base := y + t.Leading()*0.78
		left := x
		if !e.chapter {
			code := t
			code.Bold = true
			d.Text(x+2, base, code, e.code)
			left += 13
		}
		number := pageNumber(page)
		room := width - (left - x) - d.Width(t, number) - 3
		text := e.title
		for d.Width(t, text) > room {
			text = strings.TrimRight(text[:strings.LastIndexFunc(text[:len(text)-len("…")], func(r rune) bool { return r < 0x80 })], " ,") + "…"
		}
		d.Text(left, base, t, text)
		d.TextRight(x+width, base, t, number)
		if from, to := left+d.Width(t, text)+1.5, x+width-d.Width(t, number)-1.5; to > from {
			dots := thin
			dots.Dash = []float64{0.3, 0.9}
			d.Line(from, base, to, base, dots)
		}
	}}
}

// chapter begins a page with a title of its own.
func (c *composer) chapter(id, words, about string) []paper.Block {
	c.entries = append(c.entries, entry{path: "chapter:" + id, title: words, chapter: true})
	all := []paper.Block{paper.NewPage{}, paper.Mark{ID: "chapter:" + id, Title: words}, paper.WithNext{Block: plain(title, words)}}
	if about != "" {
		all = append(all, paper.WithNext{Block: plain(body, about)})
	}
	return append(all, paper.Space(2))
}

// part begins a page of the guide within a chapter.
func (c *composer) part(path, code, words, about string) []paper.Block {
	c.entries = append(c.entries, entry{path: path, code: code, title: words})
	all := []paper.Block{paper.Mark{ID: path, Title: words, Level: 1}, paper.WithNext{Block: partHead(code, words)}}
	if about != "" {
		all = append(all, paper.WithNext{Block: para(body, []paper.Span{{Text: about, Bold: true}})})
	}
	return all
}

// partHead is a title with the code on a plate before it, over a thick line.
func partHead(code, words string) paper.Block {
	inner := paper.Block(paper.Para{Type: heading, Spans: paper.Plain(words)})
	if code != "" {
		inner = paper.Item{Type: heading, Mark: code, Plate: true, Indent: 14, Blocks: []paper.Block{inner}}
	}
	return paper.Together{
		paper.Space(5), inner,
		paper.Rule{Pen: paper.Lined(paper.Black, 0.5), Above: 0.8, Under: 2},
	}
}

// plans is the chapter of the drawings with the list of places.
func (c *composer) plans() []paper.Block {
	outside, inside, err := c.press.Render.Plans(c.guide)
	c.fail(err)
	all := c.chapter("plan", c.say("plan"), "")
	first := true
	for _, p := range []struct{ svg, title string }{{outside, c.say("outside")}, {inside, c.say("inside")}} {
		if p.svg == "" {
			continue
		}
		if !first {
			all = append(all, paper.NewPage{})
		}
		first = false
		drawing, err := paper.ParseDrawing(p.svg, planStyles)
		if err != nil {
			c.fail(err)
			continue
		}
		all = append(all, paper.WithNext{Block: plain(strong, p.title)},
			paper.Picture{Drawing: drawing, Width: 118, Height: 155, After: 2})
	}
	all = append(all, paper.NewPage{}, paper.WithNext{Block: plain(strong, c.say("plan_words"))})
	table := paper.Table{Type: small, Widths: []float64{9, 36, 74}}
	for _, p := range c.labelled() {
		table.Rows = append(table.Rows, []string{p.Code, p.Title, c.where(p.Fitted.Place)})
	}
	return append(all, table, plain(fine, c.say("right_way")))
}

// labelled are the pages with a code and a place.
func (c *composer) labelled() []*guide.Page {
	var all []*guide.Page
	for _, p := range c.guide.Pages {
		if p.Code != "" && p.Fitted.Place.Side != "" {
			all = append(all, p)
		}
	}
	return all
}

// planStyles are the looks of the drawings of vans on paper.
var planStyles = paper.Styles{
	"hull":  {"fill": "#ffffff", "stroke": "#000000", "stroke-width": "2.5"},
	"line":  {"fill": "none", "stroke": "#000000", "stroke-width": "1.6"},
	"gap":   {"stroke": "#ffffff", "stroke-width": "6"},
	"wheel": {"fill": "#000000"}, "mirror": {"fill": "#000000"},
	"end":        {"fill": "#444444", "font-size": "14", "text-anchor": "middle", "font-weight": "600"},
	"leader":     {"stroke": "#444444", "stroke-width": "1.2", "fill": "none"},
	"spot":       {"fill": "#000000"},
	"halo":       {"fill": "none", "stroke": "#000000", "stroke-width": "3"},
	"plate rect": {"fill": "#ffffff", "stroke": "#000000", "stroke-width": "2"},
	"rim":        {"fill": "none", "stroke-width": "1.2"},
	"under rect": {"stroke-dasharray": "5 3"},
	"plate text": {"fill": "#000000", "font-size": "17", "font-weight": "800", "text-anchor": "middle"},
}
