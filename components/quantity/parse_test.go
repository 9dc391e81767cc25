package quantity

import (
	"errors"
	"strings"
	"testing"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		dim  Dimension
		want string // as String writes it
		si   float64
	}{
		{"5.5 bar", Pressure, "5.5 bar", 550000},
		{"5.5bar", Pressure, "5.5 bar", 550000},
		{"  5.50  bar ", Pressure, "5.50 bar", 550000},
		{"80 Psi", Pressure, "80 psi", 551580.5834534689},
		{"5.5\u00a0bar", Pressure, "5.5 bar", 550000},
		{"1 000 kg", Mass, "1000 kg", 1000},
		{"1\u202f000\u2009000 g", Mass, "1000000 g", 1000},
		{"3 500.5 kg", Mass, "3500.5 kg", 3500.5},
		{"0 kg", Mass, "0 kg", 0},
		{"-0 kg", Mass, "0 kg", 0},
		{"3.5t", Mass, "3.5 t", 3500},
		{"6 litres", Volume, "6 L", 0.006},
		{"10 gal (UK)", Volume, "10 gal-uk", 0.0454609},
		{"2.5 mm²", Area, "2.5 mm2", 2.5e-6},
		{"-5 °C", Temperature, "-5 °C", 268.15},
		{"\u22125 °C", Temperature, "-5 °C", 268.15},
		{"+5 deg C", Temperature, "5 °C", 278.15},
		{"-0.0 ºC", Temperature, "0.0 °C", 273.15},
		{"-459.67 °F", Temperature, "-459.67 °F", 0},
		{"-273.15 °C", Temperature, "-273.15 °C", 0},
		{"0 K", Temperature, "0 K", 0},
		{"-10 °C", TemperatureDifference, "-10 °C", -10},
		{"18 °F", TemperatureDifference, "18 °F", 10},
		{"9 ft 2 in", Length, "9 ft 2 in", 2.794},
		{"9ft2in", Length, "9 ft 2 in", 2.794},
		{"9 feet 2.5 inches", Length, "9 ft 2.5 in", 2.8067},
		{"9 ft", Length, "9 ft", 2.7432},
		{"0 ft 7 in", Length, "0 ft 7 in", 0.1778},
		{"5 h 40 min", Time, "5 h 40 min", 20400},
		{"5 hours 40 mins", Time, "5 h 40 min", 20400},
		{"100 Ah", Charge, "100 Ah", 360000},
		{"150 g/h", MassFlow, "150 g/h", 0.15 / 3600},
		{"10 L/min", VolumeFlow, "10 L/min", 0.01 / 60},
		{"62 mph", Speed, "62 mph", 27.71648},
		{"50 %", Ratio, "50 %", 0.5},
		{"50%", Ratio, "50 %", 0.5},
		{"0.85", Ratio, "0.85 1", 0.85},
		{"1", Ratio, "1 1", 1},
		{"3.5 1", Ratio, "3.5 1", 3.5},
		{"123456789012345 Pa", Pressure, "123456789012345 Pa", 123456789012345},
	} {
		q, err := Parse(c.text, c.dim)
		if err != nil {
			t.Errorf("Parse(%q): %v", c.text, err)
			continue
		}
		if got := q.String(); got != c.want {
			t.Errorf("Parse(%q) = %q, expected %q", c.text, got, c.want)
		}
		if got := mustIn(t, q, SI(c.dim)); !near(got, c.si, 1) && !near(got, c.si, 0) {
			t.Errorf("Parse(%q) is %v %s, expected %v", c.text, got, SI(c.dim), c.si)
		}
		if back, err := Parse(q.String(), c.dim); err != nil || back != q {
			t.Errorf("Parse(%q) = %+v, %v, expected %+v", q.String(), back, err, q)
		}
	}
}

const pressureUnits = "units of pressure: bar, mbar, psi, kPa, Pa, inH2O"

func TestParseErrors(t *testing.T) {
	for _, c := range []struct {
		text    string
		dim     Dimension
		offset  int
		message string
		hint    string
	}{
		{"", Pressure, 0, "empty: expected a pressure", pressureUnits},
		{" \u00a0", Pressure, 0, "empty: expected a pressure", pressureUnits},
		{"5.5", Pressure, 3, "no unit after 5.5: expected a pressure", pressureUnits},
		{"5.5 ", Area, 3, "no unit after 5.5: expected an area", "units of area: m2, cm2, mm2"},
		{"50", Ratio, 2, "no unit after 50: a ratio above 1 needs one", "write 50 %, or a number from 0 to 1"},
		{"5.5 kg", Pressure, 4, "kg is a unit of mass: expected a pressure", pressureUnits},
		{"5.5 kg cold", Pressure, 4, "kg is a unit of mass: expected a pressure", pressureUnits},
		{"20 C", Temperature, 3, "C is a unit of charge: expected a temperature", "write °C"},
		{"20 °", Temperature, 3, `"°" can mean more than one unit`, "write °C or °F"},
		{"2,5 kg", Mass, 1, "a decimal comma", "write 2.5 kg"},
		{"2,5", Mass, 1, "a decimal comma", "write 2.5"},
		{"1,000 kg", Mass, 1, "a comma in the number: a thousand or a decimal?", "write 1000 kg or 1.000 kg"},
		{"1.000,5 kg", Mass, 5, "a comma in the number", "write thousands without commas and decimals after a point"},
		{"1,000,000 g", Mass, 1, "a comma in the number", "write thousands without commas and decimals after a point"},
		{"1.000.000 g", Mass, 5, "a second decimal point", "write thousands without points"},
		{"1'000 kg", Mass, 1, "a mark between digits", "write the number without it"},
		{"1_000 kg", Mass, 1, "a mark between digits", "write the number without it"},
		{"12 34 kg", Mass, 3, "digits after a space that are not a group of three", "write the number without spaces"},
		{"1000 000 kg", Mass, 5, "digits after a space that are not a group of three", "write the number without spaces"},
		{"5.5 bsr", Pressure, 4, `unknown unit "bsr": expected a pressure`, "did you mean bar?"},
		{"5 MW", Power, 2, `unknown unit "MW": expected a power`, "did you mean kW?"},
		{"5 foo", Pressure, 2, `unknown unit "foo": expected a pressure`, pressureUnits},
		{"5 gal", Volume, 2, `"gal" can mean more than one unit`, "write gal-uk or gal-us"},
		{"5.5 bar cold", Pressure, 8, `unexpected "cold" after the unit`, ""},
		{"5.5 bar 80 psi", Pressure, 8, `unexpected "80 psi" after the unit`, ""},
		{"nan", Pressure, 0, "nan is not a number that can be measured", ""},
		{"NaN bar", Pressure, 0, "NaN is not a number that can be measured", ""},
		{"-Inf °C", Temperature, 0, "Inf is not a number that can be measured", ""},
		{"1e1000 bar", Pressure, 0, "a number with an exponent", "write the number out"},
		{"1E-3 bar", Pressure, 0, "a number with an exponent", "write the number out"},
		{"1234567890123456 Pa", Pressure, 0, "more than 15 digits", ""},
		{"0.1234567890123456 Pa", Pressure, 0, "more than 15 digits", ""},
		{" -5.5 bar", Pressure, 1, "a pressure cannot be negative", ""},
		{"-300 °C", Temperature, 0, "below absolute zero", ""},
		{"-1 K", Temperature, 0, "below absolute zero", ""},
		{".5 bar", Pressure, 0, "no digit before the decimal point", "write 0.5 bar"},
		{"5. bar", Pressure, 1, "no digit after the decimal point", "write 5 or 5.0"},
		{"cold", Pressure, 0, `expected a number, found "cold"`, "write a number and a unit, as in 5 bar"},
		{"bar 5", Pressure, 0, `expected a number, found "bar 5"`, "write a number and a unit, as in 5 bar"},
		{"-", Temperature, 0, `expected a number, found ""`, "write a number and a unit, as in 5 °C"},
		{"--5 °C", Temperature, 0, `expected a number, found "-5 °C"`, "write a number and a unit, as in 5 °C"},
		{"½ bar", Pressure, 0, `expected a number, found "½ bar"`, "write a number and a unit, as in 5 bar"},
		{"9 ft 13 in", Length, 5, "expected less than 12 in after the ft", ""},
		{"5 h 60 min", Time, 4, "expected less than 60 min after the h", ""},
		{"9.5 ft 2 in", Length, 7, "a second part after a number with decimals", "write a whole number of ft"},
		{"9 ft 2", Length, 5, `unexpected "2" after the unit`, ""},
		{"9 ft2", Length, 2, `unknown unit "ft2": expected a length`, "did you mean ft?"},
		{"3 ft 4 cm", Length, 5, `unexpected "4 cm" after the unit`, ""},
		{"9 ft 2,5 in", Length, 6, "a decimal comma", "write 2.5 in"},
		{"5 kg", None, 0, "nothing says which dimension this has", ""},
		{"5 kg", Dimension(99), 0, "nothing says which dimension this has", ""},
	} {
		q, err := Parse(c.text, c.dim)
		var problem *ParseError
		if !errors.As(err, &problem) {
			t.Errorf("Parse(%q) = %v, %v, expected a *ParseError", c.text, q, err)
			continue
		}
		if q.Valid() {
			t.Errorf("Parse(%q) gives both a quantity and an error", c.text)
		}
		want := ParseError{Text: c.text, Offset: c.offset, Message: c.message, Hint: c.hint}
		if *problem != want {
			t.Errorf("Parse(%q)\n got %+v\nwant %+v", c.text, *problem, want)
		}
	}
}

func TestParseErrorText(t *testing.T) {
	_, err := Parse("5.5 kg", Pressure)
	if got, want := err.Error(), `"5.5 kg": kg is a unit of mass: expected a pressure; `+pressureUnits; got != want {
		t.Errorf("got %s, expected %s", got, want)
	}
	_, err = Parse("5 "+strings.Repeat("\xff", 1000), Pressure)
	if got := err.Error(); len(got) > 500 {
		t.Errorf("the message repeats %d bytes", len(got))
	}
}

func TestParseNeverTakesNegativesSilently(t *testing.T) {
	for _, d := range Dimensions() {
		for _, u := range Units(d) {
			if u.Composite() {
				continue
			}
			text := "-1 " + u.Name()
			_, err := Parse(text, d)
			if allowed := d == TemperatureDifference || d == Temperature && u.Name() != "K"; allowed != (err == nil) {
				t.Errorf("Parse(%q, %s): %v", text, d, err)
			}
		}
	}
}
