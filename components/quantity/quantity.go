package quantity

import (
	"errors"
	"fmt"
	"math"
)

// asComputed marks a quantity that has no written digits to keep.
const asComputed = -1

// Quantity is a value with its dimension. It keeps the unit and, if it came
// from Parse, the digits in which it was written, so that a page can show a
// spec's own figure unchanged. The zero Quantity is absent: a fact that was
// not stated.
//
// Use Compare and not == to ask whether two quantities are equally large: ==
// also compares how they were written.
type Quantity struct {
	dimension Dimension
	base      float64 // in the SI unit
	unit      Unit    // as written
	value     float64 // in unit, as written
	decimals  int     // digits written after the point, or asComputed
}

// ErrAbsent is the error for asking the value of an absent quantity.
var ErrAbsent = errors.New("the quantity is absent")

// DimensionError is the error for using a quantity as something it is not.
type DimensionError struct {
	Want, Got Dimension
}

// Error says both dimensions.
func (e *DimensionError) Error() string {
	return fmt.Sprintf("expected %s, got %s", e.Want, e.Got)
}

// RangeError is the error for a value that cannot be: not finite, negative
// where nothing can be negative, or colder than absolute zero.
type RangeError struct {
	Value float64
	Unit  Unit
	Why   string
}

// Error says the value and the reason.
func (e *RangeError) Error() string {
	return fmt.Sprintf("%g %s: %s", e.Value, e.Unit.Name(), e.Why)
}

// New makes a quantity of a value in a unit. The error is a *DimensionError
// for the zero Unit and a *RangeError for a value that Parse would refuse too.
func New(value float64, u Unit) (Quantity, error) {
	if u.IsZero() {
		return Quantity{}, &DimensionError{Want: None, Got: None}
	}
	if why := impossible(value, u); why != "" {
		return Quantity{}, &RangeError{Value: value, Unit: u, Why: why}
	}
	return written(value, u, asComputed), nil
}

// impossible says why a spec cannot state this value, or nothing if it can.
func impossible(value float64, u Unit) string {
	base := u.toSI(value)
	switch {
	case math.IsNaN(value):
		return "not a number"
	case math.IsInf(value, 0) || math.IsInf(base, 0):
		return "too large"
	case u.Dimension() == Temperature && belowAbsoluteZero(base):
		return "below absolute zero"
	case value < 0 && !u.Dimension().mayBeNegative():
		return "a " + u.Dimension().String() + " cannot be negative"
	}
	return ""
}

// belowAbsoluteZero leaves room for the noise of -459.67 °F and the like.
func belowAbsoluteZero(kelvin float64) bool { return kelvin < -1e-9 }

// written makes a quantity of a value already known to be possible.
func written(value float64, u Unit, decimals int) Quantity {
	if value == 0 {
		value = 0 // no negative zero, which would be shown as -0
	}
	base := u.toSI(value)
	if u.Dimension() == Temperature && base < 0 {
		base = 0
	}
	return Quantity{dimension: u.Dimension(), base: base, unit: u, value: value, decimals: decimals}
}

// IsZero reports whether the quantity is absent. A quantity of 0 kg is not.
func (q Quantity) IsZero() bool { return q.dimension == None }

// Valid reports whether the quantity is present.
func (q Quantity) Valid() bool { return q.dimension != None }

// Dimension gives what the quantity measures; None if it is absent.
func (q Quantity) Dimension() Dimension { return q.dimension }

// Unit gives the unit in which the quantity was written, for a computed one
// the SI unit, and the zero Unit if it is absent.
func (q Quantity) Unit() Unit { return q.unit }

// In gives the number of units u in the quantity; in a composite unit, the
// number of its smaller part. The error is ErrAbsent, a *DimensionError, or a
// *RangeError if the number is too large to hold.
func (q Quantity) In(u Unit) (float64, error) {
	if q.IsZero() {
		return 0, ErrAbsent
	}
	if u.Dimension() != q.dimension {
		return 0, &DimensionError{Want: u.Dimension(), Got: q.dimension}
	}
	if u == q.unit {
		return q.value, nil
	}
	v := u.fromSI(q.base)
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return 0, &RangeError{Value: v, Unit: u, Why: "too large"}
	}
	return v, nil
}

// equalWithin is the part of the larger value by which two quantities may
// differ and still be equal: more than the noise of converting units, less
// than any digit that anybody writes.
const equalWithin = 1e-12

// Compare gives -1, 0 or +1 as a is smaller than, equal to or larger than b.
// Quantities that differ by less than one part in 10^12 are equal, so that
// 0.3 bar equals 30 kPa. The error is ErrAbsent or a *DimensionError.
func Compare(a, b Quantity) (int, error) {
	if a.IsZero() || b.IsZero() {
		return 0, ErrAbsent
	}
	if a.dimension != b.dimension {
		return 0, &DimensionError{Want: a.dimension, Got: b.dimension}
	}
	larger := math.Max(math.Abs(a.base), math.Abs(b.base))
	switch d := a.base - b.base; {
	case math.Abs(d) <= equalWithin*larger:
		return 0, nil
	case d < 0:
		return -1, nil
	}
	return 1, nil
}

// String writes the quantity as a spec does, "5.5 bar", with the digits it was
// written with. Parse reads it back unless the value was computed and needs
// more digits than Parse takes. An absent quantity gives the empty string.
// It is for messages and files, not for pages: see Formatter.
func (q Quantity) String() string {
	if q.IsZero() {
		return ""
	}
	if q.unit.Composite() {
		return plainParts(q)
	}
	return string(appendWritten(nil, q)) + " " + q.unit.Name()
}
