package quantity

import "math"

// The measures are plain numbers in the SI unit of one dimension. Functions
// that calculate take and give these, so that the compiler checks dimensions.
type (
	// Kilograms is a Mass.
	Kilograms float64
	// Metres is a Length.
	Metres float64
	// SquareMetres is an Area.
	SquareMetres float64
	// Pascals is a Pressure.
	Pascals float64
	// Watts is a Power.
	Watts float64
	// Joules is an Energy.
	Joules float64
	// Coulombs is a Charge; 3600 C are 1 Ah.
	Coulombs float64
	// Amperes is a Current.
	Amperes float64
	// Volts is a Voltage.
	Volts float64
	// CubicMetres is a Volume; 0.001 m³ is 1 L.
	CubicMetres float64
	// Kelvins is a Temperature counted from absolute zero.
	Kelvins float64
	// KelvinDifference is a TemperatureDifference.
	KelvinDifference float64
	// Seconds is a Time.
	Seconds float64
	// KilogramsPerSecond is a MassFlow.
	KilogramsPerSecond float64
	// CubicMetresPerSecond is a VolumeFlow.
	CubicMetresPerSecond float64
	// MetresPerSecond is a Speed.
	MetresPerSecond float64
	// Fraction is a Ratio; 1 is the whole.
	Fraction float64
)

// Measure is any of the measures.
type Measure interface {
	Kilograms | Metres | SquareMetres | Pascals | Watts | Joules | Coulombs |
		Amperes | Volts | CubicMetres | Kelvins | KelvinDifference | Seconds |
		KilogramsPerSecond | CubicMetresPerSecond | MetresPerSecond | Fraction
}

// Of makes a quantity of a calculated number. A number that is not finite, or
// a temperature below absolute zero, gives an absent quantity. A negative
// number is kept: what is left of a limit may be less than nothing.
func Of[T Measure](v T) Quantity {
	value, u := float64(v), SI(dimensionOf(v))
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return Quantity{}
	}
	if u.Dimension() == Temperature && belowAbsoluteZero(value) {
		return Quantity{}
	}
	return written(value, u, asComputed)
}

// As gives the number that a calculation takes. The error is ErrAbsent, or a
// *DimensionError if the quantity measures something else.
func As[T Measure](q Quantity) (T, error) {
	var zero T
	if q.IsZero() {
		return zero, ErrAbsent
	}
	if want := dimensionOf(zero); want != q.dimension {
		return zero, &DimensionError{Want: want, Got: q.dimension}
	}
	return T(q.base), nil
}

// dimensionOf gives the dimension that a measure has.
func dimensionOf[T Measure](v T) Dimension {
	switch any(v).(type) {
	case Kilograms:
		return Mass
	case Metres:
		return Length
	case SquareMetres:
		return Area
	case Pascals:
		return Pressure
	case Watts:
		return Power
	case Joules:
		return Energy
	case Coulombs:
		return Charge
	case Amperes:
		return Current
	case Volts:
		return Voltage
	case CubicMetres:
		return Volume
	case Kelvins:
		return Temperature
	case KelvinDifference:
		return TemperatureDifference
	case Seconds:
		return Time
	case KilogramsPerSecond:
		return MassFlow
	case CubicMetresPerSecond:
		return VolumeFlow
	case MetresPerSecond:
		return Speed
	case Fraction:
		return Ratio
	}
	return None
}
