package electrics

import (
	"errors"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// SolarDay52Table says what the sun gives in a mean day of each month at about
// 52° north, and for how many typical days a full battery then lasts. Where the
// typical day cannot be worked out, the table says so in its last column.
//
// Columns: month, energy, charge, lasts.
func SolarDay52Table(in table.Input) (table.Result, error) { return solarTable(in, north52) }

// SolarDay45Table says the same for about 45° north.
func SolarDay45Table(in table.Input) (table.Result, error) { return solarTable(in, north45) }

// SolarDay36Table says the same for about 36° north.
func SolarDay36Table(in table.Input) (table.Result, error) { return solarTable(in, north36) }

// months are the keys of the words, in order.
var months = [12]string{"january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december"}

func solarTable(in table.Input, at sunYear) (table.Result, error) {
	peak, lacks := panels(in)
	if len(lacks) > 0 || peak == 0 {
		return table.Result{Lacks: lacks}, nil
	}
	stays := typicalDay(in)
	var result table.Result
	for i, month := range months {
		energy, err := SunYield(peak, quantity.Seconds(at[i])*hour, systemFactor)
		if err != nil {
			return table.Result{}, err
		}
		charge, err := Charge(energy, houseVoltage)
		if err != nil {
			return table.Result{}, err
		}
		result.Rows = append(result.Rows, table.Row{
			{Word: month}, {Quantity: quantity.Of(energy)}, {Quantity: quantity.Of(charge)}, stays(charge),
		})
	}
	return result, nil
}

// panels adds up all the panels of the van.
func panels(in table.Input) (quantity.Watts, []table.Lack) {
	var sum quantity.Watts
	var lacks []table.Lack
	for _, stated := range in.WithRole("solar-peak") {
		peak, err := calc.Take[quantity.Watts](stated.Fact)
		if err != nil {
			lacks = append(lacks, table.Lack{Use: stated.Use(), Reason: err.Error()})
			continue
		}
		sum += peak
	}
	return sum, lacks
}

// typicalDay gives the cell that says for how many typical days the battery
// lasts with what the sun gives back. What it lacks is told by the table of the
// battery.
func typicalDay(in table.Input) func(quantity.Coulombs) table.Cell {
	unknown := func(quantity.Coulombs) table.Cell { return table.Cell{Word: "not-known"} }
	b, found, err := bankOf(in)
	if err != nil || !found {
		return unknown
	}
	all, lacks := consumers(in)
	if len(lacks) > 0 || len(all) == 0 {
		return unknown
	}
	if _, err := b.drain(all); err != nil {
		return unknown
	}
	return func(sun quantity.Coulombs) table.Cell {
		days, err := b.days(all, sun)
		if errors.Is(err, errCovered) {
			return table.Cell{Word: "covers", Tone: table.Good}
		}
		return daysCell(days)
	}
}

// dayWords are the keys of the words for whole days, rounded down.
var dayWords = [...]string{"under-a-day", "one-day", "two-days", "three-days", "four-days", "five-days", "six-days"}

// few is up to how many days a stay wants planning.
const few = 3

func daysCell(days quantity.Seconds) table.Cell {
	switch whole := int(min(days/day*(1+noise), 7)); {
	case whole < few:
		return table.Cell{Word: dayWords[whole], Tone: table.Bad}
	case whole < len(dayWords):
		return table.Cell{Word: dayWords[whole], Tone: table.Doubtful}
	}
	return table.Cell{Word: "a-week", Tone: table.Good}
}
