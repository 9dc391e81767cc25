package vehicle

import (
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// behindMount is how far the middle of the bicycles stands beyond the mount of
// a rack that does not state how far it sticks out.
//
// Source: common practice.
const behindMount quantity.Metres = 0.3

// driverBehind is how far the people in the cab sit behind the front axle, for a
// van whose cab seats have no place of their own.
//
// Source: common practice.
const driverBehind quantity.Metres = 0.5

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

// seat is where the nth person sits; the first is the driver, the second sits
// beside, the others behind them in the order of the van.
func (v *laden) seat(n int) place {
	if n <= 2 {
		return v.cabSeats()
	}
	n -= 2
	for _, f := range v.in.Of("living/travel-seats") {
		seats, _ := f.Fact("seats")
		if n <= seats.Count {
			return placeOf(f)
		}
		n -= seats.Count
	}
	return place{fitted: v.body.Name}
}

// garage is a load space: where the middle of its load is, and what still goes
// into it.
type garage struct {
	at   place
	room quantity.Kilograms
}

// readGarages finds the garages, with the room that bicycles leave in them.
func (v *laden) readGarages() {
	var bicycles quantity.Kilograms
	for _, rack := range v.in.Of("vehicle/cycle-rack") {
		if mount, _ := rack.Fact("place"); mount.Option == "in-garage" {
			limit, _ := take[quantity.Kilograms](rack, "limit")
			bicycles += limit
		}
	}
	for _, f := range v.in.Of("openings/garage") {
		room, err := take[quantity.Kilograms](f, "max_load")
		if err != nil {
			v.lack(f.Name, "max_load", err)
			continue
		}
		kept := min(room, bicycles)
		bicycles -= kept
		at := placeOf(f)
		if middle, err := take[quantity.Metres](f, "middle"); err == nil {
			at.along, at.known = middle, true
		}
		v.garages = append(v.garages, garage{at: at, room: room - kept})
	}
}

// stow puts things where travellers put them: into the garage as far as its
// limit goes, else where the lockers are. A van without either has no known
// place for them.
func (v *laden) stow(mass quantity.Kilograms) load {
	sum := load{known: v.ready.known}
	for i := range v.garages {
		part := min(mass, v.garages[i].room)
		v.garages[i].room -= part
		sum = sum.plus(v.put(part, v.garages[i].at))
		mass -= part
	}
	lockers := place{fitted: v.in.Self.Name}
	if storage := v.in.Of("living/storage"); len(storage) > 0 {
		lockers = placeOf(storage[0])
	}
	return sum.plus(v.put(mass, lockers))
}

// rackPlace is where the middle of the bicycles on a rack is: outside the van
// half of what the rack sticks out, inside at the rack itself.
func rackPlace(rack table.Fitted) place {
	at := placeOf(rack)
	out := behindMount
	if length, err := take[quantity.Metres](rack, "adds_length"); err == nil {
		out = length / 2
	}
	switch mount, _ := rack.Fact("place"); mount.Option {
	case "rear-wall", "rear-door", "tow-bar":
		at.along += out
	case "front-drawbar":
		at.along -= out
	}
	return at
}
