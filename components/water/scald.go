package water

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

const zeroCelsius quantity.Kelvins = 273.15

// burn is the time after which water of a temperature burns the skin of a
// grown person; 0 where none is published.
type burn struct {
	at    quantity.Kelvins
	skin  quantity.Seconds // a burn with blisters, of the second degree
	whole quantity.Seconds // through the whole skin, of the third degree
}

// burns are the published times, the coolest water first.
//
// Source: a US table of exposure for adult skin, whose data go back to the
// experiments of Moritz and Henriques, Am. J. Pathol. 23 (1947) 695; the last
// two from the list of a children's hospital, which gives 150 °F and 155 °F,
// rounded up here.
var burns = []burn{
	{zeroCelsius + 45, 7200, 10800},
	{zeroCelsius + 47, 1200, 2700},
	{zeroCelsius + 48, 900, 1200},
	{zeroCelsius + 49, 480, 600},
	{zeroCelsius + 51, 120, 252},
	{zeroCelsius + 55, 17, 30},
	{zeroCelsius + 60, 3, 5},
	{zeroCelsius + 65.56, 0, 1.5},
	{zeroCelsius + 68.34, 0, 1},
}

// BurnTime is the time after which water burns the skin of a grown person so
// that it blisters: the published time of the next hotter water, or of the same.
// It holds for adult skin in water from 45 °C to 60 °C; cooler water burns too,
// given hours, and for hotter water no time is published: both are refused.
// Children burn in a quarter of the time or less (from memory).
//
// Source: burns.
func BurnTime(at quantity.Kelvins) (quantity.Seconds, error) {
	return burnTime(at, func(b burn) quantity.Seconds { return b.skin })
}

// DeepBurnTime is the same for a burn through the whole skin, from 45 °C to
// 68 °C.
//
// Source: burns.
func DeepBurnTime(at quantity.Kelvins) (quantity.Seconds, error) {
	return burnTime(at, func(b burn) quantity.Seconds { return b.whole })
}

func burnTime(at quantity.Kelvins, time func(burn) quantity.Seconds) (quantity.Seconds, error) {
	if at >= burns[0].at {
		for _, b := range burns {
			if b.at >= at && time(b) > 0 {
				return time(b), nil
			}
		}
	}
	return 0, calc.Outside("no time is published after which water of %.5g K burns", float64(at))
}
