package render

import (
	"doorpocket/build/figure"
	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components/fact"
	"doorpocket/components/quantity"
)

// metres is a stated length as the drawings take it, 0 where not stated.
func metres(v fact.Value) float64 {
	m, err := quantity.As[quantity.Metres](v.Quantity)
	if err != nil {
		return 0
	}
	return float64(m)
}

// body is the van as the drawings take it.
func (v *van) body() figure.Body {
	value := func(name string) fact.Value { return v.guide.Van.Value(nil, "body."+name) }
	option := func(name string) string {
		if o := value(name).Options; len(o) > 0 {
			return o[0]
		}
		return ""
	}
	b := figure.Body{
		Kind: option("kind"), Length: metres(value("length")), Width: metres(value("width")), Height: metres(value("height")),
		Wheelbase: metres(value("wheelbase")), FrontOverhang: metres(value("front_overhang")),
		LeftHandDrive: v.guide.LeftHandDrive(), DoorAlong: metres(value("door_along")),
		Door: v.side(option("door_side")),
	}
	if b.DoorAlong == 0 {
		b.DoorAlong = b.Length / 2
	}
	return b
}

// side turns a side of the trade into left and right as one looks forward.
func (v *van) side(name string) figure.Side {
	switch name {
	case "offside", "nearside":
		if (name == "offside") == v.guide.LeftHandDrive() {
			return figure.Left
		}
		return figure.Right
	case "front":
		return figure.Nose
	case "rear":
		return figure.Back
	case "roof":
		return figure.Roof
	case "under":
		return figure.Under
	}
	return figure.Within
}

// point is a page's thing on a drawing.
func (v *van) point(p *guide.Page) figure.Point {
	point := v.pointAt(p.Fitted.Place)
	point.Code, point.Title = p.Code, p.Title
	return point
}

func (v *van) pointAt(p spec.Place) figure.Point {
	point := figure.Point{Side: v.side(p.Side), Along: metres(p.Along), Up: metres(p.Up)}
	if !p.Across.IsZero() {
		point.Known = true
		point.Across = v.across(p)
	}
	return point
}

// place says in words where something is, "" where the spec does not.
func (v *van) place(p spec.Place) string {
	if p.Side == "" {
		return ""
	}
	hand := "right"
	if v.side(p.Side) == figure.Left {
		hand = "left"
	}
	part := func(key string, length fact.Value) string {
		if length.IsZero() {
			return ""
		}
		return v.w.must(key, "length", v.guide.Quantity(length))
	}
	return v.w.must("place",
		"side", v.w.must("side_"+p.Side, "hand", v.w.must("hand_"+hand)), "half", v.half(p),
		"along", part("along", p.Along), "up", part("up", p.Up))
}

// half says on which half of the van something inside, in the roof or under the
// floor is, "" where the spec does not say.
func (v *van) half(p spec.Place) string {
	switch side := v.side(p.Side); {
	case p.Across.IsZero(), side != figure.Within && side != figure.Roof && side != figure.Under:
		return ""
	}
	share := v.across(p) / v.body().Width
	switch {
	case share < 0.4:
		return v.w.must("half_left")
	case share > 0.6:
		return v.w.must("half_right")
	}
	return v.w.must("half_middle")
}

// across is how far something is from the left side, in metres. A spec counts
// from the nearside, which is on the right where one steers on the left.
func (v *van) across(p spec.Place) float64 {
	if v.guide.LeftHandDrive() {
		return v.body().Width - metres(p.Across)
	}
	return metres(p.Across)
}

// paper is a van as sheets see it: words and drawings, no pages.
func (r *Renderer) paper(g *guide.Guide) (*van, error) {
	w, err := r.Words(g.Lang)
	return r.van(w, g), err
}

// Where says in words where something is, "" where the spec does not.
func (r *Renderer) Where(g *guide.Guide, p spec.Place) (string, error) {
	v, err := r.paper(g)
	if err != nil {
		return "", err
	}
	return v.place(p), nil
}

// Plans are the drawings of a van, what one reaches from outside and what is
// inside, each "" where there is nothing.
func (r *Renderer) Plans(g *guide.Guide) (outside, inside string, err error) {
	v, err := r.paper(g)
	if err != nil {
		return "", "", err
	}
	out, in := v.plans()
	return string(out), string(in), nil
}
