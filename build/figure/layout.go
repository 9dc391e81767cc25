package figure

import (
	"cmp"
	"slices"
)

// drawing is the body at a scale, with its points placed.
type drawing struct {
	Body
	scale     float64 // units a metre
	left, top float64 // of the body
	high      float64
	over      float64 // how far the longest column stands out beyond each end
	points    []placed
}

// layout chooses a scale at which every column of plates has room, and places
// the plates: beside the body for the sides, within it for what is inside, on
// the roof or under the floor, above and below for front and rear.
func layout(b Body, points []Point) drawing {
	d := drawing{Body: b, scale: 60}
	columns := d.columns(points)
	longest := 0
	for _, c := range columns[:4] {
		longest = max(longest, len(c))
	}
	d.scale = max(d.scale, (float64(longest)*rowStep+gap)/b.Length)
	// The body must hold two columns of plates and leave room at its sides.
	d.scale = min(d.scale, 150/b.Width)
	d.scale = max(d.scale, 118/b.Width)
	d.left = (wide - b.Width*d.scale) / 2
	d.top = 30
	d.top += float64(rows(columns[4])) * rowStep
	d.over = max(0, float64(longest)*rowStep-b.Length*d.scale) / 2
	d.top = 30 + d.over
	d.top += float64(rows(columns[4])) * rowStep
	d.place(columns)
	d.high = d.top + b.Length*d.scale + d.over + margin
	d.high += float64(rows(columns[5])) * rowStep
	d.high = round(d.high)
	return d
}

// columns sorts the points into left, inner left, inner right, right, front
// and rear, each in the order in which they stand along or across the van.
func (d *drawing) columns(points []Point) [6][]placed {
	var c [6][]placed
	var loose []placed
	for _, p := range points {
		at := placed{Point: p}
		switch {
		case p.Side == Left:
			c[0] = append(c[0], at)
		case p.Side == Right:
			c[3] = append(c[3], at)
		case p.Side == Nose:
			c[4] = append(c[4], at)
		case p.Side == Back:
			c[5] = append(c[5], at)
		case !p.Known:
			loose = append(loose, at)
		case p.Across < d.Width/2:
			c[1] = append(c[1], at)
		default:
			c[2] = append(c[2], at)
		}
	}
	byAlong := func(a, b placed) int { return cmp.Compare(a.Along, b.Along) }
	slices.SortStableFunc(loose, byAlong)
	for _, p := range loose { // the shorter of the inner columns takes it
		i := 1
		if len(c[2]) < len(c[1]) {
			i = 2
		}
		c[i] = append(c[i], p)
	}
	for i := range c {
		slices.SortStableFunc(c[i], byAlong)
	}
	return c
}

func (d *drawing) place(columns [6][]placed) {
	middle := d.left + d.Width*d.scale/2
	inner := plateW/2 + gap/2
	head, foot := d.top-d.over, d.top+d.Length*d.scale+d.over
	for i, x := range []float64{sideX, middle - inner, middle + inner, wide - sideX} {
		for j := range columns[i] {
			p := &columns[i][j]
			p.tx, p.ty = d.spot(p.Point)
			p.x, p.y = x, p.ty
		}
		spread(columns[i], head+rowStep/2, foot-rowStep/2)
	}
	for i := range rows(columns[4]) {
		d.placeRow(row(columns[4], i), head-rowStep/2-float64(i)*rowStep)
	}
	for i := range rows(columns[5]) {
		d.placeRow(row(columns[5], i), foot+rowStep/2+float64(i)*rowStep)
	}
	for _, c := range columns {
		d.points = append(d.points, c...)
	}
}

// inRow is how many plates stand side by side at most.
const inRow = (int(wide-2*margin) + int(gap)) / (int(plateW) + int(gap))

// rows is how many rows the plates at the front or rear take.
func rows(points []placed) int { return (len(points) + inRow - 1) / inRow }

// row is the i-th of them.
func row(points []placed, i int) []placed {
	return points[i*inRow : min(len(points), (i+1)*inRow)]
}

// placeRow sets what is at the front or rear side by side.
func (d *drawing) placeRow(row []placed, y float64) {
	middle := d.left + d.Width*d.scale/2
	for i := range row {
		p := &row[i]
		p.tx, p.ty = d.spot(p.Point)
		p.x, p.y = round(middle+(float64(i)-float64(len(row)-1)/2)*(plateW+gap)), round(y)
	}
}

// spread moves plates of one column apart so that none overlap, each as near
// as can be to where it wants to be and within the limits: neighbours that
// touch move as one block to the mean of their wishes (pool adjacent
// violators).
func spread(column []placed, low, high float64) {
	type block struct {
		first, n int
		sum      float64
	}
	mean := func(b block) float64 { return b.sum / float64(b.n) }
	var blocks []block
	for i, p := range column {
		b := block{first: i, n: 1, sum: p.y - float64(i)*rowStep}
		for len(blocks) > 0 && mean(blocks[len(blocks)-1]) > mean(b) {
			last := blocks[len(blocks)-1]
			blocks = blocks[:len(blocks)-1]
			b = block{first: last.first, n: last.n + b.n, sum: last.sum + b.sum}
		}
		blocks = append(blocks, b)
	}
	high -= float64(len(column)-1) * rowStep
	for _, b := range blocks {
		for i := b.first; i < b.first+b.n; i++ {
			column[i].y = round(max(low, min(high, mean(b))) + float64(i)*rowStep)
		}
	}
}

// spot is the place on the drawing that a point stands for.
func (d *drawing) spot(p Point) (x, y float64) {
	right := d.left + d.Width*d.scale
	along := min(max(p.Along, 0), d.Length)
	x, y = (d.left+right)/2, d.top+along*d.scale
	switch p.Side {
	case Left:
		x = d.left
	case Right:
		x = right
	case Nose:
		y = d.top
	case Back:
		y = d.top + d.Length*d.scale
	default:
		if p.Known {
			x = d.left + min(max(p.Across, 0.1), d.Width-0.1)*d.scale
		}
	}
	return round(x), round(y)
}
