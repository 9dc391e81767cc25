package paper

// Box is blocks within a frame, with a coloured bar on top if it has a title.
// It stays on one page if a page can hold it.
type Box struct {
	Frame  Colour
	Line   float64 // millimetres
	Pad    float64
	Title  string
	Type   Type   // of the title
	Bar    Colour // behind the title
	Signs  []string
	Blocks []Block
	After  float64
}

func (b Box) pieces(d *Doc, width float64) []piece {
	var all []piece
	if b.Title != "" {
		high := b.Type.Leading() + 2
		all = append(all, piece{height: high, draw: func(d *Doc, x, y float64) {
			d.Rect(x, y, width, high, Filled(b.Bar))
			d.Text(x+b.Pad, y+1+b.Type.baseline(), b.Type, b.Title)
		}})
	}
	room := width - 2*b.Pad
	beside := 0.0
	if len(b.Signs) > 0 {
		beside = signWide + 2
	}
	inner := []piece{{height: b.Pad}}
	for _, block := range b.Blocks {
		inner = append(inner, moved(block.pieces(d, room-beside), b.Pad)...)
	}
	for n := len(inner); n > 1 && inner[n-1].space; n-- {
		inner = inner[:n-1]
	}
	inner = append(inner, piece{height: b.Pad})
	b.signs(inner, width)
	all = append(all, inner...)
	for i := range all {
		all[i] = b.framed(all[i], width, i == 0, i == len(all)-1)
		all[i].keep = i < len(all)-1
		all[i].space = false
	}
	if b.After > 0 {
		all = append(all, Space(b.After).pieces(d, width)...)
	}
	return all
}

// signWide is the side of a sign beside the words of a box, in millimetres.
const signWide = 11.0

// signs draws the signs one below the other at the right and makes the box high
// enough for them.
func (b Box) signs(inner []piece, width float64) {
	var high float64
	for _, p := range inner {
		high += p.height
	}
	need := 2*b.Pad + float64(len(b.Signs))*(signWide+1) - 1
	if len(b.Signs) > 0 && high < need {
		inner[len(inner)-1].height += need - high
	}
	inner[0].draw = func(d *Doc, x, y float64) {
		for i, id := range b.Signs {
			d.Sign(id, x+width-b.Pad-signWide, y+b.Pad+float64(i)*(signWide+1), signWide)
		}
	}
}

// framed draws a piece with its share of the frame.
func (b Box) framed(p piece, width float64, first, last bool) piece {
	draw, high := p.draw, p.height
	p.draw = func(d *Doc, x, y float64) {
		if draw != nil {
			draw(d, x, y)
		}
		pen := Lined(b.Frame, b.Line)
		d.Line(x, y, x, y+high, pen)
		d.Line(x+width, y, x+width, y+high, pen)
		if first {
			d.Line(x-b.Line/2, y, x+width+b.Line/2, y, pen)
		}
		if last {
			d.Line(x-b.Line/2, y+high, x+width+b.Line/2, y+high, pen)
		}
	}
	return p
}
