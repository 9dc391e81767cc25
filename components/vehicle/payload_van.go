package vehicle

import (
	"fmt"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// limits are the most that a van and its axles may weigh. An axle without a
// stated limit is zero.
type limits struct{ whole, front, rear quantity.Kilograms }

// load is the mass of something and, where its place is known, what it puts on
// each axle.
type load struct {
	mass  quantity.Kilograms
	axles Axles
	known bool // axles holds
}

func (l load) plus(m load) load {
	return load{mass: l.mass + m.mass, axles: l.axles.Plus(m.axles), known: l.known && m.known}
}

// laden is a van as its load is reckoned.
type laden struct {
	in      table.Input
	body    table.Fitted
	limits  limits
	weighed bool // payload comes from a scale, with all that is fitted
	ready   load // the van with what its mass in running order counts
	chassis Chassis
	garages []garage
	lacks   []table.Lack
}

// ladenVan reads what a van states of its masses. The error says why nothing can
// be reckoned.
func ladenVan(in table.Input) (*laden, error) {
	v := &laden{in: in}
	if bodies := in.Of(bodySystem); len(bodies) > 0 {
		v.body = bodies[0]
	}
	var err error
	if v.limits.whole, err = take[quantity.Kilograms](in.Self, "max"); err != nil {
		return nil, err
	}
	if v.ready.mass, err = take[quantity.Kilograms](in.Self, "running"); err != nil {
		return nil, err
	}
	v.limits.front, _ = take[quantity.Kilograms](in.Self, "front_axle")
	v.limits.rear, _ = take[quantity.Kilograms](in.Self, "rear_axle")
	if err := v.weigh(); err != nil {
		return nil, err
	}
	v.standOnAxles()
	v.readGarages()
	return v, nil
}

// weigh lets a stated payload go before the papers: it comes from a scale. It
// may be nothing.
func (v *laden) weigh() error {
	stated, ok := v.in.Self.Fact("payload")
	if !ok {
		return nil
	}
	payload, err := quantity.As[quantity.Kilograms](stated.Quantity)
	if err != nil {
		return fmt.Errorf("payload: %w", err)
	}
	if !(payload >= 0 && payload < v.limits.whole) {
		return calc.Outside("payload is %s, which must not be below zero and must be less than the maximum, %g kg", stated.Quantity, float64(v.limits.whole))
	}
	v.weighed, v.ready.mass = true, v.limits.whole-payload
	return nil
}

// standOnAxles finds how the ready van stands on its axles. What is missing for
// that is a lack; masses are reckoned all the same.
func (v *laden) standOnAxles() {
	front, err := take[quantity.Kilograms](v.in.Self, "front_ready")
	if err == nil && front >= v.ready.mass {
		err = calc.Outside("front_ready is %g kg, which must be less than the whole van, %g kg", float64(front), float64(v.ready.mass))
	}
	if err != nil {
		v.lack(v.in.Self.Name, "front_ready", err)
		return
	}
	size, problems := sizeOf(v.body)
	for _, name := range []string{"length", "wheelbase"} {
		if problems[name] != nil {
			v.lack(v.body.Name, name, problems[name])
			return
		}
	}
	gap, _ := take[quantity.Metres](v.body, "rear_axle_gap")
	if v.chassis, err = ChassisOf(size, gap); err != nil {
		v.lack(v.body.Name, "front_overhang", err)
		return
	}
	v.ready.axles = Axles{Front: front, Rear: v.ready.mass - front}
	v.ready.known = true
}

// lack notes once why something is not reckoned.
func (v *laden) lack(fitted, fact string, err error) {
	if fitted == "" {
		fitted = v.in.Self.Name // nothing of the kind is fitted
	}
	l := table.Lack{Use: table.Use{Fitted: fitted, Fact: fact}, Reason: err.Error()}
	if !slices.Contains(v.lacks, l) {
		v.lacks = append(v.lacks, l)
	}
}

// counted reports whether the mass of the ready van holds something already.
func (v *laden) counted(what string) bool {
	contains, _ := v.in.Self.Fact("running_contains")
	return contains.Has(what)
}

// put is the load of a mass somewhere along the van. Where the place is not
// known, what it puts on the axles is not known either, which is a lack.
func (v *laden) put(mass quantity.Kilograms, at place) load {
	l := load{mass: mass, known: v.ready.known}
	if mass == 0 || !l.known {
		return l
	}
	err := fmt.Errorf("its place along the van is not stated, so the load on each axle is not known")
	if at.known {
		l.axles, err = v.chassis.Load(mass, at.along)
	}
	if err != nil {
		l.known = false
		v.lack(at.fitted, "at", err)
	}
	return l
}

// always is the ready van with what every drive needs and its mass in running
// order does not hold: the driver, the rest of the fuel, and on papers alone
// what was fitted later.
func (v *laden) always() load {
	l := v.ready
	if !v.counted("driver") {
		l = l.plus(v.put(Person, v.cabSeats()))
	}
	l = l.plus(v.fuel())
	if v.weighed || v.counted("hire-equipment") {
		return l
	}
	for _, f := range v.in.All {
		if mass, later := fittedLater[f.System]; later {
			l = l.plus(v.put(mass, placeOf(f)))
		}
	}
	return l
}

// fuel is what the tanks hold beyond what is counted.
func (v *laden) fuel() load {
	density := float64(dieselDensity) // the heavier, also where nothing is stated
	if fuel, _ := v.body.Fact("fuel"); fuel.Option == "petrol" {
		density = petrolDensity
	}
	sum := load{known: v.ready.known}
	for _, tank := range v.in.WithRole("fuel-capacity") {
		full, err := v.liquidIn(tank, density)
		if err != nil {
			v.lack(tank.Fitted.Name, tank.Fact.Name, err)
			continue
		}
		if v.counted("fuel") {
			full *= quantity.Kilograms(1 - fuelCounted)
		}
		sum = sum.plus(v.put(full, placeOf(tank.Fitted)))
	}
	return sum
}

// liquidIn is what a full tank holds, at a density in kg/m³.
func (v *laden) liquidIn(s table.Stated, density float64) (quantity.Kilograms, error) {
	volume, err := calc.Take[quantity.CubicMetres](s.Fact)
	if err != nil {
		return 0, err
	}
	return liquid(volume, density)
}
