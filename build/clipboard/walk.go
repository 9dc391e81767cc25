package clipboard

import (
	"fmt"
	"strings"

	"doorpocket/build/paper"
	"doorpocket/build/render"
)

// sheet is a whole sheet. What a hirer signs begins a page of its own, so that
// it can be copied and given to them.
func (c *composer) sheet(s render.SaidSheet) []paper.Block {
	all := []paper.Block{c.head(s, s.Title), plain(body, s.About), paper.Space(1.5)}
	all = append(all, c.backstage(s)...)
	for _, leg := range s.Walk {
		all = append(all, c.leg(s, leg)...)
	}
	if s.Hirer {
		all = append(all, paper.NewPage{}, c.head(s, s.Title))
	}
	return append(all, c.record(s)...)
}

// head is the title with the van beside it.
func (c *composer) head(s render.SaidSheet, text string) paper.Block {
	which := 80.0
	line := paper.Lined(paper.Black, 0.5)
	return paper.Row{Gap: gap, Pad: 1, Under: &line, After: 2, Cells: []paper.Cell{
		{Width: c.wide() - which - gap, Blocks: []paper.Block{paper.Para{Type: title, Spans: paper.Plain(text)}}},
		{Width: which, Middle: true, Blocks: []paper.Block{paper.Para{Type: heading, Spans: paper.Plain(whichVan(s)), Align: paper.Right}}},
	}}
}

// leg is the steps on one side of the van.
func (c *composer) leg(s render.SaidSheet, leg render.SaidLeg) []paper.Block {
	var all []paper.Block
	if leg.Title != "" {
		all = append(all, paper.Space(2.5), paper.WithNext{Block: c.bar(leg.Title)})
	}
	for _, step := range leg.Steps {
		all = append(all, c.step(s, step))
	}
	return all
}

// bar is a heading across the column.
func (c *composer) bar(text string) paper.Block {
	grey := paper.Colour{R: 228, G: 228, B: 228}
	return paper.Row{Pad: 0.7, After: 0.8, Cells: []paper.Cell{
		{Width: 2, Fill: &grey},
		{Width: c.wide() - 2, Fill: &grey, Blocks: []paper.Block{paper.Para{Type: heading, Spans: paper.Plain(text)}}},
	}}
}

// step is a step with the caution before it, on one page. Beside it stands what
// it is about, with the facts to say where they are said.
func (c *composer) step(s render.SaidSheet, step render.SaidStep) paper.Block {
	var all paper.Together
	if step.Caution != nil {
		all = append(all, paper.Space(1.2), c.caution(*step.Caution))
	}
	const number = 6.5
	room := c.wide() - tick - number - 3*gap
	about := room * 0.27
	if s.Facts {
		about = room * 0.55
	}
	blocks := []paper.Block{paper.Para{Type: did, Spans: paper.Plain(step.Text)}}
	for _, wait := range append(step.Await, step.Wait) {
		blocks = append(blocks, paper.Para{Type: small, Spans: paper.Plain(wait)})
	}
	return append(all, paper.Row{Gap: gap, Pad: 1.1, Under: &thin, Least: tick, Cells: []paper.Cell{
		{Width: tick, Blocks: []paper.Block{box()}},
		{Width: number, Blocks: []paper.Block{paper.Space(0.5), paper.Para{Type: body, Spans: paper.Plain(fmt.Sprint(step.Number)), Align: paper.Right}}},
		{Width: room - about, Blocks: append([]paper.Block{paper.Space(0.5)}, blocks...)},
		{Width: about, Blocks: []paper.Block{paper.Space(0.7), paper.Para{Type: small, Spans: facts(step)}}},
	}})
}

// facts are what a step is about and what to say of it, one after the other.
func facts(step render.SaidStep) []paper.Span {
	if step.Of == "" {
		return nil
	}
	spans := []paper.Span{{Text: strings.TrimSpace(step.Code + " " + step.Of), Bold: true}}
	for _, said := range step.Say {
		spans = append(spans, paper.Span{Text: "  ·  " + said.Name + ": "}, paper.Span{Text: said.Text, Bold: true})
	}
	return spans
}

// caution is low and wide, so that it does not push its step away.
func (c *composer) caution(v render.SaidCaution) paper.Block {
	const word, sign = 18.0, 8.0
	colour := bars[v.Signal]
	ink := paper.Type{Size: 8.5, Bold: true, Colour: inks[v.Signal]}
	cells := []paper.Cell{{Width: word, Fill: &colour, Middle: true, Blocks: []paper.Block{
		paper.Para{Type: ink, Spans: paper.Plain(v.Word), Align: paper.Middle},
	}}}
	room := c.wide() - word - 2*1.5 // as much white at the right as between the cells
	if len(v.Signs) > 0 {
		high := sign * float64(len(v.Signs))
		room -= high + 1.5
		cells = append(cells, paper.Cell{Width: high, Middle: true, Blocks: []paper.Block{paper.Free{Height: sign, Draw: func(d *paper.Doc, x, y, _ float64) {
			for i, id := range v.Signs {
				d.Sign(id, x+float64(i)*sign, y, sign-0.6)
			}
		}}}})
	}
	cells = append(cells, paper.Cell{Width: room, Middle: true, Blocks: []paper.Block{paper.Para{Type: small, Spans: []paper.Span{
		{Text: v.Hazard + " " + v.Consequence + " "}, {Text: v.Avoid, Bold: true},
	}}}}, paper.Cell{})
	frame := pen
	return paper.Row{Gap: 1.5, Pad: 0.7, Frame: &frame, Cells: cells}
}
