package electrics

import (
	"fmt"
	"math"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// ratedWithin is the shortest discharge for which the formula is used: a
// current that would empty the rated capacity in less than an hour is refused.
// Cables, fuses and what watches over a lithium battery end it sooner.
//
// Source: common practice.
const ratedWithin quantity.Seconds = 3600

// A Peukert exponent outside these is a slip of the pen.
const (
	leastExponent quantity.Fraction = 1
	mostExponent  quantity.Fraction = 1.6
)

// Lasts is how long a full battery gives a steady current until it is empty.
//
//	t = R (C / (I R))^k     I above C / R
//	t = C / I               otherwise
//
// with the capacity C in coulombs, which it gives in R seconds, the current I in
// A and the exponent k. The form without R may not be used with the capacity of
// a 20-hour discharge. Below the current of the rating the formula promises more
// than the capacity, and the capacity is taken instead. It holds for k from 1 to
// 1.6, a new battery at 25 °C, and a current that takes an hour or more to give
// the rated capacity.
//
// Source: W. Peukert (1897), in the form with an hour rating that makers of
// battery monitors explain.
func Lasts(capacity quantity.Coulombs, rated quantity.Seconds, exponent quantity.Fraction, current quantity.Amperes) (quantity.Seconds, error) {
	if _, err := calc.Positive("the capacity", capacity); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the hours of the rating", rated); err != nil {
		return 0, err
	}
	if !(exponent >= leastExponent && exponent <= mostExponent) {
		return 0, calc.Outside("the Peukert exponent is %g, not from %g to %g", float64(exponent), float64(leastExponent), float64(mostExponent))
	}
	if _, err := calc.Positive("the current", current); err != nil {
		return 0, err
	}
	plain := quantity.Seconds(float64(capacity) / float64(current))
	if plain < ratedWithin*(1-noise) {
		return 0, calc.Outside("%.4g A would empty %.4g Ah in less than an hour", float64(current), float64(capacity)/3600)
	}
	if plain >= rated {
		return calc.Positive("the time", plain)
	}
	return calc.Positive("the time", rated*quantity.Seconds(math.Pow(float64(plain/rated), float64(exponent))))
}

// Chemistry is what is taken for a kind of battery where the van states nothing
// else.
type Chemistry struct {
	Usable   quantity.Fraction // of the charge, before it suffers
	Exponent quantity.Fraction // Peukert's
}

// ChemistryNamed gives the figures of a kind of battery. The exponent is the
// upper end of the range that is published for it, so that a battery lasts
// rather longer than shown.
//
// Source: usable share, common practice; exponents from a published Peukert page
// (wet 1.20 to 1.30, AGM 1.05 to 1.15, lithium iron phosphate about 1.05); gel
// from memory.
func ChemistryNamed(name string) (Chemistry, error) {
	switch name {
	case "wet":
		return Chemistry{Usable: 0.5, Exponent: 1.3}, nil
	case "agm":
		return Chemistry{Usable: 0.5, Exponent: 1.15}, nil
	case "gel":
		return Chemistry{Usable: 0.5, Exponent: 1.25}, nil
	case "lithium":
		return Chemistry{Usable: 0.8, Exponent: 1.05}, nil
	}
	return Chemistry{}, fmt.Errorf("nothing is known of a battery of the kind %q", name)
}
