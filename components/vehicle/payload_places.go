package vehicle

import (
	"fmt"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// place is where something stands along the van, from the front bumper. One
// that is not known names the fitted system that should state it.
type place struct {
	along  quantity.Metres
	known  bool
	fitted string
}

// placeOf is the place of a fitted system.
func placeOf(f table.Fitted) place {
	along, err := quantity.As[quantity.Metres](f.Along)
	return place{along: along, known: err == nil, fitted: f.Name}
}

// cabSeats is where the driver and the passenger beside sit.
func (v *laden) cabSeats() place {
	for _, f := range v.in.Of("living/cab-seats") {
		if at := placeOf(f); at.known {
			return at
		}
	}
	return place{along: v.chassis.Front + driverBehind, known: true}
}

// seatsBehind are the places of people behind the cab, in the order of the van.
func (v *laden) seatsBehind() []place {
	var seats []place
	for _, f := range v.in.Of("living/travel-seats") {
		n, _ := f.Fact("seats")
		for range n.Count {
			seats = append(seats, placeOf(f))
		}
	}
	return seats
}

// seat is where the nth person sits; the first is the driver.
func (v *laden) seat(n int) place {
	if n <= 2 {
		return v.cabSeats()
	}
	if seats := v.seatsBehind(); n-3 < len(seats) {
		return seats[n-3]
	}
	return place{fitted: v.body.Name}
}

// stow puts things where travellers put them: into the garage as far as its
// limit goes, else where the lockers are. A van without either has no known
// place for them.
func (v *laden) stow(l *load, mass quantity.Kilograms) {
	for _, garage := range v.in.Of("openings/garage") {
		room, err := take[quantity.Kilograms](garage, "max_load")
		if err != nil {
			v.lack(garage.Name, "max_load", err)
			continue
		}
		part := min(mass, max(room-v.garageFilled, 0))
		v.garageFilled += part
		v.add(l, part, placeOf(garage))
		mass -= part
	}
	v.add(l, mass, v.lockers())
}

func (v *laden) lockers() place {
	storage := v.in.Of("living/storage")
	if len(storage) == 0 {
		return place{fitted: v.in.Self.Name}
	}
	return placeOf(storage[0])
}

// rackPlace is where the middle of the bicycles on a rack is: outside the van
// half of what the rack sticks out, inside at the rack itself.
func rackPlace(rack table.Fitted) place {
	at := placeOf(rack)
	out := behindMount
	if f, ok := rack.Fact("adds_length"); ok {
		if length, err := calc.Take[quantity.Metres](f); err == nil {
			out = length / 2
		}
	}
	switch mount, _ := rack.Fact("place"); mount.Option {
	case "rear-wall", "rear-door", "tow-bar":
		at.along += out
	case "front-drawbar":
		at.along -= out
	}
	return at
}

// inGarage reports whether a rack takes room of the garage.
func inGarage(rack table.Fitted) bool {
	mount, _ := rack.Fact("place")
	return mount.Option == "in-garage"
}

// people counts those who travel when every bed is taken, as far as there are
// seats. Where the body states neither, that is the driver and a passenger.
func (v *laden) people() (int, error) {
	n := 0
	for _, name := range []string{"berths", "seats"} {
		f, ok := v.body.Fact(name)
		switch {
		case !ok:
		case f.Count < 1:
			return 0, fmt.Errorf("%s is %d, which must be 1 or more", name, f.Count)
		case n == 0 || f.Count < n:
			n = f.Count
		}
	}
	if n == 0 {
		n = 2
	}
	return n, nil
}
