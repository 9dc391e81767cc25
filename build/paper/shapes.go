package paper

import (
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// turned is a turn by so many degrees, clockwise as y grows downwards.
func turned(degrees float64) matrix {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return matrix{a: cos, b: sin, c: -sin, d: cos}
}

// shapeOf makes the shape of an element; ok is false for those that only hold
// others.
func shapeOf(e xml.StartElement, l level) (shape, bool, error) {
	s := shape{m: l.m, paint: paintOf(l.props)}
	n := func(name string) float64 {
		v, _ := strconv.ParseFloat(l.props[name], 64) // absent is nought
		return v
	}
	var err error
	switch e.Name.Local {
	case "svg", "g", "a", "title":
		return s, false, nil
	case "path":
		s.path, err = parsePath(l.props["d"])
	case "circle":
		s.path = ellipse(n("cx"), n("cy"), n("r"), n("r"))
	case "rect":
		s.path = roundRect(n("x"), n("y"), n("width"), n("height"), n("rx"))
	case "polygon":
		s.path, err = parsePath("M" + l.props["points"] + "Z")
	case "line":
		s.path = []segment{{op: 'M', pts: [3]point{{n("x1"), n("y1")}}}, {op: 'L', pts: [3]point{{n("x2"), n("y2")}}}}
	case "text":
		s.at = point{n("x"), n("y") + n("dy")}
	default:
		err = fmt.Errorf("the drawing has a %s, which paper cannot show", e.Name.Local)
	}
	return s, true, err
}

func paintOf(props map[string]string) paint {
	p := paint{width: 1, font: 16, anchor: props["text-anchor"]}
	p.fill = colourOf(props["fill"], &Black)
	p.stroke = colourOf(props["stroke"], nil)
	if v, err := strconv.ParseFloat(props["stroke-width"], 64); err == nil {
		p.width = v
	}
	if v, err := strconv.ParseFloat(strings.TrimSuffix(props["font-size"], "px"), 64); err == nil {
		p.font = v
	}
	for _, f := range strings.Fields(props["stroke-dasharray"]) {
		if v, err := strconv.ParseFloat(f, 64); err == nil {
			p.dash = append(p.dash, v)
		}
	}
	p.evenOdd = props["fill-rule"] == "evenodd"
	p.round = props["stroke-linejoin"] == "round" || props["stroke-linecap"] == "round"
	p.bold = props["font-weight"] >= "600" && props["font-weight"] != "normal"
	return p
}

// colourOf reads "#rgb", "#rrggbb", "none" or "currentColor", which is black.
func colourOf(text string, absent *Colour) *Colour {
	switch {
	case text == "none":
		return nil
	case text == "currentColor":
		return &Black
	case len(text) == 4 && text[0] == '#':
		text = "#" + strings.Repeat(text[1:2], 2) + strings.Repeat(text[2:3], 2) + strings.Repeat(text[3:4], 2)
	}
	if len(text) != 7 || text[0] != '#' {
		return absent
	}
	v, err := strconv.ParseUint(text[1:], 16, 32)
	if err != nil {
		return absent
	}
	return &Colour{uint8(v >> 16), uint8(v >> 8), uint8(v)}
}
