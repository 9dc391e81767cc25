package electrics

import (
	"math"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// blade is a rating in which blade fuses are made, with its colour.
type blade struct {
	rating quantity.Amperes
	colour string
}

// blades lists the blade fuses of the mini, low-profile and standard sizes. The
// large ones (maxi) have other colours.
//
// Source: ISO 8820-3, after published colour tables that name it and DIN 72581
// (the standard itself not seen); 35 A from memory.
var blades = []blade{
	{0.5, "dark-blue"}, {1, "black"}, {2, "grey"}, {3, "violet"}, {4, "pink"}, {5, "tan"}, {7.5, "brown"}, {10, "red"},
	{15, "blue"}, {20, "yellow"}, {25, "clear"}, {30, "green"}, {35, "blue-green"}, {40, "orange"},
}

// BladeColour is the colour of the blade fuse of a rating. A rating in which no
// blade fuse is made is refused, because no larger one may stand in for it: the
// wire would burn before it breaks.
//
// Source: see blades.
func BladeColour(rating quantity.Amperes) (string, error) {
	if _, err := calc.Positive("the rating", rating); err != nil {
		return "", err
	}
	for _, b := range blades {
		if math.Abs(float64(rating/b.rating)-1) <= noise {
			return b.colour, nil
		}
	}
	return "", calc.Outside("no blade fuse is made for %.4g A", float64(rating))
}
