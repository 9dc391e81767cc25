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

// personalThings is what each person brings: 15 kg of clothes and 7 kg of
// bedding.
//
// Source: motorhome magazine payload article, upper ends.
const personalThings quantity.Kilograms = 15 + 7

// thingsForAMetre is what a household brings for each metre of the van, in kg/m.
//
// Source: the form of the least payload of a motor caravan, Regulation (EU)
// 1230/2012, annex I part A (from memory).
const thingsForAMetre = 10

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

// fittedLater are things that the mass in running order of the papers does not
// hold, by system. A van weighed with them holds them already.
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

// HouseThings is the mass of food, dishes, chairs and the like that a household
// brings.
//
//	m = 10 · l
//
// with the length of the van l in m and the mass m in kg. It is a custom and no
// limit: only a scale knows. It holds for vans up to 20 m.
//
// Source: that of thingsForAMetre.
func HouseThings(length quantity.Metres) (quantity.Kilograms, error) {
	if !(length > 0 && length <= 20) {
		return 0, calc.Outside("the length is %g m, which must lie above 0 and up to 20 m", float64(length))
	}
	return quantity.Kilograms(thingsForAMetre * float64(length)), nil
}

// liquid is the mass of a volume at a density in kg/m³.
func liquid(volume quantity.CubicMetres, density float64) (quantity.Kilograms, error) {
	if !(volume >= 0) || math.IsInf(float64(volume), 1) {
		return 0, calc.Outside("the volume is %g m³, which must not be below zero", float64(volume))
	}
	return quantity.Kilograms(float64(volume) * density), nil
}
