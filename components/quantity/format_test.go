package quantity

import (
	"errors"
	"strings"
	"sync"
	"testing"

	"golang.org/x/text/language"
)

// spaced makes the spaces of an expected text no-break ones.
func spaced(text string) string { return strings.ReplaceAll(text, " ", "\u00a0") }

func TestFormatUnits(t *testing.T) {
	f := NewFormatter(language.BritishEnglish)
	for _, c := range []struct {
		text     string
		dim      Dimension
		unit     string
		rounding Rounding
		decimals int
		want     string
	}{
		{"5.5 bar", Pressure, "", Nearest, 0, "5.5 bar"},
		{"5.50 bar", Pressure, "bar", Nearest, Sensible, "5.50 bar"},
		{"5.50 bar", Pressure, "bar", Nearest, 1, "5.5 bar"},
		{"5.5 bar", Pressure, "psi", Nearest, Sensible, "79.8 psi"},
		{"5.5 bar", Pressure, "psi", Down, 0, "79 psi"},
		{"80 psi", Pressure, "bar", Nearest, Sensible, "5.52 bar"},
		{"80 psi", Pressure, "bar", Nearest, 3, "5.516 bar"},
		{"80 psi", Pressure, "bar", Up, 2, "5.52 bar"},
		{"80 psi", Pressure, "bar", Down, 2, "5.51 bar"},
		{"550 kPa", Pressure, "bar", Nearest, Sensible, "5.5 bar"},
		{"550 kPa", Pressure, "bar", Nearest, 2, "5.50 bar"},
		{"30 mbar", Pressure, "inH2O", Nearest, Sensible, "12 inH₂O"},
		{"3.5 t", Mass, "kg", Nearest, Sensible, "3,500 kg"},
		{"3505 kg", Mass, "t", Nearest, Sensible, "3.505 t"},
		{"1234567 g", Mass, "g", Nearest, Sensible, "1,234,567 g"},
		{"50 g", Mass, "kg", Nearest, Sensible, "0.05 kg"},
		{"5 g", Mass, "kg", Up, 1, "0.1 kg"},
		{"1.6 mm", Length, "cm", Nearest, Sensible, "0.16 cm"},
		{"0.16 cm", Length, "mm", Nearest, Sensible, "1.6 mm"},
		{"6.36 m", Length, "mm", Nearest, Sensible, "6,360 mm"},
		{"2.794 m", Length, "ft-in", Nearest, Sensible, "9 ft 2 in"},
		{"2.79 m", Length, "ft-in", Up, Sensible, "9 ft 2 in"},
		{"2.79 m", Length, "ft-in", Down, Sensible, "9 ft 1 in"},
		{"2.74 m", Length, "ft-in", Up, 0, "9 ft"},
		{"0.17 m", Length, "ft-in", Up, 0, "7 in"},
		{"0 m", Length, "ft-in", Up, 0, "0 in"},
		{"9 ft 2.5 in", Length, "", Nearest, 0, "9 ft 2.5 in"},
		{"9 ft 2.5 in", Length, "ft-in", Up, 0, "9 ft 3 in"},
		{"5.68 h", Time, "h-min", Down, Sensible, "5 h 40 min"},
		{"5.68 h", Time, "h", Down, 1, "5.6 h"},
		{"40 min", Time, "h-min", Down, Sensible, "40 min"},
		{"5 h", Time, "h-min", Down, Sensible, "5 h"},
		{"59.99 min", Time, "h-min", Nearest, Sensible, "1 h"},
		{"20400 s", Time, "h-min", Down, Sensible, "5 h 40 min"},
		{"1500 h", Time, "h-min", Down, Sensible, "1,500 h"},
		{"-5 °C", Temperature, "", Nearest, 0, "-5 °C"},
		{"-5 °C", Temperature, "°F", Nearest, Sensible, "23 °F"},
		{"0 °F", Temperature, "°C", Nearest, Sensible, "-17.8 °C"},
		{"-0.2 °C", Temperature, "°C", Up, 0, "0 °C"},
		{"10 K", TemperatureDifference, "°F", Nearest, Sensible, "18 °F"},
		{"100 L", Volume, "gal-uk", Nearest, Sensible, "22 gal (UK)"},
		{"100 L", Volume, "gal-us", Nearest, 1, "26.4 gal (US)"},
		{"2.5 mm2", Area, "", Nearest, 0, "2.5 mm²"},
		{"0.5", Ratio, "", Nearest, 0, "0.5"},
		{"0.5", Ratio, "%", Nearest, Sensible, "50%"},
		{"1 hp", Power, "W", Nearest, Sensible, "746 W"},
		{"100 km/h", Speed, "mph", Down, 0, "62 mph"},
		{"5 bar", Pressure, "bar", Nearest, -7, "5 bar"},
		{"5 bar", Pressure, "bar", Nearest, 99, "5.000000000000 bar"},
		{"1 000 000 000 000 km", Length, "mm", Nearest, 2, "1,000,000,000,000,000,000 mm"},
	} {
		s := Style{Rounding: c.rounding, Decimals: c.decimals}
		if c.unit != "" {
			s.Unit = mustUnit(t, c.dim, c.unit)
		}
		if got, want := f.Format(mustParse(t, c.text, c.dim), s), spaced(c.want); got != want {
			t.Errorf("%s in %q %s at %d: %q, expected %q", c.text, c.unit, c.rounding, c.decimals, got, want)
		}
	}
}

func TestFormatLocales(t *testing.T) {
	q, share := Of(Kilograms(-1234567.25)), Of(Fraction(0.55))
	for tag, want := range map[string][2]string{
		"en":    {"-1,234,567.25 kg", "55%"},
		"de":    {"-1.234.567,25 kg", "55 %"},
		"de-CH": {"-1’234’567.25 kg", "55%"},
		"fr":    {"-1 234 567,25 kg", "55 %"},
		"sv":    {"−1 234 567,25 kg", "55 %"},
		"hi":    {"-12,34,567.25 kg", "55%"},
		"tr":    {"-1.234.567,25 kg", "%55"},
		"fa":    {"\u200e−۱٬۲۳۴٬۵۶۷٫۲۵ kg", "۵۵٪"},
		"und":   {"-1,234,567.25 kg", "55%"},
	} {
		f := NewFormatter(language.MustParse(tag))
		got := [2]string{
			f.Format(q, Style{Unit: SI(Mass), Decimals: 2}),
			f.Format(share, In(mustUnit(t, Ratio, "%"))),
		}
		for i := range got {
			// Which no-break space a language groups with is the library's to know.
			if plain := strings.ReplaceAll(got[i], "\u202f", "\u00a0"); plain != spaced(want[i]) {
				t.Errorf("%s: %q, expected %q", tag, got[i], spaced(want[i]))
			}
			if strings.Contains(got[i], " ") {
				t.Errorf("%s: %q may break at a space", tag, got[i])
			}
		}
	}
}

func TestFormatUnfitting(t *testing.T) {
	f := NewFormatter(language.English)
	bar, q := mustUnit(t, Pressure, "bar"), mustParse(t, "5.5 bar", Pressure)
	if got := f.Format(Quantity{}, In(bar)); got != Absent {
		t.Errorf("absent: %q", got)
	}
	if got := f.Format(Quantity{}, Style{}); got != Absent {
		t.Errorf("absent: %q", got)
	}
	for _, s := range []Style{{}, {Unit: SI(Mass)}, {Rounding: Up}, In(Unit{})} {
		if got := f.Format(q, s); got != spaced("5.5 bar") {
			t.Errorf("%+v: %q", s, got)
		}
	}
	var dimension *DimensionError
	if err := In(SI(Mass)).Check(q); !errors.As(err, &dimension) {
		t.Errorf("Check: %v", err)
	}
	if err := In(bar).Check(Quantity{}); err != ErrAbsent {
		t.Errorf("Check of absent: %v", err)
	}
	for _, s := range []Style{{}, In(bar)} {
		if err := s.Check(q); err != nil {
			t.Errorf("Check: %v", err)
		}
	}
	if got := f.Format(Of(SquareMetres(1e308)), In(mustUnit(t, Area, "mm2"))); got != Absent {
		t.Errorf("overflow: %q", got)
	}
	if got := f.Format(Of(Metres(1e300)), In(mustUnit(t, Length, "ft-in"))); !strings.HasSuffix(got, "\u00a0in") {
		t.Errorf("beyond counting: %q", got)
	}
	if got := f.Format(Of(Metres(-0.6)), In(mustUnit(t, Length, "ft-in"))); got != spaced("-2 ft") {
		t.Errorf("negative: %q", got)
	}
	if got := f.Format(Of(Metres(-2.794)), In(mustUnit(t, Length, "ft-in"))); got != spaced("-9 ft 2 in") {
		t.Errorf("negative: %q", got)
	}
	if got := f.Format(Of(Metres(-0.0508)), In(mustUnit(t, Length, "ft-in"))); got != spaced("-2 in") {
		t.Errorf("negative: %q", got)
	}
}

func TestFormatRange(t *testing.T) {
	en, tr := NewFormatter(language.English), NewFormatter(language.Turkish)
	for _, c := range []struct {
		f        *Formatter
		from, to string
		dim      Dimension
		unit     string
		decimals int
		want     string
	}{
		{en, "4.5 bar", "5.5 bar", Pressure, "", 0, "4.5–5.5 bar"},
		{en, "5.5 bar", "4.5 bar", Pressure, "", 0, "4.5–5.5 bar"},
		{en, "4.5 bar", "80 psi", Pressure, "", 0, "4.5–5.52 bar"},
		{en, "4.5 bar", "5.5 bar", Pressure, "psi", 0, "65–80 psi"},
		{en, "5.50 bar", "5.5 bar", Pressure, "psi", 0, "80 psi"},
		{en, "-5 °C", "5 °C", Temperature, "", 0, "-5 °C – 5 °C"},
		{en, "5 °C", "20 °C", Temperature, "", 0, "5–20 °C"},
		{en, "30 min", "90 min", Time, "h-min", Sensible, "30 min – 1 h 30 min"},
		{en, "20 %", "80 %", Ratio, "", 0, "20–80%"},
		{tr, "20 %", "80 %", Ratio, "", 0, "%20 – %80"},
		{en, "0.2", "0.8", Ratio, "", 0, "0.2–0.8"},
	} {
		s := Style{Decimals: c.decimals}
		if c.unit != "" {
			s.Unit = mustUnit(t, c.dim, c.unit)
		}
		got := c.f.FormatRange(mustParse(t, c.from, c.dim), mustParse(t, c.to, c.dim), s)
		// The dash may break from what follows, so that space is a normal one.
		if want := strings.ReplaceAll(spaced(c.want), "–\u00a0", "– "); got != want {
			t.Errorf("%s to %s: %q, expected %q", c.from, c.to, got, want)
		}
	}
	if got := en.FormatRange(Quantity{}, Of(Kilograms(5)), In(SI(Mass))); got != "—\u00a0– 5\u00a0kg" {
		t.Errorf("absent: %q", got)
	}
	if got := en.FormatRange(Of(Metres(5)), Of(Kilograms(5)), Style{}); got != "5\u00a0m\u00a0– 5\u00a0kg" {
		t.Errorf("two dimensions: %q", got)
	}
}

func TestFormatterIsShared(t *testing.T) {
	f, q, s := NewFormatter(language.German), Of(Pascals(551580)), In(Units(Pressure)[0])
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for range 200 {
				if got := f.Format(q, s); got != "5,52\u00a0bar" {
					t.Errorf("got %q", got)
				}
			}
		})
	}
	wait.Wait()
}

func BenchmarkFormat(b *testing.B) {
	f, s := NewFormatter(language.German), In(mustUnit(b, Pressure, "psi"))
	q := mustParse(b, "5.5 bar", Pressure)
	b.ReportAllocs()
	for b.Loop() {
		f.Format(q, s)
	}
}

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse("5.5 bar", Pressure); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkNewFormatter(b *testing.B) {
	for b.Loop() {
		NewFormatter(language.German)
	}
}
