package vehicle

import (
	"math"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// Person is the mass that a driver and a passenger count with.
//
// Source: Regulation (EU) 1230/2012, the mass of the driver; published loading
// examples use it for passengers too.
const Person quantity.Kilograms = 75

// What a traveller brings: clothes, bedding, and for the house things that grow
// with the van, such as food, dishes and chairs. The first two are the upper
// ends of what a magazine's payload article gives; the last has the form of the
// least payload of a motor caravan, 10 kg for each metre of length.
//
// Source: motorhome magazine payload article; Regulation (EU) 1230/2012, annex
// I part A (from memory).
const (
	clothes        quantity.Kilograms = 15 // a person
	bedding        quantity.Kilograms = 7  // a person
	houseForAMetre                    = 10 // kg/m
)

// What a litre weighs, on the heavy side, in kg/m³.
//
// Source: water: 1 kg a litre, rounded up from 0.998 at 20 °C; diesel: EN 590,
// upper end; petrol: EN 228, upper end (both from memory).
const (
	waterDensity  = 1000
	dieselDensity = 845
	petrolDensity = 775
)

// fuelCounted is the part of the fuel that the mass in running order holds.
//
// Source: Regulation (EU) 1230/2012, article 2(4): at least 90 %.
const fuelCounted quantity.Fraction = 0.9

// emptyCylinder is how much an empty gas cylinder weighs for each kilogram of
// gas that it takes, where its tare is not stated. Of the common cylinders none
// weighs more.
//
// Source: stamped tares of common cylinders, 0.8 to 1.6.
const emptyCylinder = 1.6

// Things that are fitted later, which the mass in running order of the papers
// does not hold, by system. A van weighed with them holds them already.
//
// Source: motorhome magazine payload article, upper ends; the rack without
// bicycles: common practice.
var fittedLater = map[string]quantity.Kilograms{
	"openings/awning":    45,
	"vehicle/cycle-rack": 15,
	"electrics/solar":    5,
	"electrics/tv":       7,
	"kitchen/microwave":  15,
}

// tentAwning is an awning with its poles, which a traveller brings.
//
// Source: motorhome magazine payload article, upper end.
const tentAwning quantity.Kilograms = 45

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

// Left is what may still be loaded: the maximum less what the van weighs. It
// is negative for a van that is too heavy.
//
//	left = maximum - actual
//
// with both in kg, above zero. With the passengers (75 kg each, without the
// driver) and the fittings in the actual mass, it is the payload of the
// regulation.
//
// Source: Regulation (EU) 1230/2012, definitions of the masses.
func Left(maximum, actual quantity.Kilograms) (quantity.Kilograms, error) {
	if _, err := calc.Positive("the maximum mass", maximum); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the mass of the van", actual); err != nil {
		return 0, err
	}
	return maximum - actual, nil
}

// People is the mass of so many people at 75 kg.
//
// Source: that of Person.
func People(n int) (quantity.Kilograms, error) {
	if n < 0 || n > 20 {
		return 0, calc.Outside("%d people cannot be in a van", n)
	}
	return Person * quantity.Kilograms(n), nil
}

// Luggage is what so many people bring: clothes and bedding for each, and for
// the house 10 kg for each metre of the van.
//
//	m = (15 + 7) · n + 10 · l
//
// with n people, the length l in m and the mass m in kg. It is a custom and no
// limit: only a scale knows. It holds for 1 to 20 people and vans up to 20 m.
//
// Source: that of the constants.
func Luggage(n int, length quantity.Metres) (quantity.Kilograms, error) {
	if n < 1 || n > 20 {
		return 0, calc.Outside("%d people cannot be in a van", n)
	}
	if !(length > 0 && length <= 20) {
		return 0, calc.Outside("the length is %g m, which must lie above 0 and up to 20 m", float64(length))
	}
	return (clothes+bedding)*quantity.Kilograms(n) + quantity.Kilograms(houseForAMetre*float64(length)), nil
}

// liquid is the mass of a volume at a density in kg/m³.
func liquid(volume quantity.CubicMetres, density float64) (quantity.Kilograms, error) {
	if !(volume >= 0) || math.IsInf(float64(volume), 1) {
		return 0, calc.Outside("the volume is %g m³, which must not be below zero", float64(volume))
	}
	return quantity.Kilograms(float64(volume) * density), nil
}
