package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"doorpocket/components/internal/gnuunits"
)

// gnuNames gives the GNU units expression for each unit whose name there is
// another one. Temperatures are apart: they are functions.
var gnuNames = map[string]string{
	"t": "tonne", "mi": "mile", "yd": "yard", "ft-in": "inch", "in": "inch",
	"m2": "m^2", "cm2": "cm^2", "mm2": "mm^2", "m3": "m^3",
	"hp": "horsepower", "Btu": "btu", "Btu/h": "btu/hour",
	"Wh": "W hour", "kWh": "kW hour", "Ah": "A hour", "mAh": "mA hour", "C": "coulomb",
	"L": "liter", "ml": "milliliter", "gal-uk": "brgallon", "gal-us": "usgallon",
	"h": "hour", "min": "minute", "d": "day", "h-min": "minute",
	"g/h": "g/hour", "kg/h": "kg/hour", "L/min": "liter/minute", "L/h": "liter/hour", "L/s": "liter/s",
	"m3/h": "m^3/hour", "m3/s": "m^3/s", "gal-us/min": "usgallon/minute",
	"km/h": "km/hour", "mph": "mile/hour", "%": "percent",
}

// gnuScales gives the functions and units of temperatures.
var gnuScales = map[Dimension]map[string]string{
	Temperature:           {"°C": "tempC", "°F": "tempF", "K": "K"},
	TemperatureDifference: {"°C": "degC", "°F": "degF", "K": "K"},
}

// conversion is one question to GNU units.
type conversion struct {
	value    float64
	from, to Unit
}

// gnuName gives a unit as GNU units knows it.
func gnuName(u Unit) string {
	if scales, ok := gnuScales[u.Dimension()]; ok {
		return scales[u.Name()]
	}
	if name, ok := gnuNames[u.Name()]; ok {
		return name
	}
	return u.Name()
}

// have writes the amount to convert.
func (c conversion) have() string {
	name := gnuName(c.from)
	if strings.HasPrefix(name, "temp") {
		return fmt.Sprintf("%s(%v)", name, c.value)
	}
	return fmt.Sprintf("%v %s", c.value, name)
}

// conversions pairs every unit with every other one of its dimension.
func conversions() []conversion {
	var all []conversion
	for _, d := range Dimensions() {
		values := []float64{1, 7.3, 250}
		if d == Temperature {
			values = []float64{0.25, 20, 68, 300}
		}
		for _, from := range Units(d) {
			for _, to := range Units(d) {
				for _, v := range values {
					all = append(all, conversion{v, from, to})
				}
			}
		}
	}
	return all
}

func TestConversionsAgainstGNUUnits(t *testing.T) {
	all := conversions()
	var questions []gnuunits.Question
	for _, c := range all {
		questions = append(questions, gnuunits.Question{Have: c.have(), Want: gnuName(c.to)})
	}
	answers := gnuunits.Ask(t, questions)
	for i, c := range all {
		want, err := strconv.ParseFloat(answers[i], 64)
		if err != nil {
			t.Errorf("%s in %s: units says %q", c.have(), gnuName(c.to), answers[i])
			continue
		}
		q, err := New(c.value, c.from)
		if err != nil {
			t.Error(err)
			continue
		}
		// On a scale with another zero the error is that of the absolute value.
		least := 0.0
		if c.from.Dimension() == Temperature {
			least = 500
		}
		if got := mustIn(t, q, c.to); !near(got, want, least) || math.IsNaN(got) {
			t.Errorf("%v %s is %.17g %s, units says %.17g", c.value, c.from, got, c.to, want)
		}
	}
	t.Logf("%d conversions", len(all))
}
