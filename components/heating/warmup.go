package heating

import (
	"errors"
	"fmt"
	"math"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// JoulesPerKelvin is a heat capacity: what a van takes up for each kelvin that
// it gets warmer.
type JoulesPerKelvin float64

// ErrTooWeak is wrapped by the error for a heater that never warms the van so
// far: what is lost grows as large as what it gives.
var ErrTooWeak = errors.New("too weak to get there")

const (
	hour   quantity.Seconds = 3600
	minute quantity.Seconds = 60
)

// skinCapacity is the heat that a square metre of the inside takes up while a
// van is warmed, furniture included: about that of 10 mm of plywood.
//
// Source: estimate, from memory, at 600 kg/m³ and 1.7 kJ/(kg K): some of it is
// lining and the rest furniture. It puts the time of a large heater from -15 °C
// between a published record, 64 min, and the four hours that EN 1646-1 allows
// for grade 3.
const skinCapacity = 10_000 // J/(m² K)

// HeatCapacity is what a van takes up for each kelvin.
//
//	C = s · S
//
// with the surface S in m² and s = 10 kJ/(m² K). It is a rough estimate: a van
// with thin furniture takes half of it, one with a full garage half as much
// again (from memory).
//
// Source: estimate, see skinCapacity.
func HeatCapacity(space Space) (JoulesPerKelvin, error) {
	if _, err := calc.Positive("the surface", space.Surface); err != nil {
		return 0, err
	}
	return positive("the heat capacity", JoulesPerKelvin(skinCapacity*float64(space.Surface)))
}

// WarmUp is the time in which a steady heat warms a van.
//
//	t = C/K · ln((P - K (T0 - To)) / (P - K (T1 - To)))
//
// with the heat capacity C in J/K, the loss coefficient K in W/K, the heat P in
// W, the temperatures outside To, at the start T0 and at the end T1 in K, and
// the time t in s. It takes the van for one lump that is as warm everywhere:
// air feels warm sooner, cushions and cupboards later. It holds where HeatNeed
// does, for a start that is no colder than outside. A heat that never gets
// there gives ErrTooWeak.
//
// Source: Newton's law of cooling with a steady source of heat.
func WarmUp(loss WattsPerKelvin, capacity JoulesPerKelvin, heat quantity.Watts, outside, start, end quantity.Kelvins) (quantity.Seconds, error) {
	need, err := HeatNeed(loss, end, outside)
	if err != nil {
		return 0, err
	}
	if _, err := positive("the heat capacity", capacity); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the heat", heat); err != nil {
		return 0, err
	}
	if !(start >= outside && start < end) {
		return 0, calc.Outside("a start at %.4g K, which must lie from %.4g K outside to below %.4g K", float64(start), float64(outside), float64(end))
	}
	if heat <= need {
		return 0, fmt.Errorf("%.4g W against a loss of %.4g W: %w", float64(heat), float64(need), ErrTooWeak)
	}
	spare := float64(heat) - float64(loss)*float64(start-outside)
	return calc.Positive("the time", quantity.Seconds(float64(capacity)/float64(loss)*math.Log(spare/float64(heat-need))))
}
