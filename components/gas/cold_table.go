package gas

import (
	"fmt"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// What a regulator for appliances at 30 mbar needs at its inlet, above the air.
const (
	// fullFlow lets it give all that it is made for. From memory: the inlet range
	// of regulators to EN 16129 annex D, 0.3 bar to 16 bar.
	fullFlow quantity.Pascals = 30_000
	// anyFlow is the pressure that it gives out: gas does not flow uphill.
	// Source: EN 1949 and EN 12864, 30 mbar.
	anyFlow quantity.Pascals = 3_000
)

// coldRows are the temperatures of the table, in °C.
var coldRows = []float64{-40, -30, -20, -10, -5, 0, 5, 10, 15, 20}

// coldEnough is where the table of a gas begins that gives its last only above
// freezing: what is colder says nothing new.
const coldEnough quantity.Kelvins = 273.15 - 10

// brew is the gas of a store: full, and when nearly all is gone.
type brew struct {
	full  quantity.Fraction // part of propane by mass
	known bool              // full is known
	last  quantity.Fraction
}

// ColdTable says down to which cold the gas of the store still comes: the
// pressure at the regulator when full and when nearly empty, at round
// temperatures and at those two where the last of it just reaches what the
// regulator needs.
//
// The last of a mixture counts as butane: propane leaves first, and by Rayleigh's
// law of distillation less than a hundredth of it is left in the last tenth of
// a mixture of equal parts at 0 °C. A mixture of parts that are not stated is
// judged by its last alone.
//
// A pressure that is not above the air is left empty. Columns: at, full, last,
// gives.
func ColdTable(in table.Input) (table.Result, error) {
	gas, lacks, err := brewOf(in.Self)
	if err != nil {
		return table.Result{}, err
	}
	stops, err := CoolLimit(gas.last, anyFlow)
	if err != nil {
		return table.Result{}, err
	}
	flows, err := CoolLimit(gas.last, fullFlow)
	if err != nil {
		return table.Result{}, err
	}
	result := table.Result{Lacks: lacks}
	for _, at := range coldTemperatures(stops, flows) {
		if gas.full == 0 && at < coldEnough {
			continue // no butane comes there
		}
		row, err := gas.row(at, stops, flows)
		if err != nil {
			return table.Result{}, err
		}
		result.Rows = append(result.Rows, row)
	}
	return result, nil
}

// coldTemperatures puts the two limits among the round temperatures.
func coldTemperatures(stops, flows quantity.Kelvins) []quantity.Kelvins {
	var all []quantity.Kelvins
	limits := []quantity.Kelvins{stops, flows}
	for _, celsius := range coldRows {
		t := quantity.Kelvins(273.15 + celsius)
		for len(limits) > 0 && limits[0] <= t {
			all = append(all, limits[0])
			limits = limits[1:]
		}
		all = append(all, t)
	}
	return append(all, limits...)
}

func (b brew) row(t, stops, flows quantity.Kelvins) (table.Row, error) {
	last, err := gauge(b.last, t)
	if err != nil {
		return nil, err
	}
	full := last
	if b.full != b.last {
		if full, err = gauge(b.full, t); err != nil {
			return nil, err
		}
	}
	if !b.known {
		full = 0
	}
	return table.Row{{Quantity: quantity.Of(t)}, above(full), above(last), b.verdict(t, stops, flows, full)}, nil
}

func (b brew) verdict(t, stops, flows quantity.Kelvins, full quantity.Pascals) table.Cell {
	switch {
	case t == flows:
		return table.Cell{Word: "full-from", Tone: table.Good}
	case t > flows:
		return table.Cell{Word: "enough", Tone: table.Good}
	case b.full != b.last && full >= fullFlow:
		return table.Cell{Word: "while-full", Tone: table.Doubtful}
	case t > stops, b.full != b.last && full >= anyFlow:
		return table.Cell{Word: "little", Tone: table.Doubtful}
	case !b.known:
		return table.Cell{Word: "last-none", Tone: table.Bad}
	case t == stops:
		return table.Cell{Word: "stops", Tone: table.Bad}
	}
	return table.Cell{Word: "none", Tone: table.Bad}
}

// gauge is the pressure above that of the air.
func gauge(part quantity.Fraction, t quantity.Kelvins) (quantity.Pascals, error) {
	p, err := VapourPressure(part, t)
	return p - Atmosphere, err
}

// above shows a pressure, unless the column would round it down to nothing.
func above(p quantity.Pascals) table.Cell {
	const least quantity.Pascals = 1000
	if p < least {
		return table.Cell{}
	}
	return table.Cell{Quantity: quantity.Of(p)}
}

// brewOf reads the gas of a store.
func brewOf(f table.Fitted) (brew, []table.Lack, error) {
	stated, ok := f.Fact("gas")
	if !ok {
		return brew{}, nil, fmt.Errorf("%s: gas is not stated", f.Name)
	}
	switch stated.Option {
	case "propane":
		return brew{full: 1, known: true, last: 1}, nil, nil
	case "butane":
		return brew{full: 0, known: true, last: 0}, nil, nil
	case "mixture":
		return mixture(f)
	}
	return brew{}, nil, fmt.Errorf("%s: no vapour pressure is known of %q", f.Name, stated.Option)
}

// shareFact is the part of propane in the mass of a full mixture.
const shareFact = "propane_share"

func mixture(f table.Fitted) (brew, []table.Lack, error) {
	part, err := quantity.Fraction(0), fmt.Errorf("%s is not stated", shareFact)
	if stated, ok := f.Fact(shareFact); ok {
		part, err = calc.Take[quantity.Fraction](stated)
	}
	if err == nil && part > 1 {
		err = calc.Outside("%s is above the whole", shareFact)
	}
	if err != nil {
		reason := fmt.Sprintf("%v, so the table judges the mixture by the last of it, which is butane", err)
		return brew{}, []table.Lack{{Use: table.Use{Fitted: f.Name, Fact: shareFact}, Reason: reason}}, nil
	}
	return brew{full: part, known: true}, nil, nil
}
