package figure

import (
	"fmt"
	"html"
	"math"
	"strings"
)

// leader draws the line from a plate to the spot it stands for, and the spot;
// neither where the plate covers the spot.
func (d *drawing) leader(s *strings.Builder, p placed) {
	if math.Abs(p.x-p.tx) < plateW/2 && math.Abs(p.y-p.ty) < plateH/2 {
		return
	}
	fmt.Fprintf(s, `<path class="leader" d="M%s %sL%s %s"/><circle class="spot" cx="%s" cy="%s" r="3.5"/>`,
		num(p.x), num(p.y), num(p.tx), num(p.ty), num(p.tx), num(p.ty))
}

// plate draws the code on its plate, the whole of it to tap. Its title is the
// name that a screen reader says and a pointer shows. What is on the
// roof has a double rim, what is under the floor a broken one.
func plate(s *strings.Builder, p placed) {
	open, close := `<g class="plate`, "</g>"
	if p.Href != "" {
		open, close = `<a class="plate`, "</a>"
	}
	switch p.Side {
	case Roof:
		open += " roof"
	case Under:
		open += " under"
	}
	s.WriteString(open + `"`)
	if p.Href != "" {
		fmt.Fprintf(s, ` href="%s"`, html.EscapeString(p.Href))
	}
	x, y := round(p.x-plateW/2), round(p.y-plateH/2)
	fmt.Fprintf(s, `><title>%s</title><rect x="%s" y="%s" width="%s" height="%s" rx="6"/>`,
		html.EscapeString(p.Code+" "+p.Title), num(x), num(y), num(plateW), num(plateH))
	if p.Side == Roof {
		fmt.Fprintf(s, `<rect class="rim" x="%s" y="%s" width="%s" height="%s" rx="3"/>`,
			num(round(x+3.5)), num(round(y+3.5)), num(plateW-7), num(plateH-7))
	}
	fmt.Fprintf(s, `<text x="%s" y="%s">%s</text>%s`, num(p.x), num(round(p.y+6)), html.EscapeString(p.Code), close)
}
