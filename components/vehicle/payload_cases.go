package vehicle

import (
	"doorpocket/components/gas"
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// laidOn is one case of the table: its word and the van with it.
type laidOn struct {
	word string
	load load
}

// cases are the ways to load the van, from the driver alone to everything at
// once. From the row with everybody on, each holds all that stands above it.
func (v *laden) cases() []laidOn {
	now := v.ready
	v.readyForDriver(&now)
	all := []laidOn{{"driver", now}}
	everybody, err := v.people()
	if err != nil {
		v.lack(v.body.Name, "seats", err)
		return all
	}
	for n := 2; n <= everybody; n++ {
		v.add(&now, Person, v.seat(n))
		if n == 2 {
			all = append(all, laidOn{"two", now})
		}
	}
	if everybody > 2 {
		all = append(all, laidOn{"everybody", now})
	}
	for _, s := range []struct {
		word string
		put  func(l *load, people int)
	}{
		{"luggage", v.putLuggage},
		{"gas", v.putGas},
		{"cycles", v.putCycles},
		{"awning", v.putAwning},
		{"travel-water", v.putTravelWater},
		{"water", v.putWater},
	} {
		before := now.total
		s.put(&now, everybody)
		if now.total > before {
			all = append(all, laidOn{s.word, now})
		}
	}
	return all
}

// readyForDriver adds what every drive needs and the ready van does not hold
// yet: the driver, the rest of the fuel, and on papers alone what was fitted
// later.
func (v *laden) readyForDriver(l *load) {
	if !v.counted("driver") {
		v.add(l, Person, v.cabSeats())
	}
	v.addFuel(l)
	if v.weighed || v.counted("hire-equipment") {
		return
	}
	for _, f := range v.in.All {
		if mass, later := fittedLater[f.System]; later {
			v.add(l, mass, placeOf(f))
		}
	}
}

func (v *laden) addFuel(l *load) {
	density := float64(dieselDensity) // the heavier, also where nothing is stated
	if fuel, _ := v.body.Fact("fuel"); fuel.Option == "petrol" {
		density = petrolDensity
	}
	for _, tank := range v.in.WithRole("fuel-capacity") {
		volume, err := calc.Take[quantity.CubicMetres](tank.Fact)
		if err != nil {
			v.lack(tank.Fitted.Name, tank.Fact.Name, err)
			continue
		}
		full, err := liquid(volume, density)
		if err != nil {
			v.lack(tank.Fitted.Name, tank.Fact.Name, err)
			continue
		}
		if v.counted("fuel") {
			full *= quantity.Kilograms(1 - fuelCounted)
		}
		v.add(l, full, placeOf(tank.Fitted))
	}
}

func (v *laden) putLuggage(l *load, people int) {
	length, err := take[quantity.Metres](v.body, "length")
	if err != nil {
		v.lack(v.body.Name, "length", err)
		return
	}
	mass, err := Luggage(people, length)
	if err != nil {
		v.lack(v.body.Name, "length", err)
		return
	}
	for _, rack := range v.in.Of("vehicle/cycle-rack") { // its room is kept free for it
		if limit, err := take[quantity.Kilograms](rack, "limit"); err == nil && inGarage(rack) {
			v.garageFilled += limit
		}
	}
	v.stow(l, mass)
}

// putGas adds full cylinders and full tanks, where the ready van does not hold
// its gas yet. A tank itself is a part of the van.
func (v *laden) putGas(l *load, _ int) {
	if v.counted("gas") {
		return
	}
	for _, s := range v.in.WithRole("gas-store") {
		mass, err := gasMass(s)
		if err != nil {
			v.lack(s.Fitted.Name, s.Fact.Name, err)
			continue
		}
		v.add(l, mass, placeOf(s.Fitted))
	}
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

func (v *laden) putCycles(l *load, _ int) {
	for _, rack := range v.in.Of("vehicle/cycle-rack") {
		limit, err := take[quantity.Kilograms](rack, "limit")
		if err != nil {
			v.lack(rack.Name, "limit", err)
			continue
		}
		v.add(l, limit, rackPlace(rack))
	}
}

// putAwning adds an awning that travellers bring. A van with a canopy of its
// own needs none.
func (v *laden) putAwning(l *load, _ int) {
	if len(v.in.Of("openings/awning")) == 0 {
		v.stow(l, tentAwning)
	}
}
