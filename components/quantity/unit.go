package quantity

import (
	"slices"
	"strings"
)

// Unit is one unit of one dimension. The zero Unit is no unit. Units can be
// compared with ==. It is small, so that quantities are cheap to copy.
type Unit struct{ at *traits }

// traits are what is known of a unit.
type traits struct {
	name      string    // what a spec writes: "mm2", "gal-uk"
	symbol    string    // what a page shows: "mm²"
	dimension Dimension // what it measures
	factor    float64   // SI units in one of this unit
	offset    float64   // added before the factor is applied: 273.15 for °C
	decimals  int       // most decimals that a computed value shows
	large     string    // of a composite unit: the larger unit, "ft"
	small     string    // of a composite unit: the smaller unit, "in"
	ratio     int       // of a composite unit: how many small make one large
}

// noTraits are those of the zero Unit.
var noTraits = traits{}

func (u Unit) is() *traits {
	if u.at == nil {
		return &noTraits
	}
	return u.at
}

// Name gives the name a spec writes: "mm2", "gal-uk", "°C".
func (u Unit) Name() string { return u.is().name }

// Symbol gives the symbol a page shows: "mm²", "°C", "gal (UK)" with a no-break
// space. For the unit 1 of a ratio it is empty.
func (u Unit) Symbol() string { return u.is().symbol }

// Dimension gives what the unit measures; None for the zero Unit.
func (u Unit) Dimension() Dimension { return u.is().dimension }

// String gives the name.
func (u Unit) String() string { return u.is().name }

// IsZero reports whether u is no unit.
func (u Unit) IsZero() bool { return u.is().name == "" }

// Composite reports whether values in this unit are shown in two parts, as
// "9 ft 2 in" is. A single number in a composite unit counts the smaller
// part: 110 ft-in is 9 ft 2 in.
func (u Unit) Composite() bool { return u.is().ratio != 0 }

// toSI turns a number of this unit into one of the SI unit.
func (u Unit) toSI(v float64) float64 { return (v + u.is().offset) * u.is().factor }

// fromSI turns a number of the SI unit into one of this unit.
func (u Unit) fromSI(v float64) float64 { return v/u.is().factor - u.is().offset }

// UnitNamed finds a unit by its name, its symbol or another usual spelling.
// Case matters only where it tells two units apart. The scales of temperature
// are found as units of Temperature; UnitOf finds those of a difference.
func UnitNamed(symbol string) (Unit, bool) {
	symbol = tidySpaces(symbol)
	for i := range units {
		if units[i].spelled(symbol) {
			return units[i].unit(), true
		}
	}
	return Unit{}, false
}

// UnitOf finds a unit of one dimension, by the same spellings as UnitNamed.
func UnitOf(symbol string, dim Dimension) (Unit, bool) {
	symbol = tidySpaces(symbol)
	for i := range units {
		if units[i].dimension == dim && units[i].spelled(symbol) {
			return units[i].unit(), true
		}
	}
	return Unit{}, false
}

// Units gives all units of a dimension, the usual ones of a van first. It is
// empty for None.
func Units(dim Dimension) []Unit {
	var found []Unit
	for i := range units {
		if units[i].dimension == dim {
			found = append(found, units[i].unit())
		}
	}
	return found
}

// Spellings gives every way in which a spec may write a unit of a dimension:
// names, symbols and other usual spellings.
func Spellings(dim Dimension) []string {
	var found []string
	for i := range units {
		if units[i].dimension != dim {
			continue
		}
		for _, s := range append([]string{units[i].name, units[i].symbol}, units[i].aliases...) {
			if s != "" && !slices.Contains(found, s) {
				found = append(found, s)
			}
		}
	}
	return found
}

// SI gives the unit that calculations in a dimension count in; the zero Unit
// for None.
func SI(dim Dimension) Unit {
	for i := range units {
		e := &units[i]
		if e.dimension == dim && e.factor == 1 && e.offset == 0 && e.ratio == 0 {
			return e.unit()
		}
	}
	return Unit{}
}

// spelled reports whether text is one of the accepted spellings of the unit.
func (e *unitEntry) spelled(text string) bool {
	if text == "" {
		return false
	}
	if text == e.name || text == e.symbol {
		return true
	}
	for _, alias := range e.aliases {
		if text == alias {
			return true
		}
	}
	return false
}

// tidySpaces makes every run of spaces one normal space and drops those at
// the ends, so that "gal (UK)" is found whichever space was typed.
func tidySpaces(text string) string {
	if !strings.ContainsFunc(text, isSpace) {
		return text
	}
	return strings.Join(strings.FieldsFunc(text, isSpace), " ")
}

// isSpace reports whether r is a space that may stand inside a quantity.
func isSpace(r rune) bool {
	switch r {
	case ' ', '\t', '\u00a0', '\u2009', '\u202f':
		return true
	}
	return false
}
