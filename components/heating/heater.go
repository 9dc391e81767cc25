package heating

import (
	"cmp"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// plan says which facts of a system tell what warms the air of the van.
type plan struct {
	flame    string    // the heat of its flame at its highest, if stated
	elements []element // its mains elements
	limit    string    // the heat that its radiators can give, whatever warms them
	only     [2]string // a choice and the option without which it is no heater
}

// element names the power that a mains element takes at a setting, the heat
// that it gives, if that is stated apart, and the word for the setting. All of
// the power becomes heat.
type element struct{ power, heat, word string }

// The mains settings of a heater.
var (
	low    = element{power: "mains_low", word: "mains-low"}
	middle = element{power: "mains_middle", word: "mains-middle"}
	high   = element{power: "mains_high", word: "mains-high"}
)

// plans are the systems that can warm a whole van. A warm floor is too weak by
// itself, and the heat of a heat pump hangs on the cold outside, so neither
// counts: what they give comes on top.
var plans = map[string]plan{
	"heating/air-heater-with-boiler": {flame: "heat_gas", elements: []element{low, {high.power, "heat_mains", high.word}}},
	"heating/diesel-heater":          {flame: "heat_high", elements: []element{low, high}},
	"heating/radiator-heating":       {limit: "heat", elements: []element{low, middle, high}},
	"heating/roof-air-conditioner":   {only: [2]string{"heats", "element"}, elements: []element{{"mains_heat", "heat", "mains"}}},
}

// fuel is what a flame burns.
type fuel uint8

const (
	noFuel fuel = iota
	gas
	diesel
)

// warmth is what warms the air: a flame or an element at one setting.
type warmth struct {
	word string // of the tables
	use  table.Use
	heat quantity.Watts

	fuel   fuel
	gas    quantity.KilogramsPerSecond   // at that heat
	diesel quantity.CubicMetresPerSecond // at that heat
}

// heater is one appliance with all that warms its air.
type heater struct {
	name     string
	flame    *warmth
	elements []warmth // the weakest first
	limit    quantity.Watts
	lacks    []table.Lack
}

// heaterOf reads a fitted system; nil where it warms no van.
func heaterOf(f table.Fitted) *heater {
	p, ok := plans[f.System]
	if !ok {
		return nil
	}
	if choice, needed := f.Fact(p.only[0]); p.only[0] != "" && (!needed || choice.Option != p.only[1]) {
		return nil
	}
	h := &heater{name: f.Name}
	if stated, ok := f.Fact(p.limit); ok {
		h.limit, _ = take[quantity.Watts](h, stated)
	}
	h.readElements(f, p)
	h.readFlame(f, p)
	return h
}

// readElements reads the mains elements.
func (h *heater) readElements(f table.Fitted, p plan) {
	for _, e := range p.elements {
		stated, ok := f.Fact(e.heat)
		if !ok {
			stated, ok = f.Fact(e.power)
		}
		if !ok {
			continue
		}
		if heat, ok := take[quantity.Watts](h, stated); ok {
			h.elements = append(h.elements, warmth{
				word: e.word, use: table.Use{Fitted: f.Name, Fact: stated.Name}, heat: h.limited(heat),
			})
		}
	}
	if len(h.elements) == 1 {
		h.elements[0].word = "mains" // no setting to tell apart
	}
	slices.SortStableFunc(h.elements, func(a, b warmth) int { return cmp.Compare(a.heat, b.heat) })
}

// readFlame reads the flame at its highest setting. Its heat is the stated one,
// or what its fuel gives.
func (h *heater) readFlame(f table.Fitted, p plan) {
	w := warmth{}
	if stated, ok := f.Fact(p.flame); ok {
		heat, ok := take[quantity.Watts](h, stated)
		if !ok {
			return
		}
		w.use, w.heat = table.Use{Fitted: f.Name, Fact: stated.Name}, heat
	}
	if rate, use, ok := highest[quantity.KilogramsPerSecond](h, f, "gas-rate"); ok {
		w.word, w.fuel, w.gas = "gas", gas, rate
		w.useUnlessStated(use)
	} else if rate, use, ok := highest[quantity.CubicMetresPerSecond](h, f, "fuel-rate"); ok {
		w.word, w.fuel, w.diesel = "diesel", diesel, rate
		w.useUnlessStated(use)
	}
	if err := w.complete(); err != nil {
		h.lacks = append(h.lacks, table.Lack{Use: w.use, Reason: err.Error()})
		return
	}
	if w.heat > 0 && w.fuel != noFuel {
		h.flame = w.atMost(h.limited(w.heat))
	}
}

func (w *warmth) useUnlessStated(use table.Use) {
	if w.heat == 0 {
		w.use = use
	}
}

// complete works out the heat of a flame of which only the fuel is known, and
// rounds it down to whole steps. A stated heat that is more than the fuel holds
// is refused: one of the two figures is wrong.
func (w *warmth) complete() (err error) {
	switch {
	case w.fuel == noFuel:
		return nil
	case w.heat > 0:
		most := float64(w.gas)*PropaneGrossHeat + float64(w.diesel)*dieselGrossHeat
		if float64(w.heat) > most {
			return calc.Outside("a heat output of %.4g W is more than the %.4g W in the %s", float64(w.heat), most, w.word)
		}
		return nil
	case w.fuel == gas:
		w.heat, err = GasHeat(w.gas)
	default:
		w.heat, err = DieselHeat(w.diesel)
	}
	if least := calc.StepDown(w.heat, heatStep); err == nil && least > 0 {
		w.heat = least
	}
	return err
}

// atMost is a flame that burns lower, or pauses, so that it gives no more than
// a heat: it burns as much less.
func (w warmth) atMost(heat quantity.Watts) *warmth {
	part := float64(min(heat, w.heat) / w.heat)
	w.heat = min(heat, w.heat)
	w.gas *= quantity.KilogramsPerSecond(part)
	w.diesel *= quantity.CubicMetresPerSecond(part)
	return &w
}

// limited is a heat as far as the radiators can give it.
func (h *heater) limited(heat quantity.Watts) quantity.Watts {
	if h.limit > 0 {
		return min(heat, h.limit)
	}
	return heat
}

// strongest is the strongest element, nil without any.
func (h *heater) strongest() *warmth {
	if len(h.elements) == 0 {
		return nil
	}
	return &h.elements[len(h.elements)-1]
}

// together is the heat of the flame and the strongest element at once, 0 where
// one of the two is missing.
func (h *heater) together() quantity.Watts {
	if h.flame == nil || len(h.elements) == 0 {
		return 0
	}
	return h.limited(h.flame.heat + h.strongest().heat)
}

// most is the greatest heat that it gives.
func (h *heater) most() quantity.Watts {
	var most quantity.Watts
	for _, w := range h.elements {
		most = max(most, w.heat)
	}
	if h.flame != nil {
		most = max(most, h.flame.heat)
	}
	return max(most, h.together())
}

// take reads a fact, and notes a lack where it cannot be reckoned with.
func take[T quantity.Measure](h *heater, stated table.Fact) (T, bool) {
	v, err := calc.Take[T](stated)
	if err != nil {
		h.lacks = append(h.lacks, table.Lack{Use: table.Use{Fitted: h.name, Fact: stated.Name}, Reason: err.Error()})
		return 0, false
	}
	return v, true
}

// highest is the highest rate of a role.
func highest[T quantity.Measure](h *heater, f table.Fitted, role string) (most T, use table.Use, found bool) {
	for _, stated := range f.WithRole(role) {
		if rate, ok := take[T](h, stated.Fact); ok && rate > most {
			most, use, found = rate, stated.Use(), true
		}
	}
	return most, use, found
}

// heaterFor is the heater that a page is about: the one whose page it is, and
// for any other page the strongest of the van; nil where there is none.
func heaterFor(in table.Input) *heater {
	if _, ok := plans[in.Self.System]; ok {
		return heaterOf(in.Self)
	}
	var best *heater
	for _, f := range in.All {
		if h := heaterOf(f); h != nil && (best == nil || h.most() > best.most()) {
			best = h
		}
	}
	return best
}
