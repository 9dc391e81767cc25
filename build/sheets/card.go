package sheets

import (
	"fmt"
	"io"
	"slices"
	"time"

	"doorpocket/build/guide"
	"doorpocket/build/label"
	"doorpocket/build/paper"
	"doorpocket/build/render"
)

// sizeTable is the computed table whose rows stand on the card, and sizeRows
// are those rows.
const sizeTable = "vehicle/dimensions"

var sizeRows = []string{"height", "width", "width-mirrors"}

// Cards writes the A5 cards for the doors of some vans, a page each.
func Cards(stock *paper.Stock, from *render.Words, guides []*guide.Guide, out io.Writer) error {
	w := &words{of: from}
	var d *paper.Doc
	for _, g := range guides {
		if d == nil {
			d = stock.New(paper.About{Title: w.say("card_of", "name", g.Van.Name), Lang: g.Lang, Date: SpecDay(g)})
		}
		d.Page(paper.A5)
		if err := (card{d, w, g}).draw(); err != nil {
			return fmt.Errorf("card of %s: %w", g.Van.Name, err)
		}
	}
	if d == nil {
		return fmt.Errorf("there is no van to print a card for")
	}
	if w.err != nil {
		return w.err
	}
	return d.Write(out)
}

// SpecDay is the day of the spec of a van.
func SpecDay(g *guide.Guide) time.Time {
	s := g.Van.SpecDate
	return time.Date(s.Year, time.Month(s.Month), s.Day, 0, 0, 0, 0, time.UTC)
}

type card struct {
	d *paper.Doc
	w *words
	g *guide.Guide
}

// The measures of a card, in millimetres.
const (
	cardInset = 10.0
	cardQR    = 68.0
)

func (c card) draw() error {
	symbol, err := label.PrintSymbol(c.g.Operator.Address.To(label.Path(c.g.Van.Code, "")), c.g.Operator.Level)
	if err != nil {
		return err
	}
	d, w := c.d, c.w
	width := paper.A5.Width - 2*cardInset
	d.Text(cardInset, 15, paper.Type{Size: 11, Bold: true, Colour: paper.Grey}, c.g.Operator.Name)
	c.name(width)
	d.QR(symbol, cardInset-2, 38, cardQR)
	x, y := cardInset+cardQR+3, 46.0
	right := width - cardQR - 3
	y = c.paragraph(x, y, right, paper.Type{Size: 15, Bold: true}, w.say("card_guide"))
	y = c.paragraph(x, y+2, right, paper.Type{Size: 11}, w.say("card_scan"))
	c.address(x, y+2, right, w.say("card_type", "address", c.g.Operator.Address.Reading(label.Path(c.g.Van.Code, ""))))
	y = c.calls(110, width)
	c.sizes(y+4, width)
	foot := paper.Type{Size: 8, Colour: paper.Grey}
	d.Text(cardInset, paper.A5.Height-8, foot, w.say("spec_of", "date", c.g.SpecDate()))
	return d.Err()
}

// name sets the name and the code of the van across the top.
func (c card) name(width float64) {
	code := paper.Type{Size: 34, Bold: true}
	c.d.TextRight(cardInset+width, 32, code, c.g.Van.Code)
	room := width - c.d.Width(code, c.g.Van.Code) - 6
	name := paper.Type{Size: 30, Bold: true}
	for name.Size > 12 && c.d.Width(name, c.g.Van.Name) > room {
		name.Size--
	}
	c.d.Text(cardInset, 32, name, c.g.Van.Name)
	c.d.Rect(cardInset, 36, width, 0.6, paper.Filled(paper.Black))
}

func (c card) paragraph(x, y, width float64, t paper.Type, text string) float64 {
	for _, line := range c.d.Wrap(t, text, width) {
		c.d.Text(x, y, t, line)
		y += t.Leading()
	}
	return y
}

// address sets an address in the largest type in which it need not be broken
// within a name.
func (c card) address(x, y, width float64, text string) {
	t := paper.Type{Size: 10}
	for t.Size > 6 && slices.ContainsFunc(c.d.Wrap(t, text, width), func(line string) bool { return c.d.Width(t, line) > width }) {
		t.Size -= 0.5
	}
	c.paragraph(x, y, width, t, text)
}

// calls sets the two numbers in boxes side by side.
func (c card) calls(y, width float64) float64 {
	call := c.g.Operator.Call
	half := (width - 4) / 2
	const high = 30.0
	c.d.RoundRect(cardInset, y, half, high, 2, paper.Lined(paper.Black, 0.5))
	c.d.RoundRect(cardInset+half+4, y, half, high, 2, paper.Lined(paper.Black, 0.5))
	head, small := paper.Type{Size: 10}, paper.Type{Size: 8}
	c.d.Text(cardInset+3, y+6, head, c.w.say("card_call"))
	c.number(cardInset+3, y+14.5, half-6, call.Helpline)
	below := c.paragraph(cardInset+3, y+20, half-6, small, c.w.say("card_say", "code", c.g.Van.Code))
	c.paragraph(cardInset+3, below, half-6, small, call.Hours)
	c.d.Text(cardInset+half+7, y+6, head, c.w.say("card_emergency"))
	c.number(cardInset+half+7, y+14.5, half-6, call.Emergency)
	return y + high
}

func (c card) number(x, y, width float64, number string) {
	t := paper.Type{Size: 20, Bold: true}
	for t.Size > 8 && c.d.Width(t, number) > width {
		t.Size -= 0.5
	}
	c.d.Text(x, y, t, number)
}

// sizes sets heights, widths and the fuel, as far as the spec states them.
func (c card) sizes(y, width float64) {
	head := paper.Type{Size: 11, Bold: true}
	y += head.CapHeight() + 1
	c.d.Text(cardInset, y, head, c.w.say("card_sizes"))
	rounded := paper.Type{Size: 8, Colour: paper.Grey}
	c.d.TextRight(cardInset+width, y, rounded, c.w.say("card_rounded"))
	y += 2
	for _, row := range c.rows() {
		c.d.Line(cardInset, y, cardInset+width, y, paper.Lined(paper.Grey, 0.15))
		t := paper.Type{Size: 12}
		y += 6
		c.d.Text(cardInset, y, t, row[0])
		t.Bold = true
		c.d.TextRight(cardInset+width*0.68, y, t, row[1])
		if len(row) > 2 {
			c.d.TextRight(cardInset+width, y, t, row[2])
		}
		y += 2.2
	}
}

// rows are the lines of the sizes: what, metres, feet; and the fuel.
func (c card) rows() [][]string {
	var rows [][]string
	known := c.g.Operator.Library.Tables[sizeTable]
	for _, p := range c.g.Pages {
		t := p.Tables[sizeTable]
		if t == nil || known == nil {
			continue
		}
		cells := known.Words[c.g.Lang].Cells
		for _, row := range t.Rows {
			if slices.ContainsFunc(sizeRows, func(id string) bool { return cells[id] == row[0].Text }) {
				var line []string
				for _, cell := range row {
					line = append(line, cell.Text)
				}
				rows = append(rows, line)
			}
		}
	}
	if fuel, ok := c.g.Value(nil, "body.fuel", ""); ok && fuel != "" {
		rows = append(rows, []string{c.w.say("card_fuel"), fuel})
	}
	return rows
}
