package quantity

import (
	"errors"
	"math"
	"testing"
)

func TestAbsent(t *testing.T) {
	var q Quantity
	if !q.IsZero() || q.Valid() || q.Dimension() != None || !q.Unit().IsZero() || q.String() != "" {
		t.Errorf("the zero quantity is %+v", q)
	}
	if _, err := q.In(SI(Mass)); err != ErrAbsent {
		t.Errorf("In: %v", err)
	}
	if _, err := As[Kilograms](q); err != ErrAbsent {
		t.Errorf("As: %v", err)
	}
	if _, err := Compare(q, Of(Kilograms(1))); err != ErrAbsent {
		t.Errorf("Compare: %v", err)
	}
	if nothing := mustParse(t, "0 kg", Mass); nothing.IsZero() || !nothing.Valid() {
		t.Error("0 kg counts as absent")
	}
}

func TestNew(t *testing.T) {
	bar, celsius := mustUnit(t, Pressure, "bar"), mustUnit(t, Temperature, "°C")
	q, err := New(5.5, bar)
	if err != nil || q.String() != "5.5 bar" || q.Unit() != bar || q.Dimension() != Pressure {
		t.Errorf("New(5.5, bar) = %v, %v", q, err)
	}
	var outOfRange *RangeError
	for _, c := range []struct {
		value float64
		unit  Unit
	}{
		{math.NaN(), bar}, {math.Inf(1), bar}, {math.Inf(-1), celsius}, {1e307, bar}, {-1, bar}, {-273.2, celsius},
	} {
		if q, err := New(c.value, c.unit); !errors.As(err, &outOfRange) || q.Valid() {
			t.Errorf("New(%v, %s) = %v, %v", c.value, c.unit, q, err)
		}
	}
	var dimension *DimensionError
	if _, err := New(1, Unit{}); !errors.As(err, &dimension) {
		t.Errorf("New without a unit: %v", err)
	}
	if q, _ := New(110, mustUnit(t, Length, "ft-in")); q.String() != "9 ft 2 in" {
		t.Errorf("110 ft-in is %s", q)
	}
}

func TestInRefuses(t *testing.T) {
	q := mustParse(t, "5.5 bar", Pressure)
	var dimension *DimensionError
	for _, u := range []Unit{{}, SI(Mass)} {
		if _, err := q.In(u); !errors.As(err, &dimension) || dimension.Got != Pressure {
			t.Errorf("5.5 bar in %q: %v", u, err)
		}
	}
	var outOfRange *RangeError
	if _, err := Of(SquareMetres(1e308)).In(mustUnit(t, Area, "mm2")); !errors.As(err, &outOfRange) {
		t.Errorf("overflow: %v", err)
	}
	if _, err := mustParse(t, "5 °C", TemperatureDifference).In(mustUnit(t, Temperature, "°C")); err == nil {
		t.Error("a difference was read as a temperature")
	}
}

func TestCompare(t *testing.T) {
	for _, c := range []struct {
		a, b string
		dim  Dimension
		want int
	}{
		{"5.5 bar", "5.5 bar", Pressure, 0}, {"5.5 bar", "550 kPa", Pressure, 0}, {"0.3 bar", "30 kPa", Pressure, 0},
		{"5.5 bar", "80 psi", Pressure, -1}, {"80 psi", "5.5 bar", Pressure, 1}, {"0 kg", "0 t", Mass, 0},
		{"20 °C", "68 °F", Temperature, 0}, {"-5 °C", "-6 °C", Temperature, 1}, {"0.1 m", "10 cm", Length, 0},
		{"3500 kg", "3500.000001 kg", Mass, -1}, {"9 ft 2 in", "110 in", Length, 0}, {"-5 K", "5 K", TemperatureDifference, -1},
	} {
		got, err := Compare(mustParse(t, c.a, c.dim), mustParse(t, c.b, c.dim))
		if err != nil || got != c.want {
			t.Errorf("Compare(%s, %s) = %d, %v, expected %d", c.a, c.b, got, err, c.want)
		}
	}
	var dimension *DimensionError
	if _, err := Compare(Of(Kilograms(1)), Of(Metres(1))); !errors.As(err, &dimension) {
		t.Errorf("kilograms with metres: %v", err)
	}
}

func TestErrorTexts(t *testing.T) {
	if got := (&DimensionError{Want: Mass, Got: Pressure}).Error(); got != "expected mass, got pressure" {
		t.Error(got)
	}
	_, err := New(-1, SI(Mass))
	if got := err.Error(); got != "-1 kg: a mass cannot be negative" {
		t.Error(got)
	}
}
