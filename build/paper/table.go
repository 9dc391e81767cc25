package paper

// Table is rows under heads. Columns are as wide as their words want, as far as
// there is room.
type Table struct {
	Type    Type
	Heads   []string // may be nil
	Rows    [][]string
	Numeric []bool    // a column: set to the right; may be nil
	Widths  []float64 // millimetres; nil to let the words decide
	Ticks   bool      // a box to tick before each row
	After   float64
}

// The measures of a table, in millimetres.
const (
	cellGap = 2.5
	cellPad = 0.9
)

func (t Table) columns() int {
	n := len(t.Heads)
	for _, row := range t.Rows {
		n = max(n, len(row))
	}
	return n
}

// widths shares the width among the columns: what is short gets what it wants,
// the rest is shared by how much they want.
func (t Table) widths(d *Doc, width float64) []float64 {
	if t.Widths != nil {
		return t.Widths
	}
	n := t.columns()
	want, least := make([]float64, n), make([]float64, n)
	look := func(row []string, ty Type) {
		for i, text := range row {
			want[i] = max(want[i], d.Width(ty, text)+0.01)
			for _, l := range d.Wrap(ty, text, 0) { // word by word
				least[i] = max(least[i], d.Width(ty, l)+0.01)
			}
		}
	}
	head := t.Type
	head.Bold = true
	look(t.Heads, head)
	for _, row := range t.Rows {
		look(row, t.Type)
	}
	room := width - float64(n-1)*cellGap
	var sumWant, sumLeast float64
	for i := range want {
		sumWant += want[i]
		sumLeast += least[i]
	}
	got := make([]float64, n)
	for i := range got {
		switch {
		case sumWant <= room:
			got[i] = want[i] + (room-sumWant)/float64(n)
		case sumLeast >= room || sumWant == sumLeast:
			got[i] = least[i] * room / sumLeast
		default:
			got[i] = least[i] + (want[i]-least[i])*(room-sumLeast)/(sumWant-sumLeast)
		}
	}
	return got
}

func (t Table) pieces(d *Doc, width float64) []piece {
	indent := 0.0
	if t.Ticks {
		indent = t.Type.Leading() + 1
	}
	widths := t.widths(d, width-indent)
	var all []piece
	var head *piece
	if len(t.Heads) > 0 {
		bold := t.Type
		bold.Bold = true
		p := t.row(d, bold, t.Heads, widths, width, indent, false)
		p.keep = true
		head = &p
		all = append(all, p)
	}
	for _, row := range t.Rows {
		p := t.row(d, t.Type, row, widths, width, indent, t.Ticks)
		p.head = head
		all = append(all, p)
	}
	if n := len(t.Rows); n > 1 {
		all[len(all)-n].keep = true // the first row and the last never alone
		all[len(all)-2].keep = true
	}
	if t.After > 0 {
		all = append(all, Space(t.After).pieces(d, width)...)
	}
	return all
}

// row is a row with a thin line under it.
func (t Table) row(d *Doc, ty Type, texts []string, widths []float64, width, indent float64, tick bool) piece {
	lines := make([][]line, len(texts))
	most := 1
	for i, text := range texts {
		lines[i] = d.wrapSpans(ty, Plain(text), widths[i])
		most = max(most, len(lines[i]))
	}
	high := float64(most)*ty.Leading() + 2*cellPad
	return piece{height: high, draw: func(d *Doc, x, y float64) {
		if tick {
			Item{Type: ty, Tick: true}.drawMark(d, x, y+cellPad)
		}
		at := x + indent
		for i := range texts {
			for n, l := range lines[i] {
				left := at
				if i < len(t.Numeric) && t.Numeric[i] {
					left += widths[i] - l.width
				}
				d.spans(left, y+cellPad+float64(n)*ty.Leading()+ty.baseline(), ty, l)
			}
			at += widths[i] + cellGap
		}
		d.Line(x, y+high, x+width, y+high, Lined(Colour{150, 150, 150}, 0.15))
	}}
}
