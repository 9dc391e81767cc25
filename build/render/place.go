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
		Kind: option("kind"), Length: metres(value("length")), Width: metres(value("width")),
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
	place := p.Fitted.Place
	point := figure.Point{Code: p.Code, Title: p.Title, Side: v.side(place.Side), Along: metres(place.Along)}
	if !place.Across.IsZero() {
		point.Known = true
		point.Across = v.across(p.Fitted)
	}
	return point
}

// place says in words where something is, "" where the spec does not.
func (v *van) place(f *spec.Fitted) string {
	if f.Place.Side == "" {
		return ""
	}
	hand := "right"
	if v.side(f.Place.Side) == figure.Left {
		hand = "left"
	}
	part := func(key string, length fact.Value) string {
		if length.IsZero() {
			return ""
		}
		return v.w.must(key, "length", v.guide.Quantity(length))
	}
	return v.w.must("place",
		"side", v.w.must("side_"+f.Place.Side, "hand", v.w.must("hand_"+hand)), "half", v.half(f),
		"along", part("along", f.Place.Along), "up", part("up", f.Place.Up))
}

// half says on which half of the van something inside, in the roof or under the
// floor is, "" where the spec does not say.
func (v *van) half(f *spec.Fitted) string {
	switch side := v.side(f.Place.Side); {
	case f.Place.Across.IsZero(), side != figure.Within && side != figure.Roof && side != figure.Under:
		return ""
	}
	share := v.across(f) / v.body().Width
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
func (v *van) across(f *spec.Fitted) float64 {
	if v.guide.LeftHandDrive() {
		return v.body().Width - metres(f.Place.Across)
	}
	return metres(f.Place.Across)
}

// paper is a van as sheets see it: words and drawings, no pages.
func (r *Renderer) paper(g *guide.Guide) (*van, error) {
	w, err := r.Words(g.Lang)
	return &van{r: r, w: w, guide: g}, err
}

// Where says in words where something is, "" where the spec does not.
func (r *Renderer) Where(g *guide.Guide, f *spec.Fitted) (string, error) {
	v, err := r.paper(g)
	if err != nil {
		return "", err
	}
	return v.place(f), nil
}

// Plans are the drawings of a van, what one reaches from outside and what is
// inside, each "" where there is nothing.
func (r *Renderer) Plans(g *guide.Guide) (outside, inside string, err error) {
	v, err := r.paper(g)
	if err != nil {
		return "", "", err
	}
	out, in, _ := v.plans()
	return string(out), string(in), nil
}
