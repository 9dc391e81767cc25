package vehicle

import (
	"fmt"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// freshTank is one tank for fresh water: what it holds, what it may hold on the
// road, and what the mass of the ready van counts in it.
type freshTank struct {
	at                     place
	holds, travel, counted quantity.CubicMetres
}

// freshTanks reads the tanks for fresh water.
func (v *laden) freshTanks() []freshTank {
	var all []freshTank
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
		all = append(all, tank)
	}
	return v.withCounted(all)
}

// withCounted puts the water into the tanks that the mass of the ready van
// holds. Water that is counted without saying how much is none, so that it is
// reckoned in full.
func (v *laden) withCounted(tanks []freshTank) []freshTank {
	if !v.counted("fresh-water") {
		return tanks
	}
	water, err := take[quantity.CubicMetres](v.in.Self, "counted_water")
	if err != nil {
		v.lack(v.in.Self.Name, "counted_water", err)
		return tanks
	}
	for i := range tanks {
		tanks[i].counted = min(water, tanks[i].holds)
		water -= tanks[i].counted
	}
	if water > 0 {
		v.lack(v.in.Self.Name, "counted_water", fmt.Errorf("counted_water is more than the tanks for fresh water hold"))
	}
	return tanks
}

// water is the fresh water that the papers allow on the road, where they allow
// less than all, and the full tanks: one or the other. Boilers fill themselves
// from the tanks.
func (v *laden) water() []item {
	tanks := v.freshTanks()
	boilers := v.boilers()
	sumOf := func(level func(freshTank) quantity.CubicMetres) load {
		sum := load{known: v.ready.known}
		for _, tank := range tanks {
			mass, err := liquid(max(level(tank)-tank.counted, 0), waterDensity)
			if err != nil {
				v.lack(tank.at.fitted, "capacity", err)
				continue
			}
			sum = sum.plus(v.put(mass, tank.at))
		}
		if sum.mass == 0 {
			return sum
		}
		return sum.plus(boilers)
	}
	travel := sumOf(func(t freshTank) quantity.CubicMetres { return t.travel })
	full := sumOf(func(t freshTank) quantity.CubicMetres { return t.holds })
	var all []item
	if travel.mass < full.mass {
		all = append(all, item{word: travelWaterItem, group: freshWaterItem, load: travel})
	}
	return append(all, item{word: freshWaterItem, group: freshWaterItem, load: full})
}

// boilers is the water in the boilers, where the ready van does not hold it yet.
func (v *laden) boilers() load {
	sum := load{known: v.ready.known}
	if v.counted("boiler-water") {
		return sum
	}
	for _, s := range v.in.WithRole("boiler-volume") {
		mass, err := v.liquidIn(s, waterDensity)
		if err != nil {
			v.lack(s.Fitted.Name, s.Fact.Name, err)
			continue
		}
		sum = sum.plus(v.put(mass, placeOf(s.Fitted)))
	}
	return sum
}

// waste is a full tank for waste water, which is emptied before a drive or not.
func (v *laden) waste() []item {
	sum := load{known: v.ready.known}
	for _, s := range v.in.WithRole("waste-capacity") {
		mass, err := v.liquidIn(s, waterDensity)
		if err != nil {
			v.lack(s.Fitted.Name, s.Fact.Name, err)
			continue
		}
		sum = sum.plus(v.put(mass, placeOf(s.Fitted)))
	}
	return []item{{word: wasteItem, load: sum}}
}
