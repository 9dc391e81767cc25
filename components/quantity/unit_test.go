package quantity

import (
	"strings"
	"testing"
)

func TestUnitsOfEveryDimension(t *testing.T) {
	want := map[Dimension]string{
		Mass:                  "kg g t lb oz",
		Length:                "m mm cm km ft in mi yd ft-in",
		Area:                  "m2 cm2 mm2",
		Pressure:              "bar mbar psi kPa Pa inH2O",
		Power:                 "W kW hp Btu/h",
		Energy:                "Wh kWh J kJ MJ Btu",
		Charge:                "Ah mAh C",
		Current:               "A mA",
		Voltage:               "V mV kV",
		Volume:                "L ml m3 gal-uk gal-us",
		Temperature:           "°C °F K",
		TemperatureDifference: "K °C °F",
		Time:                  "h min s d h-min",
		MassFlow:              "g/h kg/h kg/s",
		VolumeFlow:            "L/min L/h L/s m3/h gal-us/min m3/s",
		Speed:                 "km/h mph m/s",
		Ratio:                 "% 1",
	}
	for _, d := range Dimensions() {
		var names []string
		for _, u := range Units(d) {
			names = append(names, u.Name())
		}
		if got := strings.Join(names, " "); got != want[d] {
			t.Errorf("units of %s: %s, expected %s", d, got, want[d])
		}
		if si := SI(d); si.Dimension() != d || si.is().factor != 1 || si.is().offset != 0 {
			t.Errorf("SI unit of %s: %+v", d, si)
		}
	}
	if got := Units(None); len(got) != 0 {
		t.Errorf("units of none: %v", got)
	}
	if got := SI(None); !got.IsZero() {
		t.Errorf("SI unit of none: %v", got)
	}
}

func TestEverySpellingFindsItsUnit(t *testing.T) {
	for i := range units {
		e := &units[i]
		for _, spelling := range append([]string{e.name, e.symbol}, e.aliases...) {
			if spelling == "" {
				continue
			}
			if u, ok := UnitOf(spelling, e.dimension); !ok || u != e.unit() {
				t.Errorf("UnitOf(%q, %s) = %v, %v, expected %v", spelling, e.dimension, u, ok, e.unit())
			}
			u, ok := UnitNamed(spelling)
			if e.dimension == TemperatureDifference {
				if !ok || u.Dimension() != Temperature || u.Name() != e.name {
					t.Errorf("UnitNamed(%q) = %v of %s", spelling, u, u.Dimension())
				}
			} else if !ok || u != e.unit() {
				t.Errorf("UnitNamed(%q) = %v of %s, expected %v of %s", spelling, u, u.Dimension(), e.unit(), e.dimension)
			}
		}
	}
}

func TestSpellingsPeopleWrite(t *testing.T) {
	for spelling, name := range map[string]string{
		"l": "L", "litre": "L", "litres": "L", "mm²": "mm2", "ºC": "°C", "deg C": "°C", "deg  C": "°C",
		"kg/hr": "kg/h", "Psi": "psi", "PSI": "psi", "gal\u00a0(UK)": "gal-uk", "gal (UK)": "gal-uk",
		"C": "C", "mW": "", "MW": "", "mJ": "", "mbar": "mbar", "Mbar": "", "MA": "", "KV": "", "F": "",
		"": "", " ": "", "gal": "", "ton": "",
	} {
		u, ok := UnitNamed(spelling)
		if ok != (name != "") || u.Name() != name {
			t.Errorf("UnitNamed(%q) = %q, %v, expected %q", spelling, u.Name(), ok, name)
		}
	}
}

func TestAmbiguousNamesAreNoUnits(t *testing.T) {
	for name := range ambiguous {
		if u, ok := UnitNamed(name); ok {
			t.Errorf("%q is ambiguous and also %v", name, u)
		}
	}
}

func TestSymbols(t *testing.T) {
	for name, symbol := range map[string]string{
		"mm2": "mm²", "m3": "m³", "L": "L", "gal-uk": "gal\u00a0(UK)", "°C": "°C", "1": "", "inH2O": "inH₂O", "m3/h": "m³/h",
	} {
		if u, _ := UnitNamed(name); u.Symbol() != symbol || u.String() != name {
			t.Errorf("%s is shown as %q and called %q, expected %q", name, u.Symbol(), u, symbol)
		}
	}
}

func TestNearest(t *testing.T) {
	for _, c := range []struct {
		text string
		dim  Dimension
		want string
	}{
		{"bsr", Pressure, "bar"}, {"pis", Pressure, "psi"}, {"barg", Pressure, "bar"}, {"BaR", Pressure, "bar"},
		{"KPa", Pressure, "kPa"}, {"kgg", Mass, "kg"}, {"mj", Energy, "MJ"}, {"mA", Pressure, "Pa"},
		{"lites", Volume, "L"}, {"kilogrms", Mass, "kg"}, {"x", Mass, ""}, {"foo", Pressure, ""},
		{strings.Repeat("bar", 1000), Pressure, ""}, {"", Mass, ""},
	} {
		if got := nearest(c.text, c.dim); got != c.want {
			t.Errorf("nearest(%.20q, %s) = %q, expected %q", c.text, c.dim, got, c.want)
		}
	}
}
