package electrics

import (
	"math"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// ohmsPerMetre is the resistance of a metre of one conductor at 20 °C.
type ohmsPerMetre float64

// conductor is a size in which flexible leads are made.
type conductor struct {
	area       quantity.SquareMetres
	resistance ohmsPerMetre
}

const (
	mm2        quantity.SquareMetres = 1e-6
	ohmsPerKm  ohmsPerMetre          = 1e-3
	sizeWithin                       = 0.01 // a size is stated with two or three digits
)

// conductors lists the metric sizes with their greatest resistance, and the
// sizes of North American leads (14, 12, 10 and 8 in the American gauge) with
// that of solid copper and 2 % for the twist of the strands.
//
// Source: IEC 60228, plain copper of class 5; for the gauges ASTM B258 and
// B174 with copper of 1/58 ohm mm2/m, from memory.
var conductors = []conductor{
	{1 * mm2, 19.5 * ohmsPerKm},
	{1.5 * mm2, 13.3 * ohmsPerKm},
	{2.08 * mm2, 8.284 * 1.02 * ohmsPerKm},
	{2.5 * mm2, 7.98 * ohmsPerKm},
	{3.31 * mm2, 5.211 * 1.02 * ohmsPerKm},
	{4 * mm2, 4.95 * ohmsPerKm},
	{5.26 * mm2, 3.277 * 1.02 * ohmsPerKm},
	{6 * mm2, 3.3 * ohmsPerKm},
	{8.37 * mm2, 2.061 * 1.02 * ohmsPerKm},
	{10 * mm2, 1.91 * ohmsPerKm},
	{16 * mm2, 1.21 * ohmsPerKm},
}

func resistanceOf(area quantity.SquareMetres) (ohmsPerMetre, error) {
	for _, c := range conductors {
		if math.Abs(float64(area/c.area)-1) <= sizeWithin {
			return c.resistance, nil
		}
	}
	return 0, calc.Outside("no published resistance is known for a lead of %g mm²", float64(area/mm2))
}

// Copper at 20 °C, how much its resistance grows with each degree, and the
// temperatures for which that is published.
//
// Source: correction table of IEC 60228 (1.064 at 5 °C, 0.833 at 70 °C).
const (
	coolCopper   quantity.Kelvins = freezing + 20
	warmCopper   quantity.Kelvins = freezing + 70
	coldCopper   quantity.Kelvins = freezing + 5
	copperGrowth                  = 0.004 // 1/K
)

// freezing is 0 °C.
const freezing quantity.Kelvins = 273.15

// LeadDrop is the voltage that a lead takes away from what hangs on it.
//
//	U = 2 l R20 (1 + 0.004 (T − 20 °C)) I
//
// with the length l of the lead in m, the resistance R20 of one conductor in
// ohm/m, the temperature T of the copper and the current I in A; the current
// goes out through one conductor and back through another. It holds for single
// phase and direct current, for the sizes of conductors, and for copper from 5 °C
// to 70 °C. The resistance is the greatest that the standard allows, so a real
// lead drops a little less. Contacts of plugs are not counted.
//
// Source: Ohm's law; see conductors and copperGrowth.
func LeadDrop(length quantity.Metres, area quantity.SquareMetres, current quantity.Amperes, copper quantity.Kelvins) (quantity.Volts, error) {
	if _, err := calc.Positive("the length of the lead", length); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the current", current); err != nil {
		return 0, err
	}
	if !(copper >= coldCopper && copper <= warmCopper) {
		return 0, calc.Outside("copper at %g K is not between 5 °C and 70 °C", float64(copper))
	}
	resistance, err := resistanceOf(area)
	if err != nil {
		return 0, err
	}
	warmth := 1 + copperGrowth*float64(copper-coolCopper)
	return calc.Positive("the voltage", quantity.Volts(2*float64(length)*float64(resistance)*warmth*float64(current)))
}

// LeadHeat is the power that a lead turns into heat.
//
//	P = U I
//
// with the voltage U that it takes away in V and the current I in A.
//
// Source: definition of power.
func LeadHeat(drop quantity.Volts, current quantity.Amperes) (quantity.Watts, error) {
	if _, err := calc.Positive("the voltage", drop); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the current", current); err != nil {
		return 0, err
	}
	return calc.Positive("the heat", quantity.Watts(float64(drop)*float64(current)))
}

// thinnest lists, by rising current, the thinnest lead that may carry it.
//
// Source: AS/NZS 3001, table 5.1, for 10 A; BS 7671 as quoted on caravan pages
// for 16 A; for 20 and 30 A the gauges 12 and 10 of NEC article 240, from
// memory. 15 A is the 14 gauge of the same article.
var thinnest = []struct {
	upto quantity.Amperes
	area quantity.SquareMetres
}{
	{10, 1 * mm2},
	{15, 2.08 * mm2},
	{16, 2.5 * mm2},
	{20, 3.31 * mm2},
	{30, 5.26 * mm2},
}

// Thinnest is the thinnest lead that may carry a current, up to 30 A.
func Thinnest(current quantity.Amperes) (quantity.SquareMetres, error) {
	if _, err := calc.Positive("the current", current); err != nil {
		return 0, err
	}
	for _, t := range thinnest {
		if current <= t.upto {
			return t.area, nil
		}
	}
	return 0, calc.Outside("%g A is more than any lead of a pitch carries", float64(current))
}
