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

// laden is a van as the payload is reckoned from it.
type laden struct {
	in           table.Input
	body         table.Fitted
	limits       limits
	weighed      bool               // payload comes from a scale, with all that is fitted
	ready        load               // what it weighs with what is counted already
	inPapers     quantity.Kilograms // mass in running order
	chassis      Chassis
	lacks        []table.Lack
	fresh        []freshTank
	boilersFull  bool
	garageFilled quantity.Kilograms // what stands in the garage so far
}

// load is the mass of a van and, where all its places are known, what stands on
// each axle.
type load struct {
	total quantity.Kilograms
	axles Axles
	known bool // axles holds
}

// ladenVan reads what a van states of its masses. The error says why no payload
// can be reckoned.
func ladenVan(in table.Input) (*laden, error) {
	v := &laden{in: in}
	if bodies := in.Of(bodySystem); len(bodies) > 0 {
		v.body = bodies[0]
	}
	var err error
	if v.limits.whole, err = take[quantity.Kilograms](in.Self, "max"); err != nil {
		return nil, err
	}
	if v.inPapers, err = take[quantity.Kilograms](in.Self, "running"); err != nil {
		return nil, err
	}
	v.limits.front, _ = take[quantity.Kilograms](in.Self, "front_axle")
	v.limits.rear, _ = take[quantity.Kilograms](in.Self, "rear_axle")
	if err := v.weigh(); err != nil {
		return nil, err
	}
	v.standOnAxles()
	v.readFreshTanks()
	return v, nil
}

// weigh finds what the van weighs when ready. A stated payload comes from a
// scale and goes before the papers; it may be nothing.
func (v *laden) weigh() error {
	v.ready.total = v.inPapers
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
	v.weighed, v.ready.total = true, v.limits.whole-payload
	return nil
}

// standOnAxles finds how the ready van stands on its axles. What is missing for
// that is a lack; masses are reckoned all the same.
func (v *laden) standOnAxles() {
	front, err := take[quantity.Kilograms](v.in.Self, "front_ready")
	if err == nil && front >= v.ready.total {
		err = calc.Outside("front_ready is %g kg, which must be less than the whole van, %g kg", float64(front), float64(v.ready.total))
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
	v.ready.axles = Axles{Front: front, Rear: v.ready.total - front}
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

// add puts a mass somewhere along the van. Where the place is not known, the
// loads on the axles are not known from there on.
func (v *laden) add(l *load, mass quantity.Kilograms, at place) {
	l.total += mass
	if mass == 0 || !l.known {
		return
	}
	if !at.known {
		l.known = false
		v.lack(at.fitted, "at", fmt.Errorf("its place along the van is not stated, so the load on each axle is not known"))
		return
	}
	more, err := v.chassis.Load(mass, at.along)
	if err != nil {
		l.known = false
		v.lack(at.fitted, "at", err)
		return
	}
	l.axles = l.axles.Plus(more)
}
