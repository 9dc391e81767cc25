package quantity

import (
	"math"
	"strconv"

	"golang.org/x/text/language"
)

// Sensible as the Decimals of a Style chooses the digits by the rule that is
// given there.
const Sensible = -1

// Absent is what a Formatter writes for an absent quantity, so that a gap in a
// page is seen to be one.
const Absent = "—"

// Style says how a quantity is shown.
//
// With Sensible decimals, a quantity that a spec states in the very unit shown
// keeps the digits it was written with: "5.50 bar" stays so. Any other shows at
// most the decimals of its unit (one for psi, kg and h, two for bar and m,
// three for t, none for mm and W), but at least two significant figures as far
// as six decimals reach, and no zeros at the end.
//
// With Decimals of 0 to 12, exactly so many are shown, so Style{Unit: u} shows
// a whole number; use In(u) for sensible decimals. Other numbers count as the
// nearest of these. A composite unit is always shown in whole small parts,
// save that digits written in a spec are kept by Sensible.
//
// The zero Style shows a quantity as it was written.
type Style struct {
	Unit     Unit     // zero: the unit as written
	Rounding Rounding // in the unit and at the decimals shown
	Decimals int      // Sensible, or how many
}

// In gives the usual style for a unit: sensible decimals, nearest.
func In(u Unit) Style { return Style{Unit: u, Decimals: Sensible} }

// Check says whether q can be shown in the style: ErrAbsent, a *DimensionError
// or a *RangeError if not. Format shows such a quantity in its own unit, or as
// Absent, and never as a wrong number.
func (s Style) Check(q Quantity) error {
	if s.Unit.IsZero() {
		s.Unit = q.unit
	}
	_, err := q.In(s.Unit)
	return err
}

// settle gives the style with the unit that q is really shown in. A forgotten
// or unfitting unit brings sensible decimals with it, so that the zero Style
// does not turn 5.5 bar into 6 bar.
func (s Style) settle(q Quantity) Style {
	if s.Unit.Dimension() == q.dimension {
		return s
	}
	if !s.Unit.IsZero() || s.Decimals == 0 {
		s.Decimals = Sensible
	}
	s.Unit = q.unit
	return s
}

// Formatter writes quantities for the readers of one language. It is safe for
// concurrent use.
type Formatter struct {
	locale locale
}

// NewFormatter makes a formatter for a language. It costs far more than
// formatting does, so keep it.
func NewFormatter(tag language.Tag) *Formatter {
	return &Formatter{locale: localeOf(tag)}
}

// Format writes the number in the locale's way, a no-break space and the
// symbol: "5.5 bar", in German "5,5 bar". The per cent sign stands as the
// locale has it, in English without a space. Feet with inches and hours with
// minutes are written in two parts, of which one that is nothing is left out:
// "9 ft 2 in", "5 h", "40 min".
func (f *Formatter) Format(q Quantity, s Style) string {
	s = s.settle(q)
	v, err := q.In(s.Unit)
	if err != nil {
		return Absent
	}
	var room [64]byte
	dst := room[:0]
	switch {
	case s.Unit.Composite():
		dst = f.appendParts(dst, q, v, s)
	case s.Unit.Name() == "%":
		dst = append(dst, f.locale.percent[0]...)
		dst = f.appendNumber(dst, q, v, s)
		dst = append(dst, f.locale.percent[1]...)
	default:
		dst = f.appendNumber(dst, q, v, s)
		dst = appendSymbol(dst, s.Unit.Symbol())
	}
	return string(dst)
}

// Plain is the number alone by the style, with a point and no grouping, for
// files that other programs read. In a composite unit it counts the small
// parts. It is empty for an absent quantity or a unit of another dimension.
func Plain(q Quantity, s Style) string {
	s = s.settle(q)
	v, err := q.In(s.Unit)
	if err != nil {
		return ""
	}
	return string(s.appendPlain(nil, q, v))
}

// FormatRange writes two quantities of one dimension as a range in one unit,
// the smaller first: "4.5–5.5 bar", and only one of them where both look the
// same. The unit is that of the style, else the one from was written in. A
// negative number or a unit of two parts sets the dash apart: "-5 °C – 5 °C".
// Rounding goes for both ends. Where the dimensions differ or an end is absent,
// both are written in full in the order given.
func (f *Formatter) FormatRange(from, to Quantity, s Style) string {
	s = s.settle(from)
	order, err := Compare(from, to)
	if err == nil && order > 0 {
		from, to = to, from
	}
	a, b := f.Format(from, s), f.Format(to, s)
	if err == nil && a == b {
		return a
	}
	v, unshown := from.In(s.Unit)
	if err != nil || unshown != nil || v < 0 || !f.endsInUnit(s.Unit) {
		return a + "\u00a0– " + b
	}
	return string(f.appendNumber(nil, from, v, s)) + "–" + b
}

// endsInUnit reports whether a quantity in u is a number and then the unit.
func (f *Formatter) endsInUnit(u Unit) bool {
	return !u.Composite() && (u.Name() != "%" || f.locale.percent[0] == "")
}

// appendNumber writes the number v of q in the unit of s.
func (f *Formatter) appendNumber(dst []byte, q Quantity, v float64, s Style) []byte {
	var room [64]byte
	return f.locale.appendNumber(dst, s.appendPlain(room[:0], q, v))
}

// appendSymbol writes a no-break space and the symbol, or nothing for none.
func appendSymbol(dst []byte, symbol string) []byte {
	if symbol == "" {
		return dst
	}
	dst = append(dst, "\u00a0"...)
	return append(dst, symbol...)
}

// appendPlain writes the number v of q by the style, with a point and no
// grouping.
func (s Style) appendPlain(dst []byte, q Quantity, v float64) []byte {
	switch {
	case s.asWritten(q):
		return appendWritten(dst, q)
	case s.Decimals == Sensible:
		return appendRounded(dst, v, sensibleDecimals(v, s.Unit), s.Rounding, true)
	}
	return appendRounded(dst, v, s.decimals(), s.Rounding, false)
}

// asWritten reports whether the digits of the spec are to be kept.
func (s Style) asWritten(q Quantity) bool {
	return s.Decimals == Sensible && s.Unit == q.unit && q.decimals != asComputed
}

// decimals gives the number of decimals asked for, within what can be shown.
func (s Style) decimals() int { return min(max(s.Decimals, 0), decimalsMost) }

// appendParts writes v, which counts the small parts of a composite unit.
func (f *Formatter) appendParts(dst []byte, q Quantity, v float64, s Style) []byte {
	u, decimals := s.Unit, 0
	if s.asWritten(q) {
		decimals = min(q.decimals, decimalsMost)
	}
	large, rest, ok := split(v, u, decimals, s.Rounding)
	var room [64]byte
	if !ok {
		dst = f.locale.appendNumber(dst, strconv.AppendFloat(room[:0], v, 'f', 0, 64))
		return appendSymbol(dst, u.is().small)
	}
	if large != 0 {
		dst = f.locale.appendNumber(dst, strconv.AppendInt(room[:0], large, 10))
		dst = appendSymbol(dst, u.is().large)
		if rest == 0 {
			return dst
		}
		dst = append(dst, "\u00a0"...)
		rest = max(rest, -rest) // the sign stands once, in front
	}
	dst = f.locale.appendNumber(dst, appendScaled(room[:0], rest, decimals))
	return appendSymbol(dst, u.is().small)
}

// split divides v small parts into whole large parts and the rest, the latter
// as a whole number of its last decimal. Both have the sign of v.
func split(v float64, u Unit, decimals int, r Rounding) (large, rest int64, ok bool) {
	n, ok := r.scaled(v, decimals)
	if !ok {
		return 0, 0, false
	}
	one := int64(u.is().ratio) * int64(powersOfTen[decimals])
	return n / one, n % one, true
}

// plainParts writes a quantity in its composite unit as a spec does.
func plainParts(q Quantity) string {
	decimals := min(max(q.decimals, 0), decimalsMost)
	large, rest, ok := split(q.value, q.unit, decimals, Nearest)
	if !ok || q.decimals == asComputed && q.value != math.Trunc(q.value) {
		return string(strconv.AppendFloat(nil, q.value, 'f', -1, 64)) + " " + q.unit.is().small
	}
	dst := strconv.AppendInt(nil, large, 10)
	dst = append(dst, " "+q.unit.is().large+" "...)
	dst = appendScaled(dst, max(rest, -rest), decimals)
	return string(append(dst, " "+q.unit.is().small...))
}

// appendWritten writes the number of q with the digits of the spec, a computed
// one with as many as it has.
func appendWritten(dst []byte, q Quantity) []byte {
	return strconv.AppendFloat(dst, q.value, 'f', q.decimals, 64)
}

// appendRounded writes x rounded to so many decimals; trimmed, without zeros
// at the end of them.
func appendRounded(dst []byte, x float64, decimals int, r Rounding, trimmed bool) []byte {
	n, ok := r.scaled(x, decimals)
	if !ok {
		return strconv.AppendFloat(dst, r.whole(x), 'f', 0, 64)
	}
	for trimmed && decimals > 0 && n%10 == 0 {
		n /= 10
		decimals--
	}
	return appendScaled(dst, n, decimals)
}

// appendScaled writes the whole number n with a point before its last so many
// digits: 53 with 1 decimal is 5.3.
func appendScaled(dst []byte, n int64, decimals int) []byte {
	if n < 0 {
		dst = append(dst, '-')
		n = -n
	}
	one := int64(powersOfTen[decimals])
	dst = strconv.AppendInt(dst, n/one, 10)
	if decimals == 0 {
		return dst
	}
	dst = append(dst, '.')
	rest := n % one
	for one /= 10; one > 0; one /= 10 {
		dst = append(dst, byte('0'+rest/one%10))
	}
	return dst
}
