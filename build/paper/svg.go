package paper

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"maps"
	"strconv"
	"strings"
)

// shape is one thing to paint, in the units of its drawing.
type shape struct {
	path  []segment
	paint paint
	m     matrix
	text  string // a line of text at at, instead of a path
	at    point
}

// paint is how a shape looks. Lengths are in the units of the drawing.
type paint struct {
	fill, stroke *Colour
	width, font  float64
	dash         []float64
	evenOdd      bool
	round        bool // ends and corners
	anchor       string
	bold         bool
}

// Styles give the look of classes in a drawing, as a style sheet would: the
// key is a class, an element, or "class element"; the value lists properties.
type Styles map[string]map[string]string

// Drawing is a picture made of shapes and text.
type Drawing struct {
	Width, Height float64 // in its own units
	shapes        []shape
}

// ParseDrawing reads an SVG drawing: paths, circles, rectangles, polygons,
// lines and single lines of text, in groups that may be moved and turned. An
// element that it does not know is an error, since it would be missing on
// paper.
func ParseDrawing(svg string, styles Styles) (*Drawing, error) {
	d := &Drawing{}
	box, err := viewBox(svg)
	if err != nil {
		return nil, err
	}
	d.Width, d.Height = box[2], box[3]
	d.shapes, err = parseSVG(svg, styles)
	return d, err
}

// Draw paints a drawing width millimetres wide; its height follows.
func (d *Doc) Draw(g *Drawing, x, y, width float64) {
	scale := width / g.Width
	d.paintShapes(g.shapes, matrix{a: scale, d: scale, e: x, f: y}, scale)
}

// signUnits is the width of the drawings of signs; a test looks.
const signUnits = 48

// Sign draws a safety sign, side millimetres wide and high. A sign that is not
// there is an error.
func (d *Doc) Sign(id string, x, y, side float64) {
	shapes := d.stock.signs[id]
	if len(shapes) == 0 {
		d.fail(fmt.Errorf("there is no picture of sign %q", id))
		return
	}
	scale := side / signUnits
	d.paintShapes(shapes, matrix{a: scale, d: scale, e: x, f: y}, scale)
}

func (d *Doc) paintShapes(shapes []shape, m matrix, scale float64) {
	for _, s := range shapes {
		if s.text != "" {
			d.label(s, m, scale)
			continue
		}
		p := Pen{Fill: s.paint.fill, Stroke: s.paint.stroke, Width: s.paint.width * scale}
		for _, v := range s.paint.dash {
			p.Dash = append(p.Dash, v*scale)
		}
		path := d.ops(s.path, m.then(s.m))
		if s.paint.round {
			path = "1 J 1 j " + path
		} else {
			path = "0 J 0 j " + path
		}
		d.rawRule(p, path, s.paint.evenOdd)
	}
}

// label sets the text of a drawing; it may stand on its side.
func (d *Doc) label(s shape, m matrix, scale float64) {
	t := Type{Size: s.paint.font * scale * k, Bold: s.paint.bold}
	if s.paint.fill != nil {
		t.Colour = *s.paint.fill
	}
	width := d.Width(t, s.text)
	back := 0.0
	switch s.paint.anchor {
	case "middle":
		back = width / 2
	case "end":
		back = width
	}
	m = m.then(s.m)
	at := m.apply(s.at)
	if m.b == 0 {
		d.Text(at.x-back, at.y, t, s.text)
		return
	}
	turn := matrix{a: m.a / scale, b: m.b / scale, c: m.c / scale, d: m.d / scale}
	x, y := at.x*k, (d.size.Height-at.y)*k
	d.setType(t) // before the state is saved, so that it also holds afterwards
	// PDF turns the other way round, since its y grows upwards.
	d.pdf.RawWriteStr(fmt.Sprintf("q %s %s %s %s %s %s cm 1 0 0 1 %s %s cm\n", num(turn.a), num(-turn.b), num(-turn.c), num(turn.d), num(x), num(y), num(-x), num(-y)))
	d.Text(at.x-back, at.y, t, s.text)
	d.pdf.RawWriteStr("Q\n")
}

func viewBox(svg string) ([4]float64, error) {
	var box [4]float64
	_, rest, ok := strings.Cut(svg, `viewBox="`)
	text, _, closed := strings.Cut(rest, `"`)
	fields := strings.Fields(text)
	if !ok || !closed || len(fields) != 4 {
		return box, errors.New("the drawing has no viewBox")
	}
	for i, f := range fields {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil {
			return box, fmt.Errorf("viewBox: %w", err)
		}
		box[i] = v
	}
	return box, nil
}

// level is an element with what it hands down.
type level struct {
	props   map[string]string
	classes []string
	m       matrix
}

// parseSVG reads the shapes of a drawing in the order in which they are painted.
func parseSVG(svg string, styles Styles) ([]shape, error) {
	reader := xml.NewDecoder(strings.NewReader(svg))
	stack := []level{{props: map[string]string{}, m: identity}}
	var shapes []shape
	for {
		token, err := reader.Token()
		if errors.Is(err, io.EOF) {
			return shapes, nil
		}
		if err != nil {
			return nil, err
		}
		switch token := token.(type) {
		case xml.StartElement:
			next, err := enter(stack[len(stack)-1], token, styles)
			if err != nil {
				return nil, err
			}
			stack = append(stack, next)
			s, ok, err := shapeOf(token, next)
			if err != nil {
				return nil, err
			}
			if ok {
				shapes = append(shapes, s)
			}
		case xml.EndElement:
			stack = stack[:len(stack)-1]
		case xml.CharData:
			if last := len(shapes) - 1; last >= 0 && stack[len(stack)-1].props["element"] == "text" {
				shapes[last].text = string(token)
			}
		}
	}
}

// enter works out what holds within an element.
func enter(up level, e xml.StartElement, styles Styles) (level, error) {
	l := level{props: maps.Clone(up.props), classes: up.classes, m: up.m}
	l.props["element"] = e.Name.Local
	for _, name := range []string{"d", "x", "y", "dy", "cx", "cy", "r", "rx", "width", "height", "points", "x1", "x2", "y1", "y2"} {
		delete(l.props, name)
	}
	var own []string
	for _, a := range e.Attr {
		switch a.Name.Local {
		case "class":
			own = strings.Fields(a.Value)
		case "transform":
			m, err := parseTransform(a.Value)
			if err != nil {
				return l, err
			}
			l.m = l.m.then(m)
		default:
			l.props[a.Name.Local] = a.Value
		}
	}
	for _, c := range l.classes {
		maps.Copy(l.props, styles[c+" "+e.Name.Local])
	}
	maps.Copy(l.props, styles[e.Name.Local])
	for _, c := range own {
		maps.Copy(l.props, styles[c])
	}
	l.classes = append(l.classes[:len(l.classes):len(l.classes)], own...)
	return l, nil
}

func parseTransform(text string) (matrix, error) {
	m := identity
	for rest := strings.TrimSpace(text); rest != ""; {
		name, tail, ok := strings.Cut(rest, "(")
		inside, after, closed := strings.Cut(tail, ")")
		if !ok || !closed {
			return m, fmt.Errorf("transform %q", text)
		}
		var v []float64
		for _, f := range strings.FieldsFunc(inside, func(r rune) bool { return r == ' ' || r == ',' }) {
			n, err := strconv.ParseFloat(f, 64)
			if err != nil {
				return m, fmt.Errorf("transform %q", text)
			}
			v = append(v, n)
		}
		switch {
		case name == "translate" && len(v) == 2:
			m = m.then(matrix{a: 1, d: 1, e: v[0], f: v[1]})
		case name == "rotate" && len(v) == 1:
			m = m.then(turned(v[0]))
		default:
			return m, fmt.Errorf("transform %q is not known", text)
		}
		rest = strings.TrimSpace(after)
	}
	return m, nil
}
