package vehicle

import (
	"math"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// Axles is the load on the front axle and on the rear axle, or on both of a
// rear pair together. What a load takes off an axle is negative.
type Axles struct{ Front, Rear quantity.Kilograms }

// Total is the mass on both axles.
func (a Axles) Total() quantity.Kilograms { return a.Front + a.Rear }

// Plus adds what a load puts on each axle.
func (a Axles) Plus(b Axles) Axles { return Axles{Front: a.Front + b.Front, Rear: a.Rear + b.Rear} }

// OnAxles is what a load puts on each axle, by the moments about them.
//
//	rear = m · d / w    front = m - rear
//
// with the load m in kg, its distance d behind the front axle and the wheelbase
// w in m. A load in front of the front axle has a negative d and takes load off
// the rear one; a load behind the rear axle takes load off the front one. It
// holds for a van that stands level; springs do not matter. For a pair of rear
// axles that share their load alike, w goes to the middle between them.
//
// Source: statics, the moments of a beam on two supports.
func OnAxles(load quantity.Kilograms, behind, wheelbase quantity.Metres) (Axles, error) {
	if _, err := calc.Positive("the wheelbase", wheelbase); err != nil {
		return Axles{}, err
	}
	if !(load >= 0) || math.IsInf(float64(load), 1) {
		return Axles{}, calc.Outside("the load is %g kg, which must not be below zero", float64(load))
	}
	rear := load * quantity.Kilograms(float64(behind)/float64(wheelbase))
	if math.IsNaN(float64(rear)) || math.IsInf(float64(rear), 0) {
		return Axles{}, calc.Outside("the load stands %g m behind the front axle", float64(behind))
	}
	return Axles{Front: load - rear, Rear: rear}, nil
}

// Chassis is where the axles of a van stand.
type Chassis struct {
	Front     quantity.Metres // from the front bumper to the front axle
	Wheelbase quantity.Metres // to the rear axle or the middle of a rear pair
}

// Load is what something of a mass puts on each axle, at a distance from the
// front bumper.
func (c Chassis) Load(m quantity.Kilograms, fromBumper quantity.Metres) (Axles, error) {
	return OnAxles(m, fromBumper-c.Front, c.Wheelbase)
}

// ChassisOf makes a chassis of the sizes of a van. The wheelbase goes to the
// last axle; the gap between two rear axles is zero for a single one.
func ChassisOf(size Size, gap quantity.Metres) (Chassis, error) {
	if _, err := calc.Positive("the front overhang", size.FrontOverhang); err != nil {
		return Chassis{}, err
	}
	if !(gap >= 0 && gap < size.Wheelbase) {
		return Chassis{}, calc.Outside("the gap between the rear axles is %g m, which must be less than the wheelbase, %g m", float64(gap), float64(size.Wheelbase))
	}
	for _, check := range []func(Size) error{Size.CheckWheelbase, Size.CheckOverhang} {
		if err := check(size); err != nil {
			return Chassis{}, err
		}
	}
	return Chassis{Front: size.FrontOverhang, Wheelbase: size.Wheelbase - gap/2}, nil
}
