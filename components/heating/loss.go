package heating

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

type (
	// WattsPerKelvin is a loss coefficient: the heat that a van loses for each
	// kelvin that it is warmer inside than outside.
	WattsPerKelvin float64
	// Transmittance is a U-value in W/(m² K): what a square metre of wall, roof,
	// floor and window loses, on the mean, for each kelvin.
	Transmittance float64
	// AirChanges is how often in an hour all the air inside is replaced.
	AirChanges float64
)

// Space is the inside of a van as far as heat is concerned.
type Space struct {
	Surface quantity.SquareMetres
	Volume  quantity.CubicMetres
}

// floorHeight is how high above the ground the box of Box begins. Floors stand
// a little higher, so the box is a little too large and the heat on the safe
// side.
//
// Source: common practice.
const floorHeight quantity.Metres = 0.5

// Box takes the van for a box of its outer length and width that reaches from
// below its floor to its highest point.
//
//	h = H - 0.5 m,  S = 2 (L·W + L·h + W·h),  V = L·W·h
//
// with the length L, the width W and the height above the ground H in m, the
// surface S in m² and the volume V in m³. It holds for a van with a box above
// the floor, so for H above 0.5 m. It counts the cab, the bonnet, the walls
// themselves and what stands on the roof as space to be heated: the surface of
// the room inside is smaller.
//
// Source: geometry.
func Box(length, width, height quantity.Metres) (Space, error) {
	inside, err := calc.Positive("the height above the floor", height-floorHeight)
	if err != nil {
		return Space{}, err
	}
	l, w, h := float64(length), float64(width), float64(inside)
	surface, err := calc.Positive("the surface", quantity.SquareMetres(2*(l*w+l*h+w*h)))
	if err != nil {
		return Space{}, err
	}
	if _, err := calc.Positive("the length", length); err != nil {
		return Space{}, err
	}
	if _, err := calc.Positive("the width", width); err != nil {
		return Space{}, err
	}
	volume, err := calc.Positive("the volume", quantity.CubicMetres(l*w*h))
	return Space{Surface: surface, Volume: volume}, err
}

const (
	// bareSteel is the U-value of a sheet of steel with nothing on it, between
	// the surface resistances of 0.13 and 0.04 m² K/W: no van loses more.
	//
	// Source: EN ISO 6946, as quoted by a calculator of insulation.
	bareSteel Transmittance = 1 / (0.13 + 0.04)

	// airHeat is the heat in a cubic metre of air for each kelvin: 1.2 kg/m³
	// times 1005 J/(kg K), or 0.335 Wh/(m³ K).
	//
	// Source: practice of EN 12831, which rounds to 0.33 (from memory).
	airHeat = 1.2 * 1005 // J/(m³ K)

	// mostChanges bounds the air changes: more is a gale through open windows.
	//
	// Source: common practice.
	mostChanges AirChanges = 20
)

// LossCoefficient is what a van loses for each kelvin through its skin and
// with its air.
//
//	K = U · S + c · n · V
//
// with the mean U-value U in W/(m² K), the surface S in m², the heat of air
// c = 1206 J/(m³ K), the air changes n in 1/s, the volume V in m³ and the
// coefficient K in W/K. It holds for U up to that of bare steel, 5.88 W/(m² K),
// and up to 20 air changes an hour; none at all are allowed.
//
// Accuracy: that of U and n. With the greatest U-value of a grade it is an
// estimate on the high side for a closed van with its blinds down; wind, open
// vents and bare panes in the cab add to it.
//
// Source: steady heat loss, sum of U·A plus 0.33·n·V, as in EN 12831.
func LossCoefficient(space Space, u Transmittance, changes AirChanges) (WattsPerKelvin, error) {
	if _, err := calc.Positive("the surface", space.Surface); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the volume", space.Volume); err != nil {
		return 0, err
	}
	if !(u > 0 && u <= bareSteel) {
		return 0, calc.Outside("a U-value of %.3g W/(m² K) is not above 0 and up to that of bare steel, %.3g", float64(u), float64(bareSteel))
	}
	if !(changes >= 0 && changes <= mostChanges) {
		return 0, calc.Outside("%.3g air changes an hour are not from 0 to %g", float64(changes), float64(mostChanges))
	}
	skin := float64(u) * float64(space.Surface)
	air := airHeat * float64(changes) / float64(hour) * float64(space.Volume)
	return positive("the loss coefficient", WattsPerKelvin(skin+air))
}

// LossFromNeed is the loss coefficient of a van of which one knows the heat
// that keeps it at a temperature, as a test of the standard gives it.
//
//	K = P / (Ti - To)
//
// with the heat P in W and the temperatures inside Ti and outside To in K.
// Validity as for HeatNeed.
//
// Source: definition of the loss coefficient.
func LossFromNeed(need quantity.Watts, inside, outside quantity.Kelvins) (WattsPerKelvin, error) {
	if _, err := calc.Positive("the heat needed", need); err != nil {
		return 0, err
	}
	if err := liveable(inside, outside); err != nil {
		return 0, err
	}
	return positive("the loss coefficient", WattsPerKelvin(float64(need)/float64(inside-outside)))
}

// HeatNeed is the heat that keeps a van at a temperature, hour after hour.
//
//	P = K · (Ti - To)
//
// with the loss coefficient K in W/K, the temperatures inside Ti and outside To
// in K and the heat P in W. It holds in steady cold without sun, from -40 °C to
// 40 °C, where it is warmer inside than outside; anything else is refused.
// People, lamps, the fridge and cooking give heat too, which is left out: a
// person gives about 100 W (from memory).
//
// Source: definition of the loss coefficient.
func HeatNeed(loss WattsPerKelvin, inside, outside quantity.Kelvins) (quantity.Watts, error) {
	if _, err := positive("the loss coefficient", loss); err != nil {
		return 0, err
	}
	if err := liveable(inside, outside); err != nil {
		return 0, err
	}
	return calc.Positive("the heat needed", quantity.Watts(float64(loss)*float64(inside-outside)))
}

// Temperatures between which people heat a van.
//
// Source: common practice.
const (
	coldest = freezing - 40
	hottest = freezing + 40
)

// liveable refuses temperatures at which nobody heats a van.
func liveable(inside, outside quantity.Kelvins) error {
	if !(outside >= coldest && inside <= hottest && outside < inside) { // also refuses what is not a number
		return calc.Outside("%.4g K inside and %.4g K outside: they must lie from %.4g K to %.4g K, and it must be warmer inside",
			float64(inside), float64(outside), float64(coldest), float64(hottest))
	}
	return nil
}

// positive is calc.Positive for the measures of heat loss.
func positive[T WattsPerKelvin | JoulesPerKelvin](what string, v T) (T, error) {
	_, err := calc.Positive(what, quantity.Fraction(v))
	if err != nil {
		return 0, err
	}
	return v, nil
}
