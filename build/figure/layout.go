package figure

import (
	"cmp"
	"math"
	"slices"
)

// drawing is the body at a scale, with its points placed.
type drawing struct {
	Body
	scale     float64 // units a metre
	left, top float64 // of the body
	high      float64
	over      float64 // how far the longest column stands out beyond each end
	inner     int     // columns of plates within the body
	points    []placed
}

// bodyWide is how wide the body is drawn: what the plates at its sides and the
// words beside it leave of the drawing. With nothing within there is no need
// to draw it so large.
func bodyWide(outside, within bool) float64 {
	switch {
	case !outside:
		return wide - 2*(margin+wordsWide)
	case !within:
		return 150
	default:
		return wide - 2*(margin+plateW+wordsWide)
	}
}

// wordsWide is the room for a word written along the body.
const wordsWide = 26

// layout places the plates: beside the body for the sides, within it for what
// is inside, on the roof or under the floor, above and below for front and
// rear. Columns that are longer than the body stand out beyond its ends.
func layout(b Body, points []Point) drawing {
	beside := slices.ContainsFunc(points, func(p Point) bool { return p.Side == Left || p.Side == Right })
	within := slices.ContainsFunc(points, func(p Point) bool { return p.Side == Within || p.Side == Roof })
	body := bodyWide(beside, within)
	d := drawing{Body: b, scale: body / b.Width, left: (wide - body) / 2}
	d.inner = max(1, int((body+gap)/(plateW+gap)))
	g := d.group(points)
	longest := max(len(g.left), len(g.right))
	for _, c := range g.inner {
		longest = max(longest, len(c))
	}
	d.over = max(0, float64(longest)*rowStep-b.Length*d.scale) / 2
	d.top = 30 + d.over + float64(rows(g.front))*rowStep
	d.place(g)
	foot := float64(margin)
	if b.Door == Back {
		foot = max(foot, doorOut*d.scale+2)
	}
	d.high = round(d.top + b.Length*d.scale + d.over + foot + float64(rows(g.rear))*rowStep)
	return d
}

// groups are the points by where their plates stand, each in the order in
// which they stand along the van.
type groups struct {
	left, right, front, rear []placed
	inner                    [][]placed // columns
}

func (d *drawing) group(points []Point) groups {
	g := groups{inner: make([][]placed, d.inner)}
	var inside []placed
	for _, p := range points {
		at := placed{Point: p}
		at.tx, at.ty = d.spot(p) // not yet final: the top is not known
		switch p.Side {
		case Left:
			g.left = append(g.left, at)
		case Right:
			g.right = append(g.right, at)
		case Nose:
			g.front = append(g.front, at)
		case Back:
			g.rear = append(g.rear, at)
		default:
			inside = append(inside, at)
		}
	}
	for _, list := range [][]placed{g.left, g.right, g.front, g.rear, inside} {
		slices.SortStableFunc(list, func(a, b placed) int { return cmp.Compare(a.Along, b.Along) })
	}
	room := max(int(d.Length*d.scale/rowStep), (len(inside)+d.inner-1)/d.inner)
	for _, p := range inside {
		i := d.column(p, g.inner, room)
		g.inner[i] = append(g.inner[i], p)
	}
	return g
}

// column is the inner column nearest to a point that still has room; a point
// that may be anywhere across takes the shortest.
func (d *drawing) column(p placed, inner [][]placed, room int) int {
	best, least := 0, 0.0
	for i := range inner {
		cost := float64(len(inner[i]))
		if p.Known {
			cost = math.Abs(p.tx - d.columnX(i))
		}
		if len(inner[i]) >= room {
			cost += wide * rowStep // only where every column is full
		}
		if i == 0 || cost < least {
			best, least = i, cost
		}
	}
	return best
}

// columnX is the middle of an inner column.
func (d *drawing) columnX(i int) float64 {
	return d.left + d.Width*d.scale/2 + (float64(i)-float64(d.inner-1)/2)*(plateW+gap)
}

func (d *drawing) place(g groups) {
	head, foot := d.top-d.over, d.top+d.Length*d.scale+d.over
	set := func(column []placed, x float64) {
		for j := range column {
			p := &column[j]
			p.tx, p.ty = d.spot(p.Point)
			p.x, p.y = math.Round(x), p.ty
		}
		spread(column, head+rowStep/2, foot-rowStep/2)
		d.points = append(d.points, column...)
	}
	set(g.left, sideX)
	for i, c := range g.inner {
		set(c, d.columnX(i))
	}
	set(g.right, wide-sideX)
	for i := range rows(g.front) {
		d.placeRow(row(g.front, i), head-rowStep/2-float64(i)*rowStep)
	}
	for i := range rows(g.rear) {
		d.placeRow(row(g.rear, i), foot+rowStep/2+float64(i)*rowStep)
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
		p.x, p.y = math.Round(middle+(float64(i)-float64(len(row)-1)/2)*(plateW+gap)), math.Round(y)
	}
	d.points = append(d.points, row...)
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
			column[i].y = math.Round(max(low, min(high, mean(b))) + float64(i)*rowStep)
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
	return math.Round(x), math.Round(y)
}
