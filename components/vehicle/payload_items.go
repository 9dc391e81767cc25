package vehicle

import (
	"fmt"

	"doorpocket/components/gas"
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// item is one thing that can be loaded: the word for it, and of the items of a
// group only one is on board.
type item struct {
	word  string
	group string
	load  load
}

// The words of the items.
const (
	houseItem       = "house"
	luggageItem     = "luggage"
	gasItem         = "gas"
	bicycleItem     = "bicycle"
	awningItem      = "awning"
	travelWaterItem = "travel-water"
	freshWaterItem  = "water"
	wasteItem       = "waste"
	ballItem        = "ball"
)

// items lists what can be loaded, each by itself: the people first. What weighs
// nothing is no item.
func (v *laden) items() []item {
	var all []item
	all = append(all, v.persons()...)
	all = append(all, v.luggage()...)
	all = append(all, v.gasStores()...)
	all = append(all, v.bicycles()...)
	if len(v.in.Of("openings/awning")) == 0 { // a van with a canopy of its own needs no tent
		all = append(all, item{word: awningItem, load: v.stow(tentAwning)})
	}
	all = append(all, v.water()...)
	all = append(all, v.waste()...)
	all = append(all, v.ball()...)
	var some []item
	for i, it := range all {
		if it.load.mass > 0 {
			if it.group == "" {
				it.group = fmt.Sprintf("%s-%d", it.word, i)
			}
			some = append(some, it)
		}
	}
	return some
}

// persons are those beside the driver, as many as there are seats.
func (v *laden) persons() []item {
	seats, _ := v.body.Fact("seats")
	var all []item
	for n := 2; n <= max(seats.Count, v.people()); n++ {
		all = append(all, item{word: personWord(n), load: v.put(Person, v.seat(n))})
	}
	return all
}

func personWord(n int) string { return fmt.Sprintf("person-%d", n) }

// people counts those who travel when every bed is taken, as far as there are
// seats. Where the body states neither, that is the driver and a passenger.
func (v *laden) people() int {
	n := 0
	for _, name := range []string{"berths", "seats"} {
		if f, _ := v.body.Fact(name); f.Count > 0 && (n == 0 || f.Count < n) {
			n = f.Count
		}
	}
	if n == 0 {
		return 2
	}
	return n
}

// luggage is what the household brings, and what each person does.
func (v *laden) luggage() []item {
	var all []item
	length, err := take[quantity.Metres](v.body, "length")
	if err == nil {
		var mass quantity.Kilograms
		if mass, err = HouseThings(length); err == nil {
			all = append(all, item{word: houseItem, load: v.stow(mass)})
		}
	}
	if err != nil {
		v.lack(v.body.Name, "length", err)
	}
	for range v.people() {
		all = append(all, item{word: luggageItem, load: v.stow(personalThings)})
	}
	return all
}

// gasStores are full cylinders and full tanks, where the ready van does not hold
// its gas yet. A tank itself is a part of the van.
func (v *laden) gasStores() []item {
	if v.counted("gas") {
		return nil
	}
	sum := load{known: v.ready.known}
	for _, s := range v.in.WithRole("gas-store") {
		mass, err := gasMass(s)
		if err != nil {
			v.lack(s.Fitted.Name, s.Fact.Name, err)
			continue
		}
		sum = sum.plus(v.put(mass, placeOf(s.Fitted)))
	}
	return []item{{word: gasItem, load: sum}}
}

// gasMass is the mass of the full cylinders, steel and all, or of the gas in the
// full tanks.
func gasMass(s table.Stated) (quantity.Kilograms, error) {
	if s.Fact.Quantity.Dimension() == quantity.Volume {
		volume, err := calc.Take[quantity.CubicMetres](s.Fact)
		if err != nil {
			return 0, err
		}
		kind, _ := s.Fitted.Fact("gas")
		one, err := gas.TankMass(volume, kind.Option)
		return one * quantity.Kilograms(several(s.Fitted, "tanks")), err
	}
	net, err := calc.Take[quantity.Kilograms](s.Fact)
	if err != nil {
		return 0, err
	}
	tare, err := take[quantity.Kilograms](s.Fitted, "tare")
	if err != nil {
		tare = emptyCylinder * net
	}
	return (net + tare) * quantity.Kilograms(several(s.Fitted, "cylinders")), nil
}

// several is a count that is one where nothing is stated.
func several(f table.Fitted, name string) int {
	n, _ := f.Fact(name)
	return max(n.Count, 1)
}

// bicycles are as many as the racks take, each as heavy as all of them together
// may be.
func (v *laden) bicycles() []item {
	var all []item
	for _, rack := range v.in.Of("vehicle/cycle-rack") {
		limit, err := take[quantity.Kilograms](rack, "limit")
		if err != nil {
			v.lack(rack.Name, "limit", err)
			continue
		}
		n := several(rack, "bikes")
		for range n {
			all = append(all, item{word: bicycleItem, load: v.put(limit/quantity.Kilograms(n), rackPlace(rack))})
		}
	}
	return all
}

// ball is the most that a trailer may press on the tow ball.
func (v *laden) ball() []item {
	var all []item
	for _, bar := range v.in.Of("vehicle/tow-bar") {
		trailer, _ := bar.Fact("trailer")
		if nose, err := take[quantity.Kilograms](bar, "nose"); err == nil && trailer.Option == "allowed" {
			all = append(all, item{word: ballItem, load: v.put(nose, placeOf(bar))})
		}
	}
	return all
}
