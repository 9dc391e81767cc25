package vehicle

import (
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// Below these parts of a limit, what is left of it is too little to trust: the
// mass of the papers may be out by 5 %, and on a scale people weigh more or less
// than what they count with.
//
// Source: Regulation (EU) 1230/2012 as quoted, tolerance on the mass in running
// order; common practice.
const (
	paperDoubt quantity.Fraction = 0.05
	scaleDoubt quantity.Fraction = 0.02
)

// doubt is how much of a limit is too little to trust.
func (v *laden) doubt(limit quantity.Kilograms) quantity.Kilograms {
	if v.weighed {
		return limit * quantity.Kilograms(scaleDoubt)
	}
	return limit * quantity.Kilograms(paperDoubt)
}

// verdict says which limits the laden van is above, whether it is near one, or
// that it is within those that are known.
func (v *laden) verdict(l load) table.Cell {
	over := l.mass > v.limits.whole
	front := l.known && v.limits.front > 0 && l.axles.Front > v.limits.front
	rear := l.known && v.limits.rear > 0 && l.axles.Rear > v.limits.rear
	if word := overWord(over, front, rear); word != "" {
		return table.Cell{Word: word, Tone: table.Bad}
	}
	if v.near(l) {
		return table.Cell{Word: "near", Tone: table.Doubtful}
	}
	if l.known && v.limits.front > 0 && v.limits.rear > 0 {
		return table.Cell{Word: "within", Tone: table.Good}
	}
	return table.Cell{Word: "within-whole"}
}

// overWord is empty for a load above no limit. A van that is too heavy as a whole
// is unloaded anyway, so there it does not matter which axle is too.
func overWord(whole, front, rear bool) string {
	switch {
	case whole && (front || rear):
		return "over-whole-axle"
	case whole:
		return "over-whole"
	case front && rear:
		return "over-axles"
	case front:
		return "over-front"
	case rear:
		return "over-rear"
	}
	return ""
}

// near reports whether less is left of a limit than the sum can be wrong by.
func (v *laden) near(l load) bool {
	close := func(mass, limit quantity.Kilograms) bool { return limit > 0 && limit-mass < v.doubt(limit) }
	return close(l.mass, v.limits.whole) || l.known && (close(l.axles.Front, v.limits.front) || close(l.axles.Rear, v.limits.rear))
}
