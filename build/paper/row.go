package paper

// Cell is a column of blocks in a Row.
type Cell struct {
	Width  float64 // millimetres
	Blocks []Block
	Fill   *Colour // behind it, over the whole height of the row
	Middle bool    // its blocks stand halfway down the row
}

// Row sets cells side by side. It is never torn apart.
type Row struct {
	Cells []Cell
	Gap   float64 // between cells, millimetres
	Pad   float64 // above and below, millimetres
	Frame *Pen    // round the row
	Under *Pen    // a line below
	Least float64 // how high it is at least, millimetres
	After float64 // white space below, millimetres
}

func (r Row) pieces(d *Doc, _ float64) []piece {
	cells := make([][]piece, len(r.Cells))
	heights := make([]float64, len(r.Cells))
	most, wide := r.Least, -r.Gap
	for i, c := range r.Cells {
		for _, b := range c.Blocks {
			cells[i] = append(cells[i], b.pieces(d, c.Width)...)
		}
		for n := len(cells[i]); n > 0 && cells[i][n-1].space; n-- {
			cells[i] = cells[i][:n-1]
		}
		for _, p := range cells[i] {
			heights[i] += p.height
		}
		most, wide = max(most, heights[i]), wide+c.Width+r.Gap
	}
	high := most + 2*r.Pad
	all := []piece{{height: high, draw: func(d *Doc, x, y float64) {
		at := x
		for i, c := range r.Cells {
			if c.Fill != nil {
				d.Rect(at, y, c.Width, high, Filled(*c.Fill))
			}
			down := y + r.Pad
			if c.Middle {
				down += (most - heights[i]) / 2
			}
			for _, p := range cells[i] {
				if p.draw != nil {
					p.draw(d, at, down)
				}
				down += p.height
			}
			at += c.Width + r.Gap
		}
		if r.Frame != nil {
			d.Rect(x, y, wide, high, *r.Frame)
		}
		if r.Under != nil {
			d.Line(x, y+high, x+wide, y+high, *r.Under)
		}
	}}}
	if r.After > 0 {
		all = append(all, Space(r.After).pieces(d, wide)...)
	}
	return all
}
