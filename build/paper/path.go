package paper

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// segment is one piece of a path in absolute coordinates: M and L with one
// point, C with three, Z with none.
type segment struct {
	op  byte
	pts [3]point
}

type point struct{ x, y float64 }

// matrix maps (x, y) to (a x + c y + e, b x + d y + f).
type matrix struct{ a, b, c, d, e, f float64 }

var identity = matrix{a: 1, d: 1}

func (m matrix) apply(p point) point {
	return point{m.a*p.x + m.c*p.y + m.e, m.b*p.x + m.d*p.y + m.f}
}

// then is first n, then m.
func (m matrix) then(n matrix) matrix {
	return matrix{
		a: m.a*n.a + m.c*n.b, b: m.b*n.a + m.d*n.b,
		c: m.a*n.c + m.c*n.d, d: m.b*n.c + m.d*n.d,
		e: m.a*n.e + m.c*n.f + m.e, f: m.b*n.e + m.d*n.f + m.f,
	}
}

// ops writes segments, given in millimetres after m, as PDF operators.
func (d *Doc) ops(path []segment, m matrix) string {
	var b strings.Builder
	write := func(p point) {
		p = m.apply(p)
		b.WriteString(d.px(p.x) + " " + d.py(p.y) + " ")
	}
	for _, s := range path {
		switch s.op {
		case 'M':
			write(s.pts[0])
			b.WriteString("m ")
		case 'L':
			write(s.pts[0])
			b.WriteString("l ")
		case 'C':
			write(s.pts[0])
			write(s.pts[1])
			write(s.pts[2])
			b.WriteString("c ")
		case 'Z':
			b.WriteString("h ")
		}
	}
	return b.String()
}

// arcShare makes a quarter of a circle out of one cubic curve; the circle is
// missed by less than 0.03 % of its radius.
const arcShare = 0.5522847498

func ellipse(cx, cy, rx, ry float64) []segment {
	kx, ky := rx*arcShare, ry*arcShare
	c := func(x1, y1, x2, y2, x, y float64) segment {
		return segment{'C', [3]point{{x1, y1}, {x2, y2}, {x, y}}}
	}
	return []segment{
		{op: 'M', pts: [3]point{{cx + rx, cy}}},
		c(cx+rx, cy+ky, cx+kx, cy+ry, cx, cy+ry),
		c(cx-kx, cy+ry, cx-rx, cy+ky, cx-rx, cy),
		c(cx-rx, cy-ky, cx-kx, cy-ry, cx, cy-ry),
		c(cx+kx, cy-ry, cx+rx, cy-ky, cx+rx, cy),
		{op: 'Z'},
	}
}

func roundRect(x, y, w, h, r float64) []segment {
	line := func(x, y float64) segment { return segment{'L', [3]point{{x, y}}} }
	if r <= 0 {
		return []segment{{op: 'M', pts: [3]point{{x, y}}}, line(x+w, y), line(x+w, y+h), line(x, y+h), {op: 'Z'}}
	}
	o := r * (1 - arcShare)
	c := func(x1, y1, x2, y2, x, y float64) segment {
		return segment{'C', [3]point{{x1, y1}, {x2, y2}, {x, y}}}
	}
	return []segment{
		{op: 'M', pts: [3]point{{x + r, y}}}, line(x+w-r, y), c(x+w-o, y, x+w, y+o, x+w, y+r),
		line(x+w, y+h-r), c(x+w, y+h-o, x+w-o, y+h, x+w-r, y+h),
		line(x+r, y+h), c(x+o, y+h, x, y+h-o, x, y+h-r),
		line(x, y+r), c(x, y+o, x+o, y, x+r, y), {op: 'Z'},
	}
}

// parsePath reads the data of an SVG path.
func parsePath(data string) ([]segment, error) {
	p := pathParser{rest: data}
	for p.skip(); p.rest != "" && p.err == nil; p.skip() {
		p.command()
	}
	return p.out, p.err
}

type pathParser struct {
	rest      string
	out       []segment
	at, start point
	control   point // of the last curve, for the smooth ones
	last      byte  // the last command, upper case
	err       error
}

func (p *pathParser) skip() { p.rest = strings.TrimLeft(p.rest, " ,\t\r\n") }

func (p *pathParser) fail(what string) {
	if p.err == nil {
		p.err = fmt.Errorf("path: %s at %q", what, p.rest[:min(len(p.rest), 12)])
	}
}

// number reads a number; signs and points also end the one before.
func (p *pathParser) number() float64 {
	p.skip()
	i, seenPoint := 0, false
	for ; i < len(p.rest); i++ {
		c := p.rest[i]
		switch {
		case c >= '0' && c <= '9':
			continue
		case (c == '-' || c == '+') && i == 0:
			continue
		case c == '.' && !seenPoint:
			seenPoint = true
			continue
		}
		break
	}
	v, err := strconv.ParseFloat(p.rest[:i], 64)
	if err != nil {
		p.fail("a number is wanted")
		p.rest = ""
		return 0
	}
	p.rest = p.rest[i:]
	return v
}

// flag reads one of the two switches of an arc, which need no space after.
func (p *pathParser) flag() bool {
	p.skip()
	if p.rest == "" || p.rest[0] != '0' && p.rest[0] != '1' {
		p.fail("0 or 1 is wanted")
		return false
	}
	set := p.rest[0] == '1'
	p.rest = p.rest[1:]
	return set
}

// more reports whether another set of numbers follows for the same command.
func (p *pathParser) more() bool {
	p.skip()
	return p.err == nil && p.rest != "" && strings.IndexByte("0123456789.+-", p.rest[0]) >= 0
}

func (p *pathParser) point(relative bool) point {
	q := point{p.number(), p.number()}
	if relative {
		q.x, q.y = q.x+p.at.x, q.y+p.at.y
	}
	return q
}

func (p *pathParser) line(to point) {
	p.out = append(p.out, segment{'L', [3]point{to}})
	p.at = to
}

func (p *pathParser) curve(a, b, to point) {
	p.out = append(p.out, segment{'C', [3]point{a, b, to}})
	p.at = to
}

func (p *pathParser) command() {
	letter := p.rest[0]
	upper := letter &^ 0x20
	relative := letter != upper
	p.rest = p.rest[1:]
	if upper == 'Z' {
		p.out = append(p.out, segment{op: 'Z'})
		p.at, p.last = p.start, 'Z'
		return
	}
	for first := true; (first || p.more()) && p.err == nil; first = false {
		p.one(upper, relative, first)
		p.last = upper
	}
}

func (p *pathParser) one(upper byte, relative, first bool) {
	switch upper {
	case 'M':
		to := p.point(relative)
		if !first {
			p.line(to)
			return
		}
		p.out = append(p.out, segment{'M', [3]point{to}})
		p.at, p.start = to, to
	case 'L':
		p.line(p.point(relative))
	case 'H', 'V':
		p.straight(upper, relative)
	case 'C':
		a, b := p.point(relative), p.point(relative)
		p.control = b
		p.curve(a, b, p.point(relative))
	case 'S':
		a := p.mirrored('C', 'S')
		b := p.point(relative)
		p.control = b
		p.curve(a, b, p.point(relative))
	case 'Q':
		c := p.point(relative)
		p.quadratic(c, p.point(relative))
	case 'T':
		c := p.mirrored('Q', 'T')
		p.quadratic(c, p.point(relative))
	case 'A':
		p.arc(relative)
	default:
		p.fail("unknown command " + string(upper))
	}
}

func (p *pathParser) straight(upper byte, relative bool) {
	v, to := p.number(), p.at
	switch {
	case upper == 'H' && relative:
		to.x += v
	case upper == 'H':
		to.x = v
	case relative:
		to.y += v
	default:
		to.y = v
	}
	p.line(to)
}

// mirrored is the last control point seen from the other side, where the last
// command was one of two.
func (p *pathParser) mirrored(a, b byte) point {
	if p.last != a && p.last != b {
		return p.at
	}
	return point{2*p.at.x - p.control.x, 2*p.at.y - p.control.y}
}

func (p *pathParser) quadratic(c, to point) {
	p.control = c
	third := func(from point) point {
		return point{from.x + 2*(c.x-from.x)/3, from.y + 2*(c.y-from.y)/3}
	}
	p.curve(third(p.at), third(to), to)
}

// arc turns an elliptical arc into cubic curves of at most a quarter each, by
// the conversion that SVG 2, appendix B.2.4 gives.
func (p *pathParser) arc(relative bool) {
	rx, ry := math.Abs(p.number()), math.Abs(p.number())
	turn := p.number() * math.Pi / 180
	large, sweep := p.flag(), p.flag()
	from, to := p.at, p.point(relative)
	if from == to {
		return
	}
	if rx == 0 || ry == 0 {
		p.line(to)
		return
	}
	sin, cos := math.Sincos(turn)
	dx, dy := (from.x-to.x)/2, (from.y-to.y)/2
	x1, y1 := cos*dx+sin*dy, cos*dy-sin*dx
	if l := x1*x1/(rx*rx) + y1*y1/(ry*ry); l > 1 {
		rx, ry = rx*math.Sqrt(l), ry*math.Sqrt(l)
	}
	n := math.Sqrt(math.Max(0, (rx*rx*ry*ry-rx*rx*y1*y1-ry*ry*x1*x1)/(rx*rx*y1*y1+ry*ry*x1*x1)))
	if large == sweep {
		n = -n
	}
	cx1, cy1 := n*rx*y1/ry, -n*ry*x1/rx
	begin := math.Atan2((y1-cy1)/ry, (x1-cx1)/rx)
	span := math.Atan2((-y1-cy1)/ry, (-x1-cx1)/rx) - begin
	if sweep && span < 0 {
		span += 2 * math.Pi
	} else if !sweep && span > 0 {
		span -= 2 * math.Pi
	}
	frame := matrix{a: cos * rx, b: sin * rx, c: -sin * ry, d: cos * ry,
		e: cos*cx1 - sin*cy1 + (from.x+to.x)/2, f: sin*cx1 + cos*cy1 + (from.y+to.y)/2}
	parts := int(math.Ceil(math.Abs(span) / (math.Pi/2 + 1e-9)))
	step := span / float64(parts)
	handle := 4.0 / 3 * math.Tan(step/4)
	for i := range parts {
		a := begin + float64(i)*step
		sinA, cosA := math.Sincos(a)
		sinB, cosB := math.Sincos(a + step)
		end := frame.apply(point{cosB, sinB})
		if i == parts-1 {
			end = to
		}
		p.curve(frame.apply(point{cosA - handle*sinA, sinA + handle*cosA}), frame.apply(point{cosB + handle*sinB, sinB - handle*cosB}), end)
	}
}
