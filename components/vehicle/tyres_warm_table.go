package vehicle

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// coldTyre is the temperature at which the tyres of the tables were set, 15 °C.
// One set at 20 °C shows up to 0.02 bar less for the same rise, which no gauge
// of a filling station tells apart; of the two, the table shows more, so that
// it never makes a soft tyre look right.
//
// Source: common practice.
const coldTyre quantity.Kelvins = 288.15

// rises are how much warmer than that the air in a tyre is, from cold to a fast
// drive on a hot day.
//
// Source: common practice.
var rises = []quantity.KelvinDifference{0, 10, 20, 30, 40}

// TyresWarmTable shows what a gauge says on the front and the rear tyres while
// they are warm, at sea level. Nothing is lost or added: the same air shows
// more. Tyres of the same pressure share their rows. A pressure that cannot be
// used, or is not stated, is a lack.
//
// Columns: tyre, inside, bar, psi. Pressures round up: of a tyre that shows
// less, air is missing.
func TyresWarmTable(in table.Input) (table.Result, error) {
	var result table.Result
	tyres, lacks := axleTyres(in.Self)
	result.Lacks = lacks
	set := Air{Inside: coldTyre, Outside: seaLevelPressure}
	for _, t := range tyres {
		for _, rise := range rises {
			now := Air{Inside: coldTyre + quantity.Kelvins(rise), Outside: seaLevelPressure}
			reading, err := GaugeReading(set, now, t.pressure)
			if err != nil {
				result.Lacks = append(result.Lacks, table.Lack{Use: t.use, Reason: err.Error()})
				break
			}
			shown := table.Cell{Quantity: quantity.Of(reading)}
			result.Rows = append(result.Rows, table.Row{{Word: t.word}, {Quantity: quantity.Of(now.Inside)}, shown, shown})
		}
	}
	return result, nil
}

// axleTyre is the stated pressure of the tyres of one axle, or of both.
type axleTyre struct {
	word     string
	use      table.Use
	pressure quantity.Pascals
}

// axleTyres reads the pressures of the front and the rear tyres, and joins them
// where they are the same.
func axleTyres(f table.Fitted) ([]axleTyre, []table.Lack) {
	var found []axleTyre
	var lacks []table.Lack
	for _, name := range requiredTyres {
		stated, _ := f.Fact(name)
		stated.Name = name // also where nothing is stated, for the message
		use := table.Use{Fitted: f.Name, Fact: name}
		pressure, err := calc.Take[quantity.Pascals](stated)
		if err != nil {
			lacks = append(lacks, table.Lack{Use: use, Reason: err.Error()})
			continue
		}
		found = append(found, axleTyre{word: name, use: use, pressure: pressure})
	}
	if len(found) == 2 && found[0].pressure == found[1].pressure {
		found = found[:1]
		found[0].word = "all"
	}
	return found, lacks
}
