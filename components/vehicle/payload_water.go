package vehicle

import (
	"fmt"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// freshTank is one tank for fresh water: what it holds, what it may hold on the
// road, and what is in it.
type freshTank struct {
	at                place
	holds, travel, in quantity.CubicMetres
}

// readFreshTanks reads the tanks and puts the water into them that the mass of
// the ready van holds. Water that is counted without saying how much is none,
// so that it is reckoned in full.
func (v *laden) readFreshTanks() {
	for _, s := range v.in.WithRole("fresh-capacity") {
		holds, err := calc.Take[quantity.CubicMetres](s.Fact)
		if err != nil {
			v.lack(s.Fitted.Name, s.Fact.Name, err)
			continue
		}
		tank := freshTank{at: placeOf(s.Fitted), holds: holds, travel: holds}
		if travel, err := take[quantity.CubicMetres](s.Fitted, "travel_volume"); err == nil {
			tank.travel = min(travel, holds)
		}
		v.fresh = append(v.fresh, tank)
	}
	if !v.counted("fresh-water") {
		return
	}
	water, err := take[quantity.CubicMetres](v.in.Self, "counted_water")
	if err != nil {
		v.lack(v.in.Self.Name, "counted_water", err)
		return
	}
	for i := range v.fresh {
		part := min(water, v.fresh[i].holds)
		v.fresh[i].in, water = part, water-part
	}
	if water > 0 {
		v.lack(v.in.Self.Name, "counted_water", fmt.Errorf("counted_water is more than the tanks for fresh water hold"))
	}
}

// putTravelWater fills the tanks as far as the papers allow on the road, where
// they allow less than all.
func (v *laden) putTravelWater(l *load, _ int) {
	for _, tank := range v.fresh {
		if tank.travel < tank.holds {
			v.fill(l, func(t freshTank) quantity.CubicMetres { return t.travel })
			return
		}
	}
}

// putWater fills every tank.
func (v *laden) putWater(l *load, _ int) {
	v.fill(l, func(t freshTank) quantity.CubicMetres { return t.holds })
}

// fill brings each tank up to a level, and the first time the boilers too, which
// fill themselves from the tanks.
func (v *laden) fill(l *load, upTo func(freshTank) quantity.CubicMetres) {
	for i := range v.fresh {
		tank := &v.fresh[i]
		more := upTo(*tank) - tank.in
		if more <= 0 {
			continue
		}
		tank.in += more
		mass, err := liquid(more, waterDensity)
		if err != nil {
			v.lack(tank.at.fitted, "capacity", err)
			continue
		}
		v.add(l, mass, tank.at)
		v.fillBoilers(l)
	}
}

func (v *laden) fillBoilers(l *load) {
	if v.boilersFull || v.counted("boiler-water") {
		return
	}
	v.boilersFull = true
	for _, s := range v.in.WithRole("boiler-volume") {
		volume, err := calc.Take[quantity.CubicMetres](s.Fact)
		if err != nil {
			v.lack(s.Fitted.Name, s.Fact.Name, err)
			continue
		}
		mass, err := liquid(volume, waterDensity)
		if err != nil {
			v.lack(s.Fitted.Name, s.Fact.Name, err)
			continue
		}
		v.add(l, mass, placeOf(s.Fitted))
	}
}
