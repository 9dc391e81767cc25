package quantity

import (
	"errors"
	"math"
	"testing"
)

// checkMeasure says whether a measure goes to a quantity and back.
func checkMeasure[T Measure](t *testing.T, dim Dimension) {
	t.Helper()
	q := Of(T(2.5))
	if q.Dimension() != dim || q.Unit() != SI(dim) {
		t.Errorf("Of(%T) is %s in %s, expected %s", T(0), q.Dimension(), q.Unit(), dim)
	}
	if back, err := As[T](q); err != nil || back != 2.5 {
		t.Errorf("As[%T] = %v, %v", T(0), back, err)
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if Of(T(bad)).Valid() {
			t.Errorf("Of(%T(%v)) is present", T(0), bad)
		}
	}
	if negative := Of(T(-1)); negative.Valid() != (dim != Temperature) {
		t.Errorf("Of(%T(-1)) = %v", T(0), negative)
	}
	other := Of(Kilograms(1))
	if dim == Mass {
		other = Of(Metres(1))
	}
	var dimension *DimensionError
	if _, err := As[T](other); !errors.As(err, &dimension) || dimension.Want != dim {
		t.Errorf("As[%T] of %s: %v", T(0), other, err)
	}
}

func TestMeasures(t *testing.T) {
	checkMeasure[Kilograms](t, Mass)
	checkMeasure[Metres](t, Length)
	checkMeasure[SquareMetres](t, Area)
	checkMeasure[Pascals](t, Pressure)
	checkMeasure[Watts](t, Power)
	checkMeasure[Joules](t, Energy)
	checkMeasure[Coulombs](t, Charge)
	checkMeasure[Amperes](t, Current)
	checkMeasure[Volts](t, Voltage)
	checkMeasure[CubicMetres](t, Volume)
	checkMeasure[Kelvins](t, Temperature)
	checkMeasure[KelvinDifference](t, TemperatureDifference)
	checkMeasure[Seconds](t, Time)
	checkMeasure[KilogramsPerSecond](t, MassFlow)
	checkMeasure[CubicMetresPerSecond](t, VolumeFlow)
	checkMeasure[MetresPerSecond](t, Speed)
	checkMeasure[Fraction](t, Ratio)
}

func TestMeasureOfParsed(t *testing.T) {
	store, err := As[Kilograms](mustParse(t, "6000 g", Mass))
	if err != nil || store != 6 {
		t.Errorf("6000 g is %v kg, %v", store, err)
	}
	warm, err := As[Kelvins](mustParse(t, "20 °C", Temperature))
	if err != nil || !near(float64(warm), 293.15, 1) {
		t.Errorf("20 °C is %v K, %v", warm, err)
	}
}
